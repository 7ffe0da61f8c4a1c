import type { Figure, Mark } from '../../../shared/contracts/figure.js'
import type { LiftRotor, PlanPoint, Trim } from '../authority/index.js'
import { requireFinite, requireNonNegative } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { buildAxis, requireCaption } from './axis.js'
import { freezeFigure } from './freeze.js'

export interface LossPlanOptions {
  readonly rotors: readonly LiftRotor[]
  /** From `authority.trim`, or one of the cases of `authority.losses`. */
  readonly trim: Trim & { readonly lost?: readonly number[] }
  /** Places of rotors that stand still; those of the trim when left out. */
  readonly lost?: readonly number[]
  readonly centreOfGravity?: PlanPoint
  /** Rotors of each bus, joined by a line: `buses` of `authority.pairing`. */
  readonly buses?: readonly (readonly number[])[]
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.lossPlan'
const known = new Set(['rotors', 'trim', 'lost', 'centreOfGravity', 'buses', 'caption', 'description'])

/**
 * Plan view of the lift rotors after a loss: each disc filled as far as its thrust goes, with its thrust over the mean of normal hover.
 *
 * @equation filled radius = R sqrt(T_i/T_peak); number: n T_i over the sum of thrusts
 * @param options - `rotors`; `trim` of `authority.trim` or a case of `authority.losses`; optional `lost` places (the trim's own), `centreOfGravity`, `buses`
 * (rotors of each, joined by a line), `caption`, `description`
 * @returns a figure to scale: forward up, right to the right
 * @throws InvalidInput for a trim of other rotors, places that are none, and an unknown option
 * @method Words number the rotors from 1, as `figure.planView` does. Radii as the rotors carry them; 0.42 of the least distance where they carry none.
 * @validity Draws what it is given.
 * @source House convention, no publication.
 * @example
 * const four = [1, -1, 1, -1].map((spin, i) => ({
 *   x: [2, 2, -2, -2][i], y: [2, -2, -2, 2][i], spin, maxThrust: 9 * u.kN, torqueRatio: 0.1,
 * }))
 * const drawn = figure.lossPlan({ rotors: four, lost: [0], trim: authority.trim({ rotors: four, weight: 12 * u.kN, lost: [0], hold: ['lift', 'roll', 'pitch'] }) })
 */
export function lossPlan(options: LossPlanOptions): Figure {
  checkOptions(method, options, known)
  const { rotors, trim, buses = [], centreOfGravity } = options
  checkPlan(options)
  const lost = options.lost ?? trim.lost ?? []
  const {
    caption = lost.length === 0
      ? 'Thrust in normal hover'
      : `Thrust with rotor ${lost.map((at) => at + 1).join(' and ')} lost`,
  } = options
  requireCaption(method, 'caption', caption)
  if (options.description !== undefined) requireCaption(method, 'description', options.description)
  const radii = radiiOf(rotors)
  const peak = Math.max(...trim.thrusts)
  const mean = trim.thrusts.reduce((sum, thrust) => sum + thrust, 0) / rotors.length
  const discs = rotors.flatMap((rotor, at): Mark[] => {
    const [thrust, radius] = [trim.thrusts[at] as number, radii[at] as number]
    const gone = lost.includes(at)
    const filled = peak > 0 ? radius * Math.sqrt(Math.max(0, thrust) / peak) : 0
    const here = { x: rotor.y, y: rotor.x }
    return [
      {
        mark: 'circle',
        ...here,
        radius,
        ink: gone ? 'warning' : 'ink',
        ...(gone ? { broken: true } : {}),
      },
      ...(filled > 0 && !gone
        ? [{ mark: 'circle', ...here, radius: filled, filled: true, ink: 'accent' } as const]
        : []),
      { mark: 'text', ...here, text: gone ? 'lost' : (mean > 0 ? thrust / mean : 0).toFixed(2), anchor: 'middle' },
    ]
  })
  const joined = buses.map(
    (bus, at): Mark => ({
      mark: 'line',
      x: bus.map((place) => (rotors[place] as LiftRotor).y),
      y: bus.map((place) => (rotors[place] as LiftRotor).x),
      ink: at % 2 === 0 ? 'second' : 'third',
      broken: true,
    }),
  )
  const centre: Mark[] =
    centreOfGravity === undefined
      ? []
      : [{ mark: 'dot', x: [centreOfGravity.y], y: [centreOfGravity.x], names: ['centre of gravity'], ink: 'ink' }]
  return freezeFigure({
    figure: 'plot',
    caption,
    description: options.description ?? tell(caption, trim, lost, mean),
    toScale: true,
    x: buildAxis(method, 'x', { label: 'right', unit: 'm' }),
    y: buildAxis(method, 'y', { label: 'forward', unit: 'm' }),
    marks: [...joined, ...discs, ...centre],
  })
}

function tell(caption: string, trim: Trim, lost: readonly number[], mean: number): string {
  const shares = trim.thrusts.flatMap((thrust, at) =>
    lost.includes(at) ? [] : [`rotor ${at + 1} ${(mean > 0 ? thrust / mean : 0).toFixed(2)}`],
  )
  const given = trim.cannotHold.length === 0 ? '' : ` Given up: ${trim.cannotHold.join(', ')}.`
  return `${caption}. Thrust over the mean of hover: ${shares.join(', ')}.${given}`.slice(0, 2000)
}

function checkPlan({ rotors, trim, lost, buses = [], centreOfGravity }: LossPlanOptions): void {
  const same =
    Array.isArray(rotors) && rotors.length > 0 && Array.isArray(trim?.thrusts) && trim.thrusts.length === rotors.length
  if (!same || !Array.isArray(trim.cannotHold))
    throw new InvalidInput({
      method,
      argument: 'trim',
      value: describeValue(trim),
      accepted: 'a trim of authority.trim for the rotors given',
    })
  rotors.forEach((rotor, at) => {
    requireFinite(method, `rotors[${at}].x`, rotor.x, 'm')
    requireFinite(method, `rotors[${at}].y`, rotor.y, 'm')
    requireNonNegative(method, `rotors[${at}].radius`, rotor.radius ?? 0, 'm')
    requireFinite(method, `trim.thrusts[${at}]`, trim.thrusts[at] as number, 'N')
  })
  for (const place of [...(lost ?? []), ...buses.flat()])
    if (!Number.isInteger(place) || place < 0 || place >= rotors.length)
      throw new InvalidInput({
        method,
        argument: 'a place in lost or buses',
        value: describeValue(place),
        accepted: `from 0 to ${rotors.length - 1}`,
      })
  if (centreOfGravity !== undefined) {
    requireFinite(method, 'centreOfGravity.x', centreOfGravity.x, 'm')
    requireFinite(method, 'centreOfGravity.y', centreOfGravity.y, 'm')
  }
}

function radiiOf(rotors: readonly LiftRotor[]): number[] {
  let least = Number.POSITIVE_INFINITY
  rotors.forEach((one, at) => {
    for (const other of rotors.slice(at + 1)) {
      const apart = Math.hypot(one.x - other.x, one.y - other.y)
      if (apart > 0) least = Math.min(least, apart)
    }
  })
  const usual = least < Number.POSITIVE_INFINITY ? 0.42 * least : 1
  return rotors.map((rotor) => rotor.radius ?? usual)
}
