/** The kernel's methods inside the code that a designer builds around them. */
import type { SizingProgram } from './sizing-program.js'

export const sweep: SizingProgram = {
  title: 'a sweep of rotor count with records and options',
  cells: [
    `const weight = 1700 * u.kg * u.g0
const day = air.standard(600 * u.m, 15 * u.K)
type Option = { count: number; radius: Length }
const options: Option[] = [4, 6, 8, 12].map((count) => ({ count, radius: 3.6 * u.m / Math.sqrt(count) }))`,
    `const hoverWith = ({ count, radius }: Option, margin = 1.05) =>
  rotor.hover({
    thrust: weight * margin,
    diskArea: count * Math.PI * radius ** 2,
    density: day.density,
    figureOfMerit: 0.72,
  })
const swept = options.map((option) => ({ ...option, power: hoverWith(option).power, loading: weight / (option.count * Math.PI * option.radius ** 2) }))`,
    `const best = swept.reduce((least, one) => (one.power < least.power ? one : least))
const spread = Math.max(...swept.map((one) => one.power)) - Math.min(...swept.map((one) => one.power))
const byCount = new Map(swept.map((one) => [one.count, one.power]))
const ofEight = byCount.get(8) ?? 0 * u.W
const sweptTable = table('sweptTable', swept, { units: { power: 'kW', radius: 'm', loading: 'N/m^2' } })`,
    `const curve = figure.line({
  caption: 'Power against radius',
  x: { label: 'radius', unit: 'm', values: swept.map((one) => one.radius) },
  y: { label: 'power', unit: 'kW', values: swept.map(({ power }) => power) },
})`,
  ],
  names: { spread: 'kg m^2 s^-3', ofEight: 'kg m^2 s^-3', weight: 'kg m s^-2' },
  slips: [
    ['weight = 1700 * u.kg * u.g0', 'weight = 1700 * u.kg', 'thrust wants'],
    ['Math.PI * radius ** 2,\n', 'Math.PI * radius,\n', 'diskArea wants'],
    ['density: day.density', 'density: day.pressure', 'density wants'],
    ['thrust: weight * margin', 'thrust: weight + margin', 'Cannot add'],
    ['figureOfMerit: 0.72', 'figureOfMerit: 0.72 * u.kW', 'figureOfMerit wants'],
    ['one.power < least.power', 'one.power < least.radius', 'Cannot compare'],
    ['?? 0 * u.W', '?? 2 * u.kg', 'two sides of ??'],
    ["power: 'kW', radius", "power: 'kWh', radius", "The unit 'kWh'"],
    ["loading: 'N/m^2'", "loading: 'N'", "The unit 'N'"],
    ["label: 'radius', unit: 'm'", "label: 'radius', unit: 'm2'", "The unit 'm2'"],
    [
      "unit: 'kW', values: swept.map(({ power }) => power)",
      "unit: 'kW', values: swept.map(({ loading }) => loading)",
      "The unit 'kW'",
    ],
    ['3.6 * u.m / Math', '3.6 / Math', 'options.radius wants m'],
    [
      '- Math.min(...swept.map((one) => one.power))',
      '- Math.min(...swept.map((one) => one.radius))',
      'Cannot subtract',
    ],
  ],
}

export const drive: SizingProgram = {
  title: 'motor torque, tip speed and gearing',
  cells: [
    `const rotorSpeed = 1350 * u.rpm
const radius = 1.3 * u.m
const tipSpeed: Speed = rotorSpeed * radius
const soundSpeed = air.standard(0).speedOfSound
const tipMach = tipSpeed / soundSpeed`,
    `const shaftPower = 52 * u.kW
const torque: Torque = shaftPower / rotorSpeed
const gear = 4
const motorTorque = torque / gear
const density_ = (18 * u.N * u.m) / u.kg
const motorMass = motorTorque / density_`,
    `const polarInertia = 0.9 * u.kg * u.m ** 2
const timeConstant = (polarInertia * rotorSpeed) / (2 * torque)
const rotations = (rotorSpeed / (2 * Math.PI)) * (10 * u.s)
const angle = Math.atan2(0.2 * u.m, radius)
const pitch = 12 * u.deg
const thrustForward = (3 * u.kN) * Math.sin(pitch)
const bladePassing = (2 * rotorSpeed) / (2 * Math.PI)
requirement('tip Mach', { actual: tipMach, atMost: 0.6 })
requirement('spin-up', { actual: timeConstant, atMost: 2 * u.s, unit: 's' })`,
  ],
  names: {
    tipMach: '1',
    motorMass: 'kg',
    timeConstant: 's',
    rotations: '1',
    angle: '1',
    thrustForward: 'kg m s^-2',
    bladePassing: 's^-1',
  },
  slips: [
    ['rotorSpeed = 1350 * u.rpm', 'rotorSpeed = 1350', 'tipSpeed wants m s^-1'],
    ['rotorSpeed * radius', 'rotorSpeed / radius', 'tipSpeed wants m s^-1'],
    ['shaftPower / rotorSpeed', 'shaftPower * rotorSpeed', 'torque wants'],
    ['shaftPower = 52 * u.kW', 'shaftPower = 52 * u.kWh', 'torque wants'],
    ['0.9 * u.kg * u.m ** 2', '0.9 * u.kg * u.m', "The unit 's'"],
    ['Math.atan2(0.2 * u.m, radius)', 'Math.atan2(0.2, radius)', 'Math.atan2 cannot mix'],
    ['Math.sin(pitch)', 'Math.sin(12)', 'radian'],
    ['pitch = 12 * u.deg', 'pitch = 12', 'radian'],
    ['actual: tipMach,', 'actual: tipSpeed,', 'cannot mix'],
    ['atMost: 2 * u.s', 'atMost: 2', 'cannot mix'],
    ['tipSpeed / soundSpeed', 'tipSpeed * soundSpeed', 'cannot mix'],
  ],
}

export const structure: SizingProgram = {
  title: 'a boom as a tube in bending',
  cells: [
    `const force = 9 * u.kN
const arm = 2.2 * u.m
const outer = 220 * u.mm
const wall = 1.5 * u.mm
const modulus = 70e9 * u.Pa
const strength = 400 * u.MPa`,
    `function tube(diameter: Length, thickness: Length) {
  const inner = diameter - 2 * thickness
  return { area: (Math.PI / 4) * (diameter ** 2 - inner ** 2), second: (Math.PI / 64) * (diameter ** 4 - inner ** 4) }
}
const { area, second } = tube(outer, wall)`,
    `const bending = force * arm
const stress = (bending * outer) / 2 / second
const reserve = strength / stress - 1
const deflection = (force * arm ** 3) / (3 * modulus * second)
const stiffness = force / deflection
const tipMass = 40 * u.kg
const frequency = Math.sqrt(stiffness / tipMass) / (2 * Math.PI)
const massPerLength = area * ((1600 * u.kg) / u.m3)
const boomMass: Mass = massPerLength * arm`,
    `requirement('strength', { actual: reserve, atLeast: 0.2 })
requirement('deflection', { actual: deflection, atMost: 60 * u.mm, unit: 'mm' })
requirement('frequency', { actual: frequency, atLeast: 5 * u.Hz, unit: 'Hz' })`,
  ],
  names: { second: 'm^4', stress: 'kg m^-1 s^-2', reserve: '1', deflection: 'm', frequency: 's^-1' },
  slips: [
    ['diameter ** 4 - inner ** 4', 'diameter ** 4 - inner ** 2', 'Cannot subtract'],
    ['diameter - 2 * thickness', 'diameter - 2', 'Cannot subtract'],
    ['bending = force * arm', 'bending = force + arm', 'Cannot add'],
    ['bending * outer) / 2 / second', 'bending) / 2 / second', 'Cannot subtract'],
    ['arm ** 3)', 'arm ** 2)', "The unit 'mm'"],
    ['modulus * second', 'strength', "The unit 'mm'"],
    ['Math.sqrt(stiffness / tipMass)', 'stiffness / tipMass', "The unit 'Hz'"],
    ['tube(outer, wall)', 'tube(outer, force)', 'thickness wants m'],
    ['atMost: 60 * u.mm', 'atMost: 60', 'cannot mix'],
    ["unit: 'Hz'", "unit: 'rad'", "The unit 'rad'"],
    ['massPerLength * arm', 'massPerLength', 'boomMass wants kg'],
    ['/ u.m3)', '/ u.m2)', 'boomMass wants kg'],
  ],
}

export const kernelAndCode = [sweep, drive, structure]
