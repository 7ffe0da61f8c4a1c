/** Calls of the kernel: arguments against declared quantities, results, options that speak of units. */
import { type Program, right, wrong } from './program.js'

const hover = () =>
  'const h = rotor.hover({ thrust: 16 * u.kN, diskArea: 40 * u.m2, density: (1.1 * u.kg) / u.m3, figureOfMerit: 0.7 })'

const bladed = (tipSpeed: string, count: string) =>
  `const h = rotor.hover({ thrust: 16 * u.kN, count: ${count}, radius: 1.3 * u.m, density: (1.1 * u.kg) / u.m3, tipSpeed: ${tipSpeed}, solidity: 0.1, inducedFactor: 1.15, profileDrag: 0.01 })`

export const kernelCalls: readonly Program[] = [
  right(`${hover()}\nconst p = h.power + 3 * u.kW`, { p: 'kg m^2 s^-3' }),
  right(
    'const { density, pressure, temperature } = air.standard(600 * u.m, 15 * u.K)\nconst r = pressure / density / temperature',
    { r: 'm^2 s^-2 K^-1' },
  ),
  right("const m = assumption('m', 400 * u.kg, { unit: 'kg', range: [300 * u.kg, 500 * u.kg] })\nconst w = m * u.g0", {
    w: 'kg m s^-2',
  }),
  right("const p = result('p', 3 * u.kW, { unit: 'hp' })\nconst e = p * (3 * u.min)", {
    p: 'kg m^2 s^-3',
    e: 'kg m^2 s^-2',
  }),
  right('const a = wing.planform({ area: 15 * u.m2, aspectRatio: 11, taper: 0.5 }).meanAerodynamicChord', { a: 'm' }),
  right("const r = requirement('pad', { actual: 13 * u.m, atMost: 14 * u.m, unit: 'm' })", { r: null }),
  right(
    'const c = sizing.close({ from: 500 * u.kg, requiredMass: (m) => ({ payload: 400 * u.kg, rest: 0.4 * m }) })\nconst share = c.masses.rest / c.grossMass',
    { share: '1' },
  ),
  right("const rows = table('rows', [1, 2].map((n) => ({ n, p: n * u.kW })))\nconst p = rows[0]!.p", {
    p: 'kg m^2 s^-3',
  }),
  right(
    'const v = battery.cell({ name: "c", capacity: 5 * u.Ah, mass: 70 * u.g, resistance: 9 * u.mohm, openCircuitVoltage: [3, 3.5, 4.1].map((x) => x * u.V), minimumVoltage: 2.5 * u.V, continuousCurrent: 10 * u.A, peakCurrent: 50 * u.A }).mass',
    { v: 'kg' },
  ),
  right(
    'const polar = drag.polar({ zeroLiftDrag: 0.03, aspectRatio: 11, spanEfficiency: 0.8 })\nconst ld = polar.maximumLiftToDrag',
    { ld: '1' },
  ),
  right(
    'const f = figure.line({ caption: "c", x: { label: "v", unit: "m/s", values: [10, 20].map((v) => v * u.mps) }, y: { label: "P", unit: "kW", values: [10, 20].map((p) => p * u.kW) } })',
    { f: null },
  ),
  right(`${bladed('190 * u.mps', '8')}\nconst q = h.torque / (2 * u.m)`, { q: 'kg m s^-2' }),
  wrong(bladed('190 * u.mps', '3 * u.m'), 1, 'count wants'),
  wrong(bladed('190 * u.m', '8'), 1, 'tipSpeed wants'),
  wrong(`${hover()}\nconst e = h.power + 3 * u.kWh`, 2, 'Cannot add h.power'),
  wrong('const a = air.standard(15 * u.K)', 1, 'altitude wants m but got K'),
  wrong('const a = air.standard(600)', 1, 'a number without a unit'),
  wrong('const a = air.standard(600 * u.m).density * u.m3 + 3 * u.m', 1, 'Cannot add'),
  wrong("const m = assumption('m', 400 * u.kg, { unit: 'N' })", 1, "The unit 'N'"),
  wrong("const m = assumption('m', 400, { unit: 'kg' })", 1, "The unit 'kg'"),
  wrong("const m = assumption('m', 400 * u.kg, { unit: 'kg', range: [300, 500 * u.kg] })", 1, 'cannot mix'),
  right(
    "const m = assumption('m', 400 * u.kg, { unit: 'kg', distribution: { triangular: [300 * u.kg, 500 * u.kg] } })",
    { m: 'kg' },
  ),
  right("const m = assumption('m', 400 * u.kg, { distribution: { lognormal: 1.2 }, correlated: { n: 0.4 } })", {
    m: 'kg',
  }),
  wrong("const m = assumption('m', 400 * u.kg, { distribution: { normal: 20 } })", 1, 'cannot mix'),
  wrong(
    "const m = assumption('m', 400 * u.kg, { unit: 'kg', distribution: { uniform: [300 * u.kg, 500 * u.m] } })",
    1,
    'cannot mix',
  ),
  wrong("const m = assumption('m', 400 * u.kg, { distribution: { lognormal: 20 * u.kg } })", 1, 'wants a pure number'),
  wrong("const m = assumption('m', 400 * u.kg, { unit: 'kilo' })", 1, 'kilo'),
  wrong("const m = assumption('m', 400 * u.kg)\nconst w = m + 1 * u.m", 2, 'Cannot add m (kg)'),
  wrong("const p = result('p', 3 * u.kW, { unit: 'Wh' })", 1, "The unit 'Wh'"),
  wrong("const r = requirement('pad', { actual: 13 * u.m, atMost: 14 * u.s, unit: 'm' })", 1, 'cannot mix'),
  wrong("const r = requirement('pad', { actual: 13 * u.m, within: [12 * u.m, 14], unit: 'm' })", 1, 'cannot mix'),
  wrong(
    'const c = sizing.close({ from: 500 * u.kg, requiredMass: (m) => ({ payload: 400 * u.kg, rest: 0.4 * m * u.g0 }) })',
    1,
    'wants kg',
  ),
  wrong('const c = sizing.close({ from: 500 * u.m, requiredMass: (m) => 0.4 * m })', 1, 'from wants kg'),
  wrong('const a = wing.planform({ area: 15 * u.m, aspectRatio: 11, taper: 0.5 })', 1, 'area wants m^2'),
  wrong('const a = wing.planform({ area: 15 * u.m2, aspectRatio: 11 * u.m, taper: 0.5 })', 1, 'aspectRatio'),
  wrong(
    'const polar = drag.polar({ zeroLiftDrag: 0.5 * u.m2, aspectRatio: 11, spanEfficiency: 0.8 })',
    1,
    'zeroLiftDrag',
  ),
  wrong(
    'const spec = { area: 15 * u.m, aspectRatio: 11, taper: 0.5 }\nconst a = wing.planform(spec)',
    2,
    'area wants m^2',
  ),
  wrong('const m = mass.motor({ torque: 100 * u.N, peakTorque: 200 * u.N * u.m })', 1, 'torque wants'),
  wrong('const f = figure.massBreakdown({ caption: "c", masses: { a: 3 * u.kg, b: 2 * u.m } })', 1, 'wants kg'),
  wrong(
    'const f = figure.line({ caption: "c", x: { label: "v", unit: "m/s", values: [10, 20].map((v) => v * u.m) }, y: { label: "P", unit: "kW", values: [10, 20].map((p) => p * u.kW) } })',
    1,
    "The unit 'm/s'",
  ),
]
