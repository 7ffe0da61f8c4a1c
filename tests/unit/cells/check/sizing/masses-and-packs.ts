/** Masses of parts, tables of them, and packs of cells. */
import type { SizingProgram } from './sizing-program.js'

export const build: SizingProgram = {
  title: 'a build-up of masses and its centre of gravity',
  cells: [
    `interface Part { readonly name: string; readonly mass: Mass; readonly x: Length }
const parts: Part[] = [
  { name: 'wing', mass: 180 * u.kg, x: 2.4 * u.m },
  { name: 'body', mass: 210 * u.kg, x: 2.1 * u.m },
  { name: 'pack', mass: 420 * u.kg, x: 1.9 * u.m },
]`,
    `const total = parts.reduce((sum, part) => sum + part.mass, 0)
const moment = parts.reduce((sum, { mass, x }) => sum + mass * x, 0)
const centre = result('centre', moment / total, { unit: 'm' })`,
    `const inertia = parts.map((part) => part.mass * (part.x - centre) ** 2).reduce((a, b) => a + b)
const radiusOfGyration = Math.sqrt(inertia / total)
const heaviest = [...parts].sort((a, b) => b.mass - a.mass)[0]!
const [first, ...others] = parts
const share = heaviest.mass / total`,
    `const rows = table('rows', parts.map(({ name, mass, x }) => ({ name, mass, share: mass / total, x })), { units: { mass: 'kg', share: '%', x: 'mm' } })
let heavy = 0 * u.kg
for (const { mass: m } of parts) if (m > 200 * u.kg) heavy += m
requirement('centre of gravity', { actual: centre, within: [1.9 * u.m, 2.3 * u.m], unit: 'm' })`,
  ],
  names: {
    total: 'kg',
    moment: 'kg m',
    centre: 'm',
    inertia: 'kg m^2',
    radiusOfGyration: 'm',
    share: '1',
    heavy: 'kg',
  },
  slips: [
    ['mass: 210 * u.kg', 'mass: 210 * u.kN', 'wants kg'],
    ['x: 1.9 * u.m }', 'x: 1.9 * u.s }', 'wants m'],
    ['sum + mass * x, 0)', 'sum + mass, 0)', "The unit 'm'"],
    ['sum + part.mass, 0)', 'sum + part.x, 0)', "The unit 'm'"],
    ['moment / total', 'moment', "The unit 'm'"],
    ['(part.x - centre)', '(part.x - total)', 'Cannot subtract'],
    ['b.mass - a.mass', 'b.mass - a.x', 'Cannot subtract'],
    ["mass: 'kg', share", "mass: 'N', share", "The unit 'N'"],
    ["x: 'mm'", "x: 'kg'", "The unit 'kg'"],
    ['m > 200 * u.kg', 'm > 200', 'Cannot compare'],
    ['heavy += m', 'heavy += m * u.g0', 'Cannot add'],
    ['heavy = 0 * u.kg', 'heavy = 0 * u.m', 'Cannot add'],
    ['within: [1.9 * u.m, 2.3 * u.m]', 'within: [1.9 * u.m, 2.3 * u.kg]', 'cannot mix'],
    ['{ mass, x }) => sum + mass * x', '{ mass, x }) => sum + mass + x', 'Cannot add'],
  ],
}

export const pack: SizingProgram = {
  title: 'cells in series and parallel',
  cells: [
    `const cellVoltage = 3.6 * u.V
const cellCapacity = 5 * u.Ah
const cellMass = 70 * u.g
const cellResistance = 9 * u.mohm
const busVoltage = 650 * u.V`,
    `const series = Math.round(busVoltage / cellVoltage)
const wanted = 95 * u.kWh
const cells = wanted / (cellVoltage * cellCapacity)
const parallel = Math.ceil(cells / series)
const resistance = (cellResistance * series) / parallel
const packMass = (series * parallel * cellMass) / 0.75`,
    `const power = 420 * u.kW
const sag = (busVoltage - Math.sqrt(busVoltage ** 2 - 4 * resistance * power)) / 2
const current = sag / resistance
const heat = current ** 2 * resistance
const cRate = current / (parallel * cellCapacity)
const endurance = wanted / power`,
    `const specificHeat = (1000 * u.J) / (u.kg * u.K)
const rise: TemperatureDifference = (heat * (90 * u.s)) / (packMass * specificHeat)
const shown = result('shown', cRate, { unit: '1/h', label: 'C-rate' })
const efficiency = 1 - heat / power`,
  ],
  names: { series: '1', current: 'A', heat: 'kg m^2 s^-3', rise: 'K', cRate: 's^-1', endurance: 's', efficiency: '1' },
  slips: [
    ['cellCapacity = 5 * u.Ah', 'cellCapacity = 5 * u.A', 'Cannot subtract'],
    ['cellVoltage * cellCapacity', 'cellVoltage', 'Cannot subtract'],
    ['busVoltage ** 2 -', 'busVoltage -', 'Cannot subtract'],
    ['4 * resistance * power', '4 * resistance * wanted', 'Cannot subtract'],
    ['current ** 2 * resistance', 'current * resistance', 'rise wants K'],
    ["{ unit: '1/h',", "{ unit: 'A',", "The unit 'A'"],
    ['1 - heat / power', '1 - heat', 'Cannot subtract'],
    ['heat * (90 * u.s)', 'heat * 90', 'rise wants K'],
    ['(u.kg * u.K)', 'u.kg', 'rise wants K'],
    ['current = sag / resistance', 'current = sag * resistance', 'rise wants K'],
  ],
}

export const closure: SizingProgram = {
  title: 'closing gross mass by hand and by the kernel',
  cells: [
    `const payload = assumption('payload', 400 * u.kg, { unit: 'kg' })
const specificEnergy = (185 * u.Wh) / u.kg
const range = 60 * u.km
const liftToDrag = 9
const efficiency = 0.75`,
    `const packFor = (gross: Mass): Mass => (gross * u.g0 * range) / (liftToDrag * efficiency * specificEnergy)
const emptyFor = (gross: Mass) => 0.45 * gross + 30 * u.kg`,
    `let gross = 1000 * u.kg
let turns = 0
while (turns < 60) {
  const next = payload + packFor(gross) + emptyFor(gross)
  if (Math.abs(next - gross) < 0.1 * u.kg) break
  gross = next
  turns++
}`,
    `const closed = sizing.close({
  from: 1000 * u.kg,
  requiredMass: (g) => ({ payload, pack: packFor(g), empty: emptyFor(g) }),
})
const same = Math.abs(closed.grossMass - gross) / gross
const fraction = { pack: packFor(gross) / gross, empty: emptyFor(gross) / gross }
const left = 1 - fraction.pack - fraction.empty`,
  ],
  names: { gross: 'kg', turns: '1', same: '1', left: '1' },
  slips: [
    ['(gross * u.g0 * range)', '(gross * range)', 'The result of packFor wants kg'],
    ['0.45 * gross + 30 * u.kg', '0.45 * gross + 30', 'Cannot add'],
    ['range = 60 * u.km', 'range = 60 * u.min', 'The result of packFor wants kg'],
    ['(185 * u.Wh) / u.kg', '(185 * u.W) / u.kg', 'The result of packFor wants kg'],
    ['payload + packFor(gross)', 'payload * u.g0 + packFor(gross)', 'Cannot add'],
    ['packFor(gross) + emptyFor(gross)', 'packFor(gross) + emptyFor(range)', 'gross wants kg'],
    ['< 0.1 * u.kg', '< 0.1', 'Cannot compare'],
    ['from: 1000 * u.kg', 'from: 1000 * u.N', 'from wants kg'],
    ['empty: emptyFor(g) }),', 'empty: emptyFor(g) * u.g0 }),', 'wants kg'],
    ['1 - fraction.pack', '1 - packFor(gross)', 'Cannot subtract'],
    ["{ unit: 'kg' })\nconst specific", "{ unit: 'lbf' })\nconst specific", "The unit 'lbf'"],
  ],
}

export const massesAndPacks = [build, pack, closure]
