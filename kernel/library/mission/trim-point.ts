/** Trim at a speed: lift shared between wing and rotors, thrust against drag and inertia. No checks, no allocation. */
import type { Moment } from './moment.js'
import { type Edgewise, setEdgewise, turningShare } from './rotor-borne.js'

/** Written in place by `setTrim`. */
export interface TrimPoint extends Edgewise {
  speed: number
  wingLift: number
  liftCoefficient: number
  rotorLift: number
  /** Of polar, uncovered rotors and H-force. */
  drag: number
  /** Of the propeller; 0 where the aircraft must be braked. */
  propellerThrust: number
  /** At the shafts of all lift rotors. */
  rotorPower: number
  /** At the shaft. */
  propellerPower: number
  /** At the terminals of the battery, hotel power included. */
  power: number
}

export function buildTrimPoint(): TrimPoint {
  return {
    speed: 0,
    thrust: 0,
    inducedPower: 0,
    profilePower: 0,
    hForce: 0,
    wingLift: 0,
    liftCoefficient: 0,
    rotorLift: 0,
    drag: 0,
    propellerThrust: 0,
    rotorPower: 0,
    propellerPower: 0,
    power: 0,
  }
}

/** Steady or accelerating level flight at a speed; the wing flies at `liftCoefficient` until it carries all. */
export function setTrim(
  to: TrimPoint,
  moment: Moment,
  speed: number,
  acceleration: number,
  liftCoefficient: number,
): void {
  const { craft, weight, density } = moment
  const pressure = 0.5 * density * speed * speed
  const pressureArea = pressure * craft.wingArea
  to.speed = speed
  to.wingLift = Math.min(weight, pressureArea * liftCoefficient)
  to.rotorLift = weight - to.wingLift
  to.liftCoefficient = speed > 0 ? Math.min(liftCoefficient, weight / pressureArea) : liftCoefficient
  setEdgewise(to, moment, speed, to.rotorLift)
  const { zeroLiftDrag, inducedFactor } = craft.polar
  const coefficient = zeroLiftDrag + inducedFactor * to.liftCoefficient * to.liftCoefficient
  const uncovered = craft.lift.uncoveredDragArea * turningShare(to.thrust / moment.hoverThrust)
  to.drag = pressureArea * coefficient + pressure * uncovered + to.hForce
  to.rotorPower = to.inducedPower + to.profilePower
  setPropulsion(to, moment, to.drag + moment.mass * acceleration)
}

/** Propeller and battery power for a thrust; less than none is braking, for which nothing is taken. */
export function setPropulsion(to: TrimPoint, moment: Moment, thrust: number): void {
  const { cruise, lift, hotelPower } = moment.craft
  to.propellerThrust = Math.max(0, thrust)
  to.propellerPower = propellerPower(moment, to.propellerThrust, to.speed)
  to.power = to.rotorPower / lift.efficiency + to.propellerPower / cruise.efficiency + hotelPower
}

/**
 * Shaft power of the propeller. At low speed the induced flow takes over from the speed of flight: at rest the rating gives the
 * static thrust and power goes with thrust^1.5; the greater of the two counts (house model).
 */
export function propellerPower(moment: Moment, thrust: number, speed: number): number {
  const { propellerEfficiency, powerLimit, staticThrust } = moment.craft.cruise
  let flow = speed
  if (staticThrust !== undefined && powerLimit !== undefined) {
    const atRest = (propellerEfficiency * powerLimit) / staticThrust
    flow = Math.max(speed, atRest * Math.sqrt(thrust / staticThrust))
  }
  return (thrust * flow) / propellerEfficiency
}

/** Greatest thrust of the propeller at a speed; a number beyond any aircraft where no limit is stated. */
export function greatestThrust(moment: Moment, speed: number): number {
  const { propellerEfficiency, powerLimit, staticThrust } = moment.craft.cruise
  const unlimited = 1e12
  const byPower = powerLimit === undefined || speed <= 0 ? unlimited : (propellerEfficiency * powerLimit) / speed
  return Math.min(byPower, staticThrust ?? unlimited)
}
