import { requirePositive, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { adviseOutside, requireChoice } from '../outside.js'
import type { Ratio } from '../quantity.js'
import { type FrictionMethod, frictionMethods, frictionOf, laminarFriction } from './friction-lines.js'

export interface SkinFrictionOptions {
  /** On the length of the part along the stream. */
  readonly reynolds: Ratio
  /** `'Prandtl-Schlichting'` when left out; capitals, blanks and hyphens do not matter. */
  readonly method?: FrictionMethod | (string & {})
  /** 0 when left out. */
  readonly mach?: Ratio
  /** Share of the wetted area that is laminar, weighted by area; 0 when left out. */
  readonly laminarShare?: Ratio
  /** Reynolds number on the distance to where the flow turns turbulent; in place of `laminarShare`. */
  readonly transitionReynolds?: Ratio
  /** Height of the roughness over the length of the part; limits the turbulent Reynolds number. Smooth when left out. */
  readonly relativeRoughness?: Ratio
}

const caller = 'drag.skinFriction'
const known = new Set(['reynolds', 'method', 'mach', 'laminarShare', 'transitionReynolds', 'relativeRoughness'])
const least = 1e4
const greatest = 1e12

/**
 * Mean skin-friction coefficient of a flat plate, per wetted area.
 *
 * @equation laminar C = 1.328/sqrt(Re); Prandtl-Schlichting 0.455/(log10 Re)^2.58; Karman-Schoenherr 1/sqrt(C) = 4.13 log10(Re C);
 * ITTC-1957 0.075/(log10 Re - 2)^2; White 0.523/ln^2(0.06 Re); fifth-root 0.074/Re^0.2. Turbulent lines are divided by (1 + 0.144
 * M^2)^0.65. Transition: by area C = s C_lam + (1 - s) C_turb; by place C = C_turb(Re) - Re_tr (C_turb(Re_tr) - C_lam(Re_tr))/Re.
 * Roughness: Re in the turbulent line at most 38.21 (k/l)^-1.053
 * @param options - `reynolds` Re; optional `method` ('Prandtl-Schlichting'), `mach` M (0), `laminarShare` s (0) or `transitionReynolds`
 * Re_tr, `relativeRoughness` k/l
 * @returns the coefficient C
 * @throws InvalidInput for a Reynolds number outside 1e4 to 1e12, a Mach number outside 0 to 3, a share outside 0 to 1, both kinds of
 * transition at once, transition asked of the laminar line, an unknown method, and an unknown option
 * @method Smooth plate, mean over the length from its front edge. Lines printed elsewhere as 0.42/ln^2(0.056 Re) are local coefficients
 * and not meant here.
 * @validity Laminar to Re = 1e6, Prandtl-Schlichting and Karman-Schoenherr 1e5 to 1e9, ITTC 1e5 to 1e10, White 1e5 to 1e9, fifth-root
 * 2e5 to 1e7; outside an advisory (ranges from memory). The lines differ by 16 % at 2e5 and 2 % at 1e7.
 * @source Prandtl-Schlichting, ITTC and Blasius: read second-hand; Schoenherr, K. E., 1932, constant from memory; White, F. M., Viscous
 * Fluid Flow, from memory; roughness and compressibility: Raymer, D. P., Aircraft Design: A Conceptual Approach, equations 12.27 to
 * 12.29 (from memory).
 * @example
 * drag.skinFriction({ reynolds: 1e7, method: 'ITTC-1957' }) // 0.003
 */
export function skinFriction(options: SkinFrictionOptions): Ratio {
  const checked = checkFriction(options)
  const { reynolds, method, mach, relativeRoughness, transitionReynolds } = checked
  watchReynolds(method, reynolds)
  if (method === 'laminar') return laminarFriction(reynolds)
  if (transitionReynolds !== undefined && reynolds <= transitionReynolds) return laminarFriction(reynolds)
  const compressible = (1 + 0.144 * mach * mach) ** 0.65
  const cutOff = relativeRoughness === undefined ? greatest : 38.21 * relativeRoughness ** -1.053
  // No surface is so rough that its line leaves the Reynolds numbers for which lines exist.
  const turbulent = frictionOf(method, Math.max(least, Math.min(reynolds, cutOff))) / compressible
  if (transitionReynolds === undefined)
    return checked.laminarShare * laminarFriction(reynolds) + (1 - checked.laminarShare) * turbulent
  const before = frictionOf(method, transitionReynolds) / compressible - laminarFriction(transitionReynolds)
  return Math.max(laminarFriction(reynolds), turbulent - (transitionReynolds * before) / reynolds)
}

interface Checked {
  readonly reynolds: number
  readonly method: FrictionMethod
  readonly mach: number
  readonly laminarShare: number
  readonly transitionReynolds: number | undefined
  readonly relativeRoughness: number | undefined
}

function checkFriction(options: SkinFrictionOptions): Checked {
  checkOptions(caller, options, known)
  const { reynolds, mach = 0, laminarShare = 0, transitionReynolds, relativeRoughness } = options
  const method = readFrictionMethod(caller, 'method', options.method)
  requireWithin(caller, 'reynolds', reynolds, '1', least, greatest)
  requireWithin(caller, 'mach', mach, '1', 0, 3)
  requireWithin(caller, 'laminarShare', laminarShare, '1', 0, 1)
  if (transitionReynolds !== undefined)
    requireWithin(caller, 'transitionReynolds', transitionReynolds, '1', least, greatest)
  if (relativeRoughness !== undefined) {
    requirePositive(caller, 'relativeRoughness', relativeRoughness, '1')
    requireWithin(caller, 'relativeRoughness', relativeRoughness, '1', 0, 0.1)
  }
  if (transitionReynolds !== undefined && options.laminarShare !== undefined)
    throw new InvalidInput({
      method: caller,
      argument: 'transition',
      value: 'given twice',
      accepted: 'given as laminarShare or as transitionReynolds',
    })
  if (method === 'laminar' && (transitionReynolds !== undefined || options.laminarShare !== undefined))
    throw new InvalidInput({
      method: caller,
      argument: 'transition',
      value: 'asked of the laminar line',
      accepted: 'asked of a turbulent line',
    })
  return { reynolds, method, mach, laminarShare, transitionReynolds, relativeRoughness }
}

/** Names of people and conferences are spelt in many ways: capitals, blanks and hyphens do not matter. */
export function readFrictionMethod(caller: string, argument: string, given: string | undefined): FrictionMethod {
  if (given === undefined) return 'Prandtl-Schlichting'
  const plain = (text: string) => text.toLowerCase().replace(/[^a-z0-9]/g, '')
  const found = typeof given === 'string' ? frictionMethods.find((name) => plain(name) === plain(given)) : undefined
  return found ?? requireChoice(caller, argument, given as FrictionMethod, frictionMethods)
}

const ranges: Readonly<Record<FrictionMethod, readonly [number, number]>> = {
  laminar: [least, 1e6],
  'Prandtl-Schlichting': [1e5, 1e9],
  'Karman-Schoenherr': [1e5, 1e9],
  'ITTC-1957': [1e5, 1e10],
  White: [1e5, 1e9],
  'fifth-root': [2e5, 1e7],
}

function watchReynolds(method: FrictionMethod, reynolds: number): void {
  const [low, high] = ranges[method]
  adviseOutside(reynolds, {
    code: 'FRICTION_REYNOLDS',
    method: caller,
    quantity: 'reynolds',
    low,
    high,
    because: `the ${method} line holds from ${low.toExponential(0)} to ${high.toExponential(0)}`,
  })
}
