import { requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Demand, DemandRow } from './flown.js'
import { type DemandOptions, deficitsOf, demandKeys, flyAll } from './fly-all.js'
import { explainLimit } from './mission-advisories.js'
import { requireFlyer } from './multirotor.js'
import { coarse } from './progress.js'

const method = 'mission.demand'
const known = new Set(demandKeys)

/**
 * What a mission asks for, without a battery: energy and power segment by segment. The quickest form.
 *
 * @equation as `mission.fly`, without the battery's own
 * @param options - as `mission.fly`, without what concerns the battery: `aircraft`, `segments`; optional `altitude` [m] (0), `temperatureOffset` [K] (0), `tailwind` [m/s] (0), `distance` of the sector [m]
 * @returns `rows` without charge, voltage and temperature; totals `time` [s], `distance` [m], `energy` [J] at the terminals, `peakPower` [W]; `feasible`, `status`, `message`, `segment`, `second`; `deficits`: `liftPower`,
 * `cruisePower` [W], `thrust` [N], `distance` [m]
 * @throws InvalidInput as `mission.fly`
 * @method As `mission.fly`, with the coarse slices of transitions.
 * @validity As `mission.fly`: energy within 2e-3 of it.
 * @source As `mission.fly`.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9 },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 * })
 * const asked = mission.demand({ aircraft: craft, segments: [{ kind: 'hover', time: 90 * u.s }] })
 * asked.energy / u.kWh // 9.616
 */
export function demand(options: DemandOptions): Demand {
  checkOptions(method, options, known)
  const craft = requireFlyer(method, options.aircraft)
  const { progress, missing } = flyAll(method, craft, options, coarse, undefined)
  const { status, time, distance, energy, peakPower } = progress
  requireRepresentable(method, time + distance + energy + peakPower)
  return {
    feasible: status === 'ok',
    status,
    message: explainLimit(progress),
    segment: progress.segment,
    second: progress.second,
    time,
    distance,
    energy,
    peakPower,
    rows: progress.rows as DemandRow[],
    deficits: deficitsOf(progress, missing),
  }
}
