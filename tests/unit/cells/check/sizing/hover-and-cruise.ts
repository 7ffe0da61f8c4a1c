/** Hover, cruise and energy by hand, without a method of the kernel. */
import type { SizingProgram } from './sizing-program.js'

export const momentumHover: SizingProgram = {
  title: 'hover power by momentum theory',
  cells: [
    `const grossMass = assumption('grossMass', 1650 * u.kg, { unit: 'kg', range: [1400 * u.kg, 1900 * u.kg] })
const rotors = 8
const radius = 1.3 * u.m
const density = (1.1 * u.kg) / u.m3`,
    `const weight = grossMass * u.g0
const diskArea = rotors * Math.PI * radius ** 2
const diskLoading = weight / diskArea`,
    `const inducedVelocity = Math.sqrt(diskLoading / (2 * density))
const idealPower = weight * inducedVelocity
const figureOfMerit = 0.72
const hoverPower = result('hoverPower', idealPower / figureOfMerit, { unit: 'kW' })`,
    `const perRotor = hoverPower / rotors
const tipSpeed = 180 * u.mps
const omega = tipSpeed / radius
const torque = result('torque', perRotor / omega, { unit: 'N m' })
const bladeLoading = weight / (density * diskArea * tipSpeed ** 2)`,
    `requirement('diskLoading', { actual: diskLoading, atMost: 400 * u.Pa, unit: 'Pa' })
requirement('power', { actual: hoverPower, atMost: 450 * u.kW, unit: 'kW' })`,
  ],
  names: {
    diskLoading: 'kg m^-1 s^-2',
    inducedVelocity: 'm s^-1',
    torque: 'kg m^2 s^-2',
    omega: 's^-1',
    bladeLoading: '1',
  },
  slips: [
    ['weight = grossMass * u.g0', 'weight = grossMass', "The unit 'kW'"],
    ['Math.PI * radius ** 2', 'Math.PI * radius', "The unit 'kW'"],
    ['(2 * density))', '2 * density)', "The unit 'kW'"],
    ['tipSpeed / radius', 'tipSpeed * radius', "The unit 'N m'"],
    ["{ unit: 'N m' }", "{ unit: 'N' }", "The unit 'N'"],
    ['atMost: 400 * u.Pa', 'atMost: 40 * u.kg', 'cannot mix'],
    ["atMost: 450 * u.kW, unit: 'kW'", "atMost: 450 * u.kW, unit: 'kWh'", "The unit 'kWh'"],
    ['range: [1400 * u.kg, 1900 * u.kg]', 'range: [1400, 1900]', 'cannot mix'],
    ["{ unit: 'kg', range", "{ unit: 'N', range", "The unit 'N'"],
    ['radius = 1.3 * u.m', 'radius = 1.3 * u.m2', "The unit 'kW'"],
  ],
}

export const cruiseEnergy: SizingProgram = {
  title: 'cruise power and energy of a sector',
  cells: [
    `const mass_ = 1700 * u.kg
const wingArea = 15 * u.m2
const span = 12.8 * u.m
const aspectRatio = span ** 2 / wingArea`,
    `const speed = 200 * u.kmh
const air600 = air.standard(600 * u.m)
const q = 0.5 * air600.density * speed ** 2
const lift = (mass_ * u.g0) / (q * wingArea)
const drag0 = 0.032
const dragCoefficient = drag0 + lift ** 2 / (Math.PI * aspectRatio * 0.8)
const dragForce = q * wingArea * dragCoefficient`,
    `const shaft = (dragForce * speed) / 0.84
const electric = shaft / 0.91 + 2 * u.kW`,
    `const distance = 40 * u.km
const flightTime = distance / speed
const reserve = 20 * u.min
const energy = electric * (flightTime + reserve)
const packEnergy = energy / (0.85 - 0.1)
const packMass = packEnergy / ((190 * u.Wh) / u.kg)
const share = packMass / mass_`,
    `const shown = result('shown', packEnergy, { unit: 'kWh', label: 'energy of the pack' })
const rate = result('rate', packEnergy / distance, { unit: 'Wh/km' })`,
  ],
  names: { q: 'kg m^-1 s^-2', lift: '1', dragForce: 'kg m s^-2', packMass: 'kg', share: '1', aspectRatio: '1' },
  slips: [
    ['span ** 2 / wingArea', 'span / wingArea', 'Cannot add'],
    ['(mass_ * u.g0) / (q', 'mass_ / (q', 'Cannot add'],
    ['speed ** 2\n', 'speed\n', 'Cannot add'],
    ['(dragForce * speed) / 0.84', 'dragForce / 0.84', 'Cannot add'],
    ['2 * u.kW', '2 * u.kWh', 'Cannot add'],
    ['20 * u.min', '20 * u.km', 'Cannot add'],
    ['20 * u.min', '20', 'Cannot add'],
    ['electric * (flightTime + reserve)', 'electric / (flightTime + reserve)', "The unit 'kWh'"],
    ["{ unit: 'Wh/km' }", "{ unit: 'Wh km' }", "The unit 'Wh km'"],
    ['200 * u.kmh', '200 * u.km', 'Cannot add'],
    ['drag0 + lift', 'drag0 * u.m2 + lift', 'Cannot add'],
    ['air.standard(600 * u.m)', 'air.standard(600 * u.kg)', 'altitude wants m'],
    ['* (flightTime + reserve)', '* (flightTime + speed)', 'Cannot add'],
  ],
}

export const stall: SizingProgram = {
  title: 'stall and conversion speeds',
  cells: [
    `const m = 1650 * u.kg
const S = 15 * u.m2
const CLmax = assumption('CLmax', 1.6)
const rho = air.standard(600 * u.m, 15 * u.K).density`,
    `const stallSpeed = (weight: Force, area: Area) => Math.sqrt((2 * weight) / (rho * area * CLmax))
const vs = result('vs', stallSpeed(m * u.g0, S), { unit: 'm/s' })
const bank = 30 * u.deg
const vsBanked = vs / Math.sqrt(Math.cos(bank))`,
    `const floors = { loiter: 1.3 * vs, conversion: 1.2 * vs }
const cruise = 56 * u.mps
if (cruise < floors.loiter) throw new Error('too slow')
const margin = cruise / vs - 1
const radiusOfTurn = cruise ** 2 / (u.g0 * Math.tan(bank))
const rateOfTurn = cruise / radiusOfTurn`,
  ],
  names: { vs: 'm s^-1', vsBanked: 'm s^-1', margin: '1', radiusOfTurn: 'm', rateOfTurn: 's^-1' },
  slips: [
    ['stallSpeed(m * u.g0, S)', 'stallSpeed(m, S)', 'weight wants'],
    ['stallSpeed(m * u.g0, S)', 'stallSpeed(S, m * u.g0)', 'weight wants'],
    ["{ unit: 'm/s' }", "{ unit: 'm' }", "The unit 'm'"],
    ['Math.sqrt((2 * weight) / (rho * area * CLmax))', '(2 * weight) / (rho * area * CLmax)', "The unit 'm/s'"],
    ['cruise < floors.loiter', 'cruise < 70', 'Cannot compare'],
    ['cruise / vs - 1', 'cruise - 1', 'Cannot subtract'],
    ['Math.tan(bank)', 'Math.tan(30 * u.m)', 'Math.tan wants a pure number'],
    ['30 * u.deg', '30', 'radian'],
    ['rho * area * CLmax', 'rho * CLmax', "The unit 'm/s'"],
  ],
}

export const hoverCruise = [momentumHover, cruiseEnergy, stall]
