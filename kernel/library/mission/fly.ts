import { adviseTemperature, coldest, hottest } from '../battery/pack-state.js'
import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { AbsoluteTemperature, Ratio, Time } from '../quantity.js'
import { isListening } from '../recorder.js'
import type { FlownDeficits, FlownMission, FlownRow, LastHover } from './flown.js'
import { type DemandOptions, deficitsOf, demandKeys, flyAll } from './fly-all.js'
import { adviseMission, explainLimit } from './mission-advisories.js'
import { requireFlyer } from './multirotor.js'
import { PackTrack } from './pack-track.js'
import { coarse, fine, type Progress } from './progress.js'
import { axialPower } from './rotor-borne.js'

export interface FlyOptions extends DemandOptions {
  /** At take-off; 1 when left out. */
  readonly stateOfCharge?: Ratio
  /** Of the cells at take-off [K]; 298.15 when left out. */
  readonly cellTemperature?: AbsoluteTemperature
  /** Of the air that cools the cells [K]; that of the cells at take-off when left out. */
  readonly ambient?: AbsoluteTemperature
  /** `'fine'` (when left out): steps of `maxStep`, path kept. `'coarse'`: steps of up to 600 s, no path, for sizing. */
  readonly steps?: 'fine' | 'coarse'
  /** Longest step of the battery with fine steps [s]; 10 when left out. */
  readonly maxStep?: Time
}

const known = new Set([...demandKeys, 'stateOfCharge', 'cellTemperature', 'ambient', 'steps', 'maxStep'])

/**
 * Flies a mission segment by segment with the battery integrated in time, and names the first limit with segment and second. What lacks is a signed deficit: only impossible input throws.
 *
 * @equation segments: hover and axial as `rotor.hover` and `rotor.axial`; transitions as `mission.transition`; wing-borne P = (D + W h'/V) V/(eta_p eta_c) + P_hotel; of a multirotor as `rotor.levelFlight`; battery: ds/dt = -I/Q, m c_p dT/dt = I^2 R - G
 * (T - T_a), integral of V_oc dQ = delivered + integral of I^2 R dt
 * @param options - `aircraft` (`mission.aircraft` or `mission.multirotor`) with a battery, `segments`; optional `altitude` of the field [m] (0), `temperatureOffset` [K] (0), `tailwind` [m/s] (0), `distance` of the sector [m], `stateOfCharge` (1),
 * `cellTemperature` [K] (298.15), `ambient` [K], `steps` (`'fine'` or `'coarse'`), `maxStep` [s] (10)
 * @returns `feasible`, `status`, `message`, `segment`, `second` [s]; `rows`: per segment `name`, `kind`, `time` [s], `distance` over ground [m], `energy` [J], `meanPower`, `peakPower` [W], `speed` [m/s],
 * `floorBinds`, `altitude` [m], `mass` [kg], `rotorPower`, `propellerPower` [W], `stateOfCharge`, `voltage` [V], `temperature` [K]; totals `time`, `distance`, `energy`, `peakPower`, `stateOfCharge`, `temperature`,
 * `greatestTemperature`, `heat`, `stored` [J], `openBalance`; `deficits`: `energy` [J], `packPower` [W], `temperature` [K], `liftPower`, `cruisePower` [W], `thrust` [N], `distance` [m], positive is lacking; `landing`:
 * `powerMargin`, `power`, `powerLimit` [W] of a hover when all is flown; `history`
 * @throws InvalidInput for an aircraft without a battery, segments that are none, a transition of a multirotor, a climb that goes down, a headwind beyond the speed over a distance, an open cruise without `distance`, and an unknown option
 * @method Quasi-static; legs of constant power (climbs in layers of 500 m, transitions in slices), the battery by the classical Runge-Kutta rule, the limit by Brent's root. Past a limit the flight goes
 * on: the pack gives what it can, the rest is counted as lacking energy.
 * @validity As the methods it calls. Changes of speed between wing-borne segments are not counted (the kinetic energy comes back in the return transition). A descent steeper than the glide
 * takes no power and gives none back. Advisories: the first limit met, a landing hover beyond the pack's power, a speed raised to the floor, a descent steeper than the glide or near the vortex ring,
 * the blade loading of the last hover. Coarse steps: energy and charge within 2e-3 of fine ones (random aircraft);
 * the lack of a pack that runs empty within some 4 % of the flight's energy.
 * @source Quasi-static mission: textbook (Anderson, Aircraft Performance and Design, 1999, from memory). Battery: as `battery.run`.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, download: 0.05, efficiency: 0.9, powerLimit: 500 * u.kW },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91, powerLimit: 180 * u.kW }, hotelPower: 2 * u.kW,
 *   battery: { cell: battery.cells.power18650, series: 200, parallel: 60, rating: 'peak' },
 * })
 * const flown = mission.fly({
 *   aircraft: craft, altitude: 600 * u.m, temperatureOffset: 15 * u.K,
 *   segments: [
 *     { kind: 'hover', time: 30 * u.s }, { kind: 'transition' }, { kind: 'climb', to: 900 * u.m, rate: 3 * u.mps },
 *     { kind: 'cruise', distance: 60 * u.km, speed: 58 * u.mps }, { kind: 'descent', to: 600 * u.m },
 *     { kind: 'reserve', time: 20 * u.min }, { kind: 'return transition' }, { kind: 'landing', time: 30 * u.s },
 *   ],
 * })
 * flown.feasible // true
 */
export function fly(options: FlyOptions): FlownMission {
  const method = 'mission.fly'
  checkOptions(method, options, known)
  const { stateOfCharge = 1, cellTemperature = 298.15, steps = 'fine', maxStep = 10 } = options
  const { ambient = cellTemperature } = options
  requireWithin(method, 'stateOfCharge', stateOfCharge, '1', 0, 1)
  requireWithin(method, 'cellTemperature', cellTemperature, 'K', coldest, hottest)
  requireWithin(method, 'ambient', ambient, 'K', 150, hottest)
  requireChoice(method, 'steps', steps, ['fine', 'coarse'])
  requirePositive(method, 'maxStep', maxStep, 's')
  const craft = requireFlyer(method, options.aircraft)
  if (craft.battery === undefined)
    throw new InvalidInput({
      method,
      argument: 'aircraft.battery',
      value: 'missing',
      accepted: '{ cell, series, parallel }',
      remedy: 'mission.demand tells energy and power without one.',
    })
  const track = new PackTrack(craft.battery, stateOfCharge, cellTemperature, ambient)
  const grain = steps === 'coarse' ? coarse : maxStep === 10 ? fine : { ...fine, maxStep }
  const { progress, missing } = flyAll(method, craft, options, grain, track)
  const answer = reportFlown(progress, track, missing)
  if (isListening()) {
    adviseTemperature(method, craft.battery.cell, cellTemperature)
    adviseMission(method, progress.moment, answer)
  }
  return answer
}

function reportFlown(progress: Progress, track: PackTrack, missing: number): FlownMission {
  const { status, time, distance, energy, peakPower } = progress
  const { heat, stored, unmet } = track
  const deficits: FlownDeficits = {
    energy: track.energyDeficit,
    packPower: -track.leastMargin,
    temperature: track.greatestTemperature - track.hottestAllowed,
    ...deficitsOf(progress, missing),
  }
  const delivered = energy - unmet
  const openBalance = stored > 0 ? (delivered + heat - stored) / stored : 0
  const landing = lastHover(progress, track)
  requireRepresentable(
    'mission.fly',
    time + distance + energy + peakPower + heat + stored + deficits.energy + deficits.packPower + landing.powerMargin,
  )
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
    rows: progress.rows as FlownRow[],
    deficits,
    landing,
    stateOfCharge: track.stateOfCharge,
    temperature: track.temperature,
    greatestTemperature: track.greatestTemperature,
    heat,
    stored,
    openBalance,
    history: progress.history,
  }
}

function lastHover(progress: Progress, track: PackTrack): LastHover {
  progress.look(progress.altitude)
  const { lift, hotelPower } = progress.craft
  const power = axialPower(progress.moment, 0) / lift.efficiency + hotelPower
  const { powerLimit } = track
  return { powerMargin: powerLimit - power, power, powerLimit }
}
