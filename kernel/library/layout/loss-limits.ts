import { gravity } from '../air/constants.js'
import { buildProblem, greatest } from '../authority/allocate.js'
import type { Axis } from '../authority/axes.js'
import { buildRows } from '../authority/effectiveness.js'
import { type Hover, readHover } from '../authority/trim.js'
import { checkOptions } from '../errors.js'
import type { Length, Mass, Ratio } from '../quantity.js'
import { silently } from '../recorder.js'
import type { GravityLimit } from './gravity-limit.js'
import { type HoverLimitsOptions, hoverLimits, readHoverLimits } from './hover-limits.js'

export interface LossLimitsOptions extends HoverLimitsOptions {
  /** Axes that must be kept; lift, roll, pitch and yaw when left out. */
  readonly hold?: readonly Axis[]
}

export interface LossLimits extends GravityLimit {
  readonly label: string
  /** Masses at which every loss can be trimmed somewhere; less of them than asked for where none can [kg]. */
  readonly mass: readonly Mass[]
  /** [m] */
  readonly forward: readonly Length[]
  /** [m] */
  readonly aft: readonly Length[]
  /** Place of the rotor, from 0, whose loss sets each end. */
  readonly binds: readonly { readonly forward: Ratio; readonly aft: Ratio }[]
}

const method = 'layout.lossLimits'
const known = new Set(['units', 'masses', 'thrustFactor', 'usableShare', 'across', 'hold'])
/** Places tried for a beginning, and halvings from there: to a millionth of the range of hover trim. */
const trials = 33
const halvings = 16

/**
 * Where the centre of gravity may lie so that hover can be trimmed after the loss of any one rotor.
 *
 * @equation largest and least x_cg for which, for each lost rotor j, thrusts 0 <= f_i <= s T_max,i with f_j = 0 give lift k m g and no moment about the axes held
 * @param options - `units`: what `layout.units` returns, `masses`: rising list [kg]; optional `thrustFactor` k (1), `usableShare` s (1), `across` y_cg [m] (0), `hold`: axes kept (lift, roll, pitch, yaw)
 * @returns a limit that `layout.gravityMargins` and `figure.loadingEnvelope` take: `label`, `mass` [kg], `forward`, `aft` [m]; with `binds`: for each mass the rotors, from 0, whose loss sets the ends
 * @throws InvalidInput as `layout.hoverLimits`, for more than 24 rotors, an axis that is none, and an unknown option
 * @method The linear program of `authority.trim` for each loss, and halving between a place that trims and one that does not: within a millionth of the range of `layout.hoverLimits`. A range narrower than a
 * thirtieth of it may be missed.
 * @validity As `authority.trim`: a trim at the limit leaves nothing to steer with; keep a share with `usableShare`.
 * @source As `authority.trim`.
 * @example
 * const eight = layout.units(layout.multirotor({ count: 8, rotorRadius: 1 * u.m }), { maxThrust: 4 * u.kN, torqueRatio: 0.1 * u.m })
 * const limit = layout.lossLimits({ units: eight, masses: [1500 * u.kg] })
 * limit.forward[0] // 0.8997
 */
export function lossLimits(options: LossLimitsOptions): LossLimits {
  checkOptions(method, options, known)
  const { hold, ...shared } = options
  const { units, masses, thrustFactor, usableShare, across } = readHoverLimits(method, shared)
  const rotors = units.map(({ x, y, z, spin, torqueRatio, cant, maxThrust }) => ({
    ...{ x, y, z, spin, torqueRatio, cant, maxThrust: maxThrust * usableShare },
  }))
  const intact = silently(() => hoverLimits(shared))
  const rows = masses.flatMap((mass, at) => {
    const [forward, aft] = [intact.forward[at], intact.aft[at]]
    if (forward === undefined || aft === undefined) return []
    const hover = readHover(method, {
      rotors,
      weight: mass * gravity * thrustFactor,
      ...(hold === undefined ? {} : { hold }),
    })
    const found = rangeOf(hover, forward, aft, across)
    return found === null ? [] : [{ mass, ...found }]
  })
  return {
    label: 'any rotor lost',
    mass: rows.map((row) => row.mass),
    forward: rows.map((row) => row.forward.at),
    aft: rows.map((row) => row.aft.at),
    binds: rows.map((row) => ({ forward: row.forward.binds, aft: row.aft.binds })),
  }
}

/** Both ends of where every loss trims; null where none of the places tried does. */
function rangeOf(hover: Hover, forward: number, aft: number, across: number) {
  const places = Array.from({ length: trials }, (_, step) => aft + ((forward - aft) * step) / (trials - 1))
  const sound = places.filter((x) => missingAt(hover, x, across) === null)
  const [first, last] = [sound[0], sound.at(-1)]
  if (first === undefined || last === undefined) return null
  const room = (forward - aft) / (trials - 1)
  return { forward: endFrom(hover, last, room, across), aft: endFrom(hover, first, -room, across) }
}

/** From a place that trims towards one, `step` farther, that does not. */
function endFrom(
  hover: Hover,
  from: number,
  step: number,
  across: number,
): { readonly at: number; readonly binds: number } {
  let [good, bad] = [from, from + step]
  let binds = missingAt(hover, bad, across)
  // The range of hover trim ends here already, to rounding: the loss of a rotor cannot widen it.
  if (binds === null) return { at: good, binds: 0 }
  for (let turn = 0; turn < halvings; turn += 1) {
    const middle = (good + bad) / 2
    const missing = missingAt(hover, middle, across)
    if (missing === null) good = middle
    else [bad, binds] = [middle, missing]
  }
  return { at: good, binds }
}

/** The first rotor whose loss cannot be trimmed with the centre of gravity there; null where every one can. */
function missingAt({ rotors, limits, weight, hold, demand }: Hover, x: number, y: number): number | null {
  const rows = buildRows(rotors, { x, y })
  for (let lost = 0; lost < rotors.length; lost += 1) {
    const problem = buildProblem(rows, limits, new Set([lost]), weight, demand)
    if (greatest(problem, problem.rows.lift, hold) === undefined) return lost
  }
  return null
}
