/** The constraint diagram: which wing loadings and powers meet every requirement at once, and which requirement a design meets last. */
import { requirePositive, requireRepresentable, requireShare } from '../check.js'
import { type ParabolicPolar, requirePolar } from '../drag/polar.js'
import { checkOptions } from '../errors.js'
import type { Pressure, Ratio, SpecificPower } from '../quantity.js'
import { silently } from '../recorder.js'
import { requireList, requireRising } from '../shapes.js'
import {
  type Constraint,
  greatestWingLoading,
  readConstraint,
  type StallConstraint,
  specificPowerFor,
} from './constraint.js'

export interface DesignPoint {
  /** Weight per wing area [N/m^2]. */
  readonly wingLoading: Pressure
  /** Shaft power of the cruise propulsion per gross mass [W/kg]. */
  readonly specificPower: SpecificPower
}

export interface ConstraintDiagramOptions {
  /** `drag.polar`, at the wing whose loading varies. */
  readonly polar: ParabolicPolar
  /** Thrust power over shaft power. */
  readonly propellerEfficiency: Ratio
  readonly constraints: readonly Constraint[]
  readonly design?: DesignPoint
  /** At which the curves are worked out, rising [N/m^2]; 81 around the limits and the design when left out. */
  readonly wingLoadings?: readonly Pressure[]
}

export interface ConstraintCurve extends DesignLine {
  readonly name: string
  readonly kind: Constraint['kind']
}

/** Two lists of equal length. */
export interface DesignLine {
  /** [N/m^2] */
  readonly wingLoading: readonly Pressure[]
  /** [W/kg] */
  readonly specificPower: readonly SpecificPower[]
}

export interface WingLoadingLimit {
  readonly name: string
  /** Greatest that is allowed [N/m^2]. */
  readonly wingLoading: Pressure
}

/** How far a design point is from a requirement, as a share of what is required; negative is not met. */
export interface ConstraintMargin {
  readonly name: string
  readonly margin: Ratio
}

export interface ConstraintDiagram {
  readonly curves: readonly ConstraintCurve[]
  readonly limits: readonly WingLoadingLimit[]
  /** What all curves ask for together, over all wing loadings of the diagram. */
  readonly required: DesignLine & { readonly binds: readonly string[] }
  /** Least power at an allowed wing loading. */
  readonly best: DesignPoint & { readonly binds: string }
  /** Greatest wing loading allowed [N/m^2]; the last of the diagram where no requirement bounds it. */
  readonly greatestWingLoading: Pressure
  readonly design?: DesignPoint & {
    readonly feasible: boolean
    /** The requirement that the design meets with least to spare, or misses by most. */
    readonly binds: string
    readonly margin: Ratio
    /** The one behind it; absent where there is only one. */
    readonly next?: ConstraintMargin
    /** All of them, the tightest first. */
    readonly margins: readonly ConstraintMargin[]
  }
}

const method = 'sizing.constraintDiagram'
const known = new Set(['polar', 'propellerEfficiency', 'constraints', 'design', 'wingLoadings'])
const knownDesign = new Set(['wingLoading', 'specificPower'])
const points = 81

/**
 * Constraint diagram of the wing-borne aircraft: power per mass over wing loading, each requirement a line, and where a design stands.
 *
 * @equation stall: W/S <= rho/2 (V/margin)^2 C_L,max; others: P/m = (g/eta) (V D/W + V_climb), D/W = q C_D0/(W/S) + n^2 K (W/S)/q; V of least power sqrt(2 (W/S)/(rho sqrt(3 C_D0/K))) where a climb names none
 * @param options - `polar`, `propellerEfficiency` eta, `constraints`: list of `{ kind: 'stall', density, speed, maximumLift, margin }`, `{ kind: 'cruise', density, speed }`,
 * `{ kind: 'climb' | 'ceiling', density, climbSpeed, speed }`, `{ kind: 'turn', density, speed, loadFactor }`, each with a `name` if wanted; optional `design` `{ wingLoading [N/m^2],
 * specificPower [W/kg] }`, `wingLoadings` (rising list [N/m^2])
 * @returns `curves` and `limits` by name, `required` (the upper envelope, with what `binds`), `best` (least power within the limits), `greatestWingLoading`, and for the `design` whether it is
 * `feasible`, what `binds`, its `margin`, the `next` and all `margins`
 * @throws InvalidInput for no constraints, an unknown kind, values that are not positive, wing loadings that do not rise, and an unknown option
 * @method Closed form at each wing loading; electric motors lose no power with altitude, so density acts through the drag alone. `best` is the least of the envelope's points: finer with more points.
 * @validity Small climb angles, parabolic polar, one propeller efficiency. Powers at lift coefficients beyond the stall are drawn but lie right of the stall limit. Lift rotors: `sizing.diskLoadingWindow`.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, chapter on thrust-to-weight ratio and wing loading and Anderson, J. D., Aircraft Performance and Design, 1999, chapter 5 (both from memory).
 * @example
 * const diagram = sizing.constraintDiagram({
 *   polar: drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 }), propellerEfficiency: 0.84,
 *   constraints: [
 *     { kind: 'stall', name: 'conversion', density: 1.1, speed: 45 * u.mps, maximumLift: 1.5, margin: 1.2 },
 *     { kind: 'cruise', density: 1.1, speed: 58 * u.mps }, { kind: 'climb', density: 1.1, climbSpeed: 4 * u.mps },
 *   ],
 *   design: { wingLoading: 1070 * u.Pa, specificPower: (75 * u.W) / u.kg },
 * })
 * diagram.greatestWingLoading // 1160.2
 */
export function constraintDiagram(options: ConstraintDiagramOptions): ConstraintDiagram {
  checkOptions(method, options, known)
  const { polar, propellerEfficiency, design } = options
  requirePolar(method, polar)
  requireShare(method, 'propellerEfficiency', propellerEfficiency)
  requireList(method, 'constraints', options.constraints, "{ kind: 'cruise', density, speed } or the like")
  const constraints = options.constraints.map((one, index) => readConstraint(method, `constraints[${index}]`, one))
  if (design !== undefined) requireDesign(design)
  const stalls = constraints.filter((one): one is StallConstraint & { name: string } => one.kind === 'stall')
  const limits = stalls.map((one) => ({ name: one.name, wingLoading: greatestWingLoading(one) }))
  const wingLoading = readWingLoadings(options, limits, constraints)
  const curves = constraints.flatMap((one): ConstraintCurve[] =>
    one.kind === 'stall'
      ? []
      : [{ name: one.name, kind: one.kind, ...curveOf(one, polar, wingLoading, propellerEfficiency) }],
  )
  const greatest = Math.min(wingLoading.at(-1) as number, ...limits.map((limit) => limit.wingLoading))
  const required = envelopeOf(curves, wingLoading)
  const best = bestOf(constraints, required, greatest, polar, propellerEfficiency)
  const place = design === undefined ? {} : { design: placeOf(design, constraints, limits, polar, propellerEfficiency) }
  const answer = { curves, limits, required, best, greatestWingLoading: greatest, ...place }
  requireRepresentable(
    method,
    required.specificPower.reduce((sum, power) => sum + power, greatest + best.specificPower),
  )
  return answer
}

function requireDesign(design: DesignPoint): void {
  checkOptions(`${method} design`, design, knownDesign)
  requirePositive(method, 'design.wingLoading', design.wingLoading, 'N/m^2')
  requirePositive(method, 'design.specificPower', design.specificPower, 'W/kg')
}

function readWingLoadings(
  options: ConstraintDiagramOptions,
  limits: readonly WingLoadingLimit[],
  constraints: readonly Constraint[],
): readonly number[] {
  if (options.wingLoadings !== undefined) {
    requireRising(method, 'wingLoadings', options.wingLoadings, 2)
    requirePositive(method, 'wingLoadings[0]', options.wingLoadings[0] as number, 'N/m^2')
    return options.wingLoadings
  }
  const places = [...limits.map((limit) => limit.wingLoading)]
  if (options.design !== undefined) places.push(options.design.wingLoading)
  // Without either: around the loading flown at a lift coefficient of one.
  for (const one of constraints)
    if (places.length === 0 && one.speed !== undefined) places.push(0.5 * one.density * one.speed * one.speed)
  const middle = places.length === 0 ? 1000 : Math.max(...places)
  requireRepresentable(method, middle)
  const from = 0.25 * Math.min(middle, ...places)
  const to = 1.35 * middle
  return Array.from({ length: points }, (_, index) => from + ((to - from) * index) / (points - 1))
}

function curveOf(
  constraint: Exclude<Constraint, StallConstraint>,
  polar: ParabolicPolar,
  wingLoading: readonly number[],
  efficiency: number,
): DesignLine {
  return silently(() => ({
    wingLoading,
    specificPower: wingLoading.map((loading) => specificPowerFor(method, constraint, polar, loading, efficiency)),
  }))
}

function envelopeOf(curves: readonly ConstraintCurve[], wingLoading: readonly number[]): ConstraintDiagram['required'] {
  const highest = wingLoading.map((_, index) =>
    curves.reduce(
      (most, curve) =>
        (curve.specificPower[index] as number) > most.power
          ? { power: curve.specificPower[index] as number, name: curve.name }
          : most,
      { power: 0, name: '' },
    ),
  )
  return {
    wingLoading,
    specificPower: highest.map((one) => one.power),
    binds: highest.map((one) => one.name),
  }
}

/** Least power among the envelope's points and the greatest wing loading itself, which is seldom one of them. */
function bestOf(
  constraints: readonly (Constraint & { name: string })[],
  required: ConstraintDiagram['required'],
  greatest: number,
  polar: ParabolicPolar,
  efficiency: number,
): ConstraintDiagram['best'] {
  let best = { wingLoading: greatest, specificPower: 0, binds: '' }
  for (const one of constraints) {
    if (one.kind === 'stall') continue
    const specificPower = silently(() => specificPowerFor(method, one, polar, greatest, efficiency))
    if (specificPower > best.specificPower) best = { wingLoading: greatest, specificPower, binds: one.name }
  }
  required.wingLoading.forEach((wingLoading, index) => {
    const specificPower = required.specificPower[index] as number
    if (wingLoading <= greatest && specificPower < best.specificPower)
      best = { wingLoading, specificPower, binds: required.binds[index] as string }
  })
  return best
}

function placeOf(
  design: DesignPoint,
  constraints: readonly (Constraint & { name: string })[],
  limits: readonly WingLoadingLimit[],
  polar: ParabolicPolar,
  efficiency: number,
): NonNullable<ConstraintDiagram['design']> {
  const powers = constraints.flatMap((one) => {
    if (one.kind === 'stall') return []
    const needed = silently(() => specificPowerFor(method, one, polar, design.wingLoading, efficiency))
    return [{ name: one.name, margin: design.specificPower / needed - 1 }]
  })
  const margins = [
    ...limits.map(({ name, wingLoading }) => ({ name, margin: 1 - design.wingLoading / wingLoading })),
    ...powers,
  ].sort((a, b) => a.margin - b.margin)
  const [first, next] = margins as [ConstraintMargin, ConstraintMargin?]
  requireRepresentable(
    method,
    margins.reduce((sum, one) => sum + one.margin, 0),
  )
  return {
    ...design,
    feasible: first.margin >= 0,
    binds: first.name,
    margin: first.margin,
    ...(next === undefined ? {} : { next }),
    margins,
  }
}
