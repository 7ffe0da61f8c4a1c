import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Area, Length, Ratio } from '../quantity.js'

/** Tail volumes by kind of aircraft: horizontal, vertical. */
const volumes = {
  sailplane: [0.5, 0.02],
  homebuilt: [0.5, 0.04],
  'general aviation, one engine': [0.7, 0.04],
  'general aviation, two engines': [0.8, 0.07],
  agricultural: [0.5, 0.04],
  'twin turboprop': [0.9, 0.08],
} as const

export type TailKind = keyof typeof volumes

export interface TailSizingOptions {
  /** Kind of aircraft whose usual volumes are taken; or give both volumes. */
  readonly kind?: TailKind
  readonly horizontalVolume?: Ratio
  readonly verticalVolume?: Ratio
  /** [m^2] */
  readonly wingArea: Area
  /** [m] */
  readonly span: Length
  /** Mean aerodynamic chord [m]. */
  readonly chord: Length
  /** From the centre of gravity to the quarter chord of the tails [m]. */
  readonly tailArm: Length
}

export interface TailSizing {
  /** [m^2] */
  readonly horizontalArea: Area
  /** [m^2] */
  readonly verticalArea: Area
  readonly horizontalVolume: Ratio
  readonly verticalVolume: Ratio
}

const method = 'wing.tailSizing'
const known = new Set(['kind', 'horizontalVolume', 'verticalVolume', 'wingArea', 'span', 'chord', 'tailArm'])
const kinds = Object.keys(volumes) as TailKind[]

/**
 * Tail areas from tail volumes.
 *
 * @equation S_h = V_h c S/l_t; S_v = V_v b S/l_t
 * @param options - `wingArea` S [m^2], `span` b [m], `chord` c [m], `tailArm` l_t [m], and `kind` of aircraft or `horizontalVolume` V_h
 * and `verticalVolume` V_v; a volume given goes before that of the kind
 * @returns `horizontalArea`, `verticalArea` [m^2], `horizontalVolume`, `verticalVolume`
 * @throws InvalidInput where neither a kind nor both volumes are given, for values that are not positive, volumes outside 0 to 3, an
 * unknown kind, and an unknown option
 * @method Statistics of past aeroplanes by kind: sailplane 0.50/0.02, homebuilt 0.50/0.04, one engine 0.70/0.04, two engines 0.80/0.07,
 * agricultural 0.50/0.04, twin turboprop 0.90/0.08.
 * @validity A first size. Nothing is published for lift plus cruise, whose booms and forward rotors take stability away: check with
 * `wing.neutralPoint` and the trim.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, table 6.4 (from memory).
 * @example
 * const tail = wing.tailSizing({ kind: 'general aviation, one engine', wingArea: 14 * u.m2, span: 11.8 * u.m, chord: 1.24 * u.m, tailArm: 5 * u.m })
 * tail.horizontalArea // 2.4304
 */
export function tailSizing(options: TailSizingOptions): TailSizing {
  checkOptions(method, options, known)
  const { kind, wingArea, span, chord, tailArm } = options
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePositive(method, 'span', span, 'm')
  requirePositive(method, 'chord', chord, 'm')
  requirePositive(method, 'tailArm', tailArm, 'm')
  if (kind !== undefined) requireChoice(method, 'kind', kind, kinds)
  const [usualHorizontal, usualVertical] = kind === undefined ? [] : volumes[kind]
  const horizontalVolume = options.horizontalVolume ?? usualHorizontal
  const verticalVolume = options.verticalVolume ?? usualVertical
  if (horizontalVolume === undefined || verticalVolume === undefined)
    throw new InvalidInput({
      method,
      argument: 'the tail volumes',
      value: 'missing',
      accepted: 'given as kind, or as horizontalVolume and verticalVolume',
    })
  requireVolume('horizontalVolume', horizontalVolume)
  requireVolume('verticalVolume', verticalVolume)
  const horizontalArea = (horizontalVolume * chord * wingArea) / tailArm
  const verticalArea = (verticalVolume * span * wingArea) / tailArm
  requireRepresentable(method, horizontalArea + verticalArea)
  return { horizontalArea, verticalArea, horizontalVolume, verticalVolume }
}

function requireVolume(argument: string, volume: number): void {
  requirePositive(method, argument, volume, '1')
  requireWithin(method, argument, volume, '1', 0, 3)
}
