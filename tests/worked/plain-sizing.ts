/**
 * The worked sizing problem by nothing but its formulas: no kernel, no units, another root finder. It scans upward for the first
 * sign change of the excess and bisects there, so it can only ever find the smaller mass. House example; checks arithmetic, not nature.
 */

export const worked = {
  altitude: 600,
  temperatureOffset: 15,
  payload: 400,
  rotorCount: 8,
  rotorRadius: 1.3,
  download: 0.05,
  figureOfMerit: 0.72,
  hoverElectricalEfficiency: 0.9,
  hoverTime: 90,
  cruiseSpeed: 58,
  peakThrustRatio: 16 / 11,
  motorSpecificPower: 5000,
  systemsFixed: 90,
  rotorMass: 6.5,
  maximumLift: 1.5,
  wingArea: 15,
  aspectRatio: 11,
  spanEfficiency: 0.8,
  cleanDragArea: 0.42,
  stoppedRotorDragArea: 0.018,
  propellerEfficiency: 0.84,
  cruiseElectricalEfficiency: 0.91,
  range: 85_000,
  reserveTime: 1200,
  packSpecificEnergy: 235 * 3600,
  usableShare: 0.8,
  structureShare: 0.32,
  systemsShare: 0.03,
  hotelPower: 2000,
  stallMargin: 1.3,
}
export type WorkedInput = typeof worked

const g = 9.80665

/** Everything the sheet states, at a given mass; `required` is the sum of the masses. */
export function stateAt(mass: number, input: WorkedInput) {
  const standardTemperature = 288.15 - 0.0065 * input.altitude
  const pressure = 101_325 * (standardTemperature / 288.15) ** (g / (0.0065 * 287.05287))
  const density = pressure / (287.05287 * (standardTemperature + input.temperatureOffset))
  const area = input.rotorCount * Math.PI * input.rotorRadius ** 2
  const thrust = (mass * g) / (1 - input.download)
  const hoverPower = (thrust * Math.sqrt(thrust / (2 * density * area))) / input.figureOfMerit
  const zeroLift = (input.cleanDragArea + input.rotorCount * input.stoppedRotorDragArea) / input.wingArea
  const k = 1 / (Math.PI * input.aspectRatio * input.spanEfficiency)
  const weight = mass * g
  const power = (speed: number) => {
    const q = 0.5 * density * speed ** 2
    const lift = weight / (q * input.wingArea)
    return q * input.wingArea * (zeroLift + k * lift ** 2) * speed
  }
  const leastPowerSpeed = Math.sqrt(((2 * weight) / (density * input.wingArea)) * Math.sqrt(k / (3 * zeroLift)))
  const stallSpeed = Math.sqrt((2 * weight) / (density * input.wingArea * input.maximumLift))
  const reserveSpeed = Math.max(leastPowerSpeed, input.stallMargin * stallSpeed)
  const cruiseTime = input.range / input.cruiseSpeed
  const propulsive = input.propellerEfficiency * input.cruiseElectricalEfficiency
  const energy =
    (hoverPower / input.hoverElectricalEfficiency) * input.hoverTime +
    (power(input.cruiseSpeed) * cruiseTime + power(reserveSpeed) * input.reserveTime) / propulsive +
    input.hotelPower * (input.hoverTime + cruiseTime + input.reserveTime)
  const batteryMass = energy / (input.packSpecificEnergy * input.usableShare)
  const motorMass = (hoverPower * input.peakThrustRatio ** 1.5) / input.motorSpecificPower
  const required =
    input.payload +
    batteryMass +
    motorMass +
    input.structureShare * mass +
    input.systemsFixed +
    input.systemsShare * mass +
    input.rotorCount * input.rotorMass
  const cruisePower = power(input.cruiseSpeed)
  return {
    required,
    density,
    diskLoading: thrust / area,
    hoverPower,
    cruisePower,
    liftToDrag: (weight * input.cruiseSpeed) / cruisePower,
    stallSpeed,
    reserveSpeed,
    reservePower: power(reserveSpeed),
    energy,
    batteryMass,
    motorMass,
  }
}

/** The smallest mass at which requirement and mass agree, or undefined when there is none up to 40 t. */
export function sizePlainly(input: WorkedInput) {
  const excess = (mass: number) => stateAt(mass, input).required - mass
  let low = 1
  let step = 1
  while (low < 40_000) {
    const high = low + step
    if (excess(high) <= 0) {
      let [a, b] = [low, high]
      for (let i = 0; i < 200; i += 1) {
        const middle = (a + b) / 2
        if (excess(middle) > 0) a = middle
        else b = middle
      }
      return { grossMass: (a + b) / 2, ...stateAt((a + b) / 2, input) }
    }
    low = high
    step = Math.max(0.25, low / 4000)
  }
  return undefined
}
