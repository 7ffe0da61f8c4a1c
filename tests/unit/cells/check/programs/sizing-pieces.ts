/** Pieces of sizing code in the manner of people who have not met this tool: right ones with many idioms, and wrong ones with one slip. */
import { type Program, right, wrong } from './program.js'

export const sizingPieces: readonly Program[] = [
  // masses summed over entries
  right(
    `const masses = { wing: 180 * u.kg, booms: 95 * u.kg, tail: 42 * u.kg, gear: 61 * u.kg }
const empty = Object.values(masses).reduce((sum, one) => sum + one, 0)
const shares = Object.fromEntries(Object.entries(masses).map(([name, one]) => [name, one / empty]))
const heaviest = Object.entries(masses).sort(([, a], [, b]) => b - a)[0]
const arm = Object.entries({ wing: 2.1 * u.m, tail: 6.4 * u.m }).reduce((moment, [, x]) => moment + x * masses.wing, 0) / empty`,
    { empty: 'kg', arm: 'm' },
  ),
  // bisection in a while loop
  right(
    `const thrustAt = (v: number) => 0.5 * 1.1 * (u.kg / u.m3) * v ** 2 * 14 * u.m2 * 0.04
let low = 20 * u.mps
let high = 120 * u.mps
while (high - low > 1e-6 * u.mps) {
  const middle = (low + high) / 2
  if (thrustAt(middle) > 900 * u.N) high = middle
  else low = middle
}
const speed = (low + high) / 2
const power = thrustAt(speed) * speed`,
    { speed: 'm s^-1', power: 'kg m^2 s^-3' },
  ),
  // Newton steps on a function with its slope
  right(
    `const drag0 = (v: number) => 0.5 * 1.1 * (u.kg / u.m3) * 0.45 * u.m2 * v * v
const want = 700 * u.N
let v = 50 * u.mps
for (let step = 0; step < 20; step++) {
  const h = 0.001 * u.mps
  const slope = (drag0(v + h) - drag0(v - h)) / (2 * h)
  v -= (drag0(v) - want) / slope
}
const answer = v`,
    { answer: 'm s^-1' },
  ),
  // Simpson over a function
  right(
    `function integrate(f: (x: number) => number, from: number, to: number, n = 40) {
  const h = (to - from) / n
  let sum = f(from) + f(to)
  for (let i = 1; i < n; i++) sum += (i % 2 === 0 ? 2 : 4) * f(from + i * h)
  return (sum * h) / 3
}
const halfSpan = 5.5 * u.m
const chordAt = (y: number) => 1.4 * u.m * (1 - 0.4 * (y / halfSpan))
const area = 2 * integrate(chordAt, 0 * u.m, halfSpan)
const meanChord = (2 / area) * integrate((y) => chordAt(y) ** 2, 0 * u.m, halfSpan)`,
    { area: 'm^2', meanChord: 'm' },
  ),
  // a table of segments with running totals
  right(
    `const segments = [
  { name: 'hover', power: 330 * u.kW, time: 45 * u.s },
  { name: 'climb', power: 180 * u.kW, time: 3 * u.min },
  { name: 'cruise', power: 84 * u.kW, time: 21 * u.min },
  { name: 'hover', power: 330 * u.kW, time: 45 * u.s },
]
let used = 0
const rows = segments.map((one) => {
  used += one.power * one.time
  return { ...one, energy: one.power * one.time, left: 95 * u.kWh - used }
})
const total = rows.at(-1)?.left ?? 0
const worst = Math.max(...segments.map(({ power }) => power))
const byName = rows.filter((row) => row.name === 'hover').reduce((sum, { energy }) => sum + energy, 0)`,
    { worst: 'kg m^2 s^-3', byName: 'kg m^2 s^-2' },
  ),
  // linear interpolation in a table of pairs
  right(
    `const curve: readonly (readonly [number, number])[] = [[0, 0.2], [0.5, 0.31], [1, 0.45]]
function lookUp(points: readonly (readonly [number, number])[], x: number) {
  for (let i = 1; i < points.length; i++) {
    const [x0, y0] = points[i - 1]!
    const [x1, y1] = points[i]!
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
  }
  return points.at(-1)![1]
}
const mass_ = lookUp(curve, 0.3) * 100 * u.kg`,
    { mass_: 'kg' },
  ),
  // hypotenuse, angles and components
  right(
    `const wind = { x: 8 * u.kt, y: 6 * u.kt }
const windSpeed = Math.hypot(wind.x, wind.y)
const heading = Math.atan2(wind.y, wind.x)
const ground = 110 * u.kt - windSpeed * Math.cos(heading - 20 * u.deg)
const drift = Math.asin((windSpeed * Math.sin(heading)) / (110 * u.kt)) / u.deg
const bank = Math.atan((ground ** 2) / (u.g0 * 600 * u.m))
const turn = u.g0 * Math.tan(bank) / ground`,
    { windSpeed: 'm s^-1', heading: '1', ground: 'm s^-1', drift: '1', turn: 's^-1' },
  ),
  // cube roots and powers of three halves
  right(
    `const weight = 1600 * u.kg * u.g0
const rho = air.standard(600 * u.m).density
const hoverFor = (area: number) => weight ** 1.5 / Math.sqrt(2 * rho * area)
const areaFor = (power: number) => (weight ** 3 / (2 * rho)) / power ** 2
const back = areaFor(hoverFor(42 * u.m2))
const speedOfLeastPower = Math.cbrt((200 * u.kW) / (0.5 * rho * 0.5 * u.m2))`,
    { back: 'm^2', speedOfLeastPower: 'm s^-1' },
  ),
  // currying and a function that returns functions
  right(
    `const polarOf = (cd0: number, k: number) => (cl: number) => cd0 + k * cl ** 2
const atDensity = (rho: number) => (area: number) => (v: number) => 0.5 * rho * v ** 2 * area
const q = atDensity(1.1 * u.kg / u.m3)
const cl = (1600 * u.kg * u.g0) / q(14 * u.m2)(58 * u.mps)
const drag_ = polarOf(0.03, 0.045)(cl) * q(14 * u.m2)(58 * u.mps)`,
    { cl: '1', drag_: 'kg m s^-2' },
  ),
  // options with defaults, destructured in the parameter list
  right(
    `function packFor({ energy, specific = 235 * u.Wh / u.kg, usable = 0.8, reserve = 0 }: { energy: number; specific?: number; usable?: number; reserve?: number }) {
  const stored = (energy + reserve) / usable
  return { stored, mass: stored / specific }
}
const { stored, mass: packMass } = packFor({ energy: 70 * u.kWh, reserve: 12 * u.kWh })
const light = packFor({ energy: 70 * u.kWh, specific: 300 * u.Wh / u.kg }).mass`,
    { stored: 'kg m^2 s^-2', packMass: 'kg', light: 'kg' },
  ),
  // a switch on a name
  right(
    `type Way = 'open' | 'ducted' | 'folded'
const dragOf = (way: Way) => {
  switch (way) {
    case 'open': return 0.42 * u.ft2
    case 'ducted': return 0.1 * u.m2
    case 'folded': return 120 * u.in ** 2
  }
}
const ways: Way[] = ['open', 'ducted', 'folded']
const areas = ways.map(dragOf)
const least = Math.min(...areas)
const q2 = 1850 * u.Pa
const forces = areas.map((area) => area * q2)
const most = forces.reduce((a, b) => Math.max(a, b), 0)`,
    { least: 'm^2', most: 'kg m s^-2' },
  ),
  // typed arrays, indices and sums
  right(
    `const n = 25
const x = Float64Array.from({ length: n }, (_, i) => (i / (n - 1)) * 6 * u.m)
const w = Array.from(x, (at) => 300 * u.N / u.m * Math.sqrt(1 - (at / (6 * u.m)) ** 2))
let shear = 0
let moment = 0
for (let i = n - 1; i > 0; i--) {
  const dx = x[i]! - x[i - 1]!
  shear += w[i]! * dx
  moment += shear * dx
}
const root = moment`,
    { root: 'kg m^2 s^-2', shear: 'kg m s^-2' },
  ),
  // a stack of ternaries and clamps
  right(
    `const altitude = 900 * u.m
const factor = altitude < 500 * u.m ? 1 : altitude < 1000 * u.m ? 0.96 : 0.92
const rating = 60 * u.kW * factor
const clamp = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high)
const used2 = clamp(rating, 20 * u.kW, 58 * u.kW)
const throttle = clamp(used2 / rating, 0, 1)`,
    { rating: 'kg m^2 s^-3', used2: 'kg m^2 s^-3', throttle: '1' },
  ),
  // unit taken apart and put together again
  right(
    `const span = 36 * u.ft
const inMetres = span / u.m
const rule = 0.12 * inMetres ** 1.2 * u.kg
const loading = 23 * u.lb / u.ft2
const area3 = (1650 * u.kg) / loading
const climb = 900 * u.fpm
const text = \`\${(climb / u.fpm).toFixed(0)} ft/min\`
const climbPower = 1650 * u.kg * u.g0 * climb`,
    { inMetres: '1', rule: 'kg', area3: 'm^2', climbPower: 'kg m^2 s^-3' },
  ),
  // recursion over halving ranges
  right(
    `function golden(f: (x: number) => number, a: number, b: number, steps: number): number {
  if (steps === 0) return (a + b) / 2
  const c = b - (b - a) * 0.618
  const d = a + (b - a) * 0.618
  return f(c) < f(d) ? golden(f, a, d, steps - 1) : golden(f, c, b, steps - 1)
}
const powerAt = (v: number) => 0.3 * (u.kg / u.m) * v ** 3 + (9e5 * u.W * u.mps) / v
const best = golden(powerAt, 20 * u.mps, 90 * u.mps, 60)
const bestPower = powerAt(best)`,
    { best: 'm s^-1', bestPower: 'kg m^2 s^-3' },
  ),
  // sets, maps and grouping
  right(
    `const parts = [
  { group: 'structure', mass: 320 * u.kg },
  { group: 'propulsion', mass: 250 * u.kg },
  { group: 'structure', mass: 45 * u.kg },
]
const groups = new Map<string, number>()
for (const { group, mass } of parts) groups.set(group, (groups.get(group) ?? 0) + mass)
const structure = groups.get('structure') ?? 0
const names3 = [...new Set(parts.map((part) => part.group))]
const all = [...groups.values()].reduce((a, b) => a + b, 0)`,
    {},
  ),
  // battery as resistance and current
  right(
    `const ocv = 3.7 * u.V
const resistance = 18 * u.mohm
const series = 192
const parallel = 40
const packPower = 330 * u.kW
const cellPower = packPower / (series * parallel)
const current = (ocv - Math.sqrt(ocv ** 2 - 4 * resistance * cellPower)) / (2 * resistance)
const heat = current ** 2 * resistance * series * parallel
const busVoltage = series * (ocv - current * resistance)
const charge = 5 * u.Ah
const cRate = current / (charge / u.h)`,
    { current: 'A', heat: 'kg m^2 s^-3', busVoltage: 'kg m^2 s^-3 A^-1', cRate: '1' },
  ),
  // blade loading, solidity and rotor speed
  right(
    `const radius = 1.25 * u.m
const rpm_ = 1350 * u.rpm
const tip = rpm_ * radius
const blades = 3
const chord = 0.14 * u.m
const solidity = (blades * chord) / (Math.PI * radius)
const thrust = 2100 * u.N
const ct = thrust / (1.15 * u.kg / u.m3 * Math.PI * radius ** 2 * tip ** 2)
const loading2 = ct / solidity
const mach = tip / air.standard(600 * u.m, 15 * u.K).speedOfSound
const torque = (thrust * Math.sqrt(thrust / (2 * 1.15 * u.kg / u.m3 * Math.PI * radius ** 2))) / 0.7 / rpm_`,
    { tip: 'm s^-1', solidity: '1', loading2: '1', mach: '1', torque: 'kg m^2 s^-2' },
  ),
  // kernel hover with its record taken apart
  right(
    `const { power, inducedVelocity, diskLoading } = rotor.hover({ thrust: 16 * u.kN, diskArea: 42 * u.m2, density: 1.1 * u.kg / u.m3, figureOfMerit: 0.72 })
const downwash = 2 * inducedVelocity
const perPower = (16 * u.kN) / power
const loadingInPounds = diskLoading / u.psf`,
    { downwash: 'm s^-1', perPower: 'm^-1 s', loadingInPounds: '1' },
  ),
  // assumptions, a requirement and a result of one cell
  right(
    `const payload = assumption('payload', 400 * u.kg, { unit: 'kg', range: [300 * u.kg, 500 * u.kg], source: 'invented' })
const empty2 = assumption('empty2', 0.62, { range: [0.55, 0.68] })
const gross = result('gross', payload / (1 - empty2 - 0.2), { unit: 'kg' })
requirement('weight', { actual: gross, atMost: 5000 * u.lb, unit: 'lb' })
const pad = requirement('footprint', { actual: 13.2 * u.m, within: [8 * u.m, 14 * u.m], unit: 'm' })`,
    { gross: 'kg', empty2: '1' },
  ),
  // a list of unlike quantities, told apart where they are used
  right(
    `const facts = [{ kind: 'mass', value: 1600 * u.kg }, { kind: 'span', value: 11 * u.m }]
let heavy = 0
for (const fact of facts) if (fact.kind === 'mass') heavy += fact.value
const spans = facts.reduce((sum, one) => (one.kind === 'span' ? sum + one.value : sum), 0)
const doubled = facts.map((one) => 2 * one.value)
const first = facts[0]!.value + 3 * u.kg`,
    { first: 'kg' },
  ),
  // sector list built by push and summed
  right(
    `const sectors: { distance: number; speed: number }[] = []
for (const distance of [40 * u.km, 85 * u.km]) sectors.push({ distance, speed: 58 * u.mps })
let air1 = 0
for (const { distance, speed } of sectors) air1 += distance / speed
const blocks = sectors.map((one) => one.distance / one.speed + 90 * u.s)
const longest = Math.max(...blocks) / u.min`,
    { air1: 's', longest: '1' },
  ),
  // optional chaining and nullish defaults
  right(
    `const given: { reserve?: number; wind?: { head: number } } = { wind: { head: 10 * u.kt } }
const reserve = given.reserve ?? 20 * u.min
const slow = 58 * u.mps - (given.wind?.head ?? 0)
const away = slow * reserve`,
    { reserve: null, away: null },
  ),
  // generic helper over pairs
  right(
    `function pairs<A, B>(a: readonly A[], b: readonly B[]): [A, B][] { return a.map((one, i) => [one, b[i]!]) }
const joined = pairs([10 * u.kg, 20 * u.kg], [1 * u.m, 3 * u.m])
const moment = joined.reduce((sum, [m, x]) => sum + m * x, 0)`,
    {},
  ),
  // a class of a pack
  right(
    `class Pack {
  constructor(readonly energy: number, readonly mass: number) {}
  get specific() { return this.energy / this.mass }
  scaled(by: number) { return new Pack(this.energy * by, this.mass * by) }
}
const pack = new Pack(95 * u.kWh, 404 * u.kg).scaled(1.1)
const specific = pack.specific`,
    { specific: 'm^2 s^-2' },
  ),
  // energy plus power
  wrong(
    `const hover = 330 * u.kW
const cruise = 84 * u.kW * 20 * u.min
const total = hover + cruise`,
    3,
    'Cannot add hover (a power, in W) and cruise (an energy or a torque, in J): both sides of +',
  ),
  // weight compared with a mass
  wrong(
    `const mass_ = 1600 * u.kg
const lift = 0.5 * 1.1 * u.kg / u.m3 * (50 * u.mps) ** 2 * 14 * u.m2 * 0.8
const flies = lift > mass_`,
    3,
    'Cannot compare lift (a force, in N) and mass_ (kg): both sides of > need the same dimensio',
  ),
  // a callback that returns another quantity
  wrong(
    `const masses = [10 * u.kg, 20 * u.kg]
const arms = [1 * u.m, 2 * u.m]
const moment = masses.reduce((sum, one, i) => sum + one * arms[i]!, 0)
const centre = moment / 4 + 0.2 * u.m`,
    4,
    'Cannot add moment / 4 (kg m) and 0.2 * u.m (m): both sides of + need the same dimension',
  ),
  // a swapped pair of arguments
  wrong(
    `const power = (thrust: number, speed: number) => thrust * speed
const loading = (mass: number, area: number) => mass / area
const wing1 = loading(14 * u.m2, 1600 * u.kg)
const excess = wing1 - 110 * u.kg / u.m2`,
    4,
    'Cannot subtract wing1 (kg^-1 m^2) and 110 * u.kg / u.m2 (a mass per area, in kg m^-2): bot',
  ),
  // minutes forgotten in a time
  wrong(
    `const power = 84 * u.kW
const energy = power * 20
const pack = energy / 0.8 + 3 * u.kWh`,
    3,
    'Cannot add energy / 0.8 (a power, in W) and 3 * u.kWh (an energy or a torque, in J): both ',
  ),
  // a gas law with the pressure upside down
  wrong(
    `const pressure = 94300 * u.Pa
const gas = 287.05 * u.J / (u.kg * u.K)
const density = (gas * 303 * u.K) / pressure
const q = 0.5 * density * (50 * u.mps) ** 2 + 10 * u.Pa`,
    4,
    'Cannot add 0.5 * density * (50 * u.mps) ** 2 (kg^-1 m^5 s^-2) and 10 * u.Pa (a pressure or',
  ),
  // kernel call with the disk area as a radius
  wrong(
    `const radius = 1.3 * u.m
const made = rotor.hover({ thrust: 16 * u.kN, diskArea: 8 * Math.PI * radius, density: 1.1 * u.kg / u.m3, figureOfMerit: 0.72 })`,
    2,
    'rotor.hover: diskArea wants m^2 (for instance m2) but got m',
  ),
  // density where an altitude is wanted
  wrong(`const day = air.standard(1.1 * u.kg / u.m3)`, 1, 'air.standard: altitude wants m but got kg m^-3'),
  // a running sum that changes what it sums
  wrong(
    `let sum = 0 * u.kg
for (const one of [10 * u.kg, 20 * u.kg]) sum += one * u.g0`,
    2,
    'Cannot add sum (kg) and one * u.g0 (a force, in N): both sides of + need the same dimensio',
  ),
  // a record field with the wrong unit
  wrong(
    `interface Segment { readonly power: number; readonly time: number }
const segments: Segment[] = [{ power: 330 * u.kW, time: 45 * u.s }, { power: 84 * u.kW, time: 20 * u.kWh }]
const energy = segments.reduce((sum, { power, time }) => sum + power * time, 0)`,
    3,
    'Cannot add sum (an energy or a torque, in J) and power * time (kg^2 m^4 s^-5): both sides ',
  ),
  // an exponent with a unit
  wrong(
    `const ratio = 2 ** (3 * u.m)`,
    1,
    'An exponent wants a pure number but got (3 * u.m) with m; divide it by a unit or by a refe',
  ),
  // a cosine of a length
  wrong(
    `const x = Math.cos(3 * u.m)`,
    1,
    'Math.cos wants a pure number but got 3 * u.m with m; divide it by a unit or by a reference',
  ),
  // ternary of two quantities
  wrong(
    `const closed = true
const answer = closed ? 1600 * u.kg : 16 * u.kN`,
    2,
    'The two branches give 1600 * u.kg (kg) and 16 * u.kN (a force, in N): both need the same d',
  ),
  // max of a power and an energy
  wrong(
    `const size = Math.max(330 * u.kW, 84 * u.kWh)`,
    1,
    'Math.max cannot mix 330 * u.kW (a power, in W) and 84 * u.kWh (an energy or a torque, in J',
  ),
  // a requirement in the wrong unit
  wrong(
    `requirement('reach', { actual: 85 * u.km, atLeast: 40 * u.km, unit: 'min' })`,
    1,
    "The unit 'min' has s, but 85 * u.km has m",
  ),
  // a result shown in the wrong unit
  wrong(
    `const hoverPower = result('hoverPower', 330 * u.kW, { unit: 'N m' })`,
    1,
    "The unit 'N m' has kg m^2 s^-2 (for instance J), but 330 * u.kW has kg m^2 s^-3 (for insta",
  ),
  // a default that is not of the kind
  wrong(
    `function reserveEnergy(power: number, time = 20 * u.km) { return power * time }
const energy = reserveEnergy(60 * u.kW) + 5 * u.kWh`,
    2,
    'Cannot add reserveEnergy(60 * u.kW) (kg m^3 s^-3) and 5 * u.kWh (an energy or a torque, in',
  ),
  // a pure number added to a speed
  wrong(
    `const stall = 28 * u.mps
const approach = stall + 5`,
    2,
    'Cannot add stall (a speed, in m/s) and 5 (a pure number): both sides of + need the same di',
  ),
  // a for-of sum with one odd record
  wrong(
    `const parts = [{ mass: 10 * u.kg }, { mass: 20 * u.N }, { mass: 4 * u.kg }]
let total = 0
for (const part of parts) total += part.mass`,
    3,
    'Cannot add total (kg) and part.mass (a force, in N): both sides of + need the same dimensi',
  ),
  // an odd item that goes through a map before it is summed
  wrong(
    `const parts = [{ power: 3 * u.kW, time: 40 * u.s }, { power: 2 * u.kW, time: 40 / u.s }]
const rows = parts.map(({ power, time }) => ({ energy: power * time }))
const used = rows.reduce((sum, { energy }) => sum + energy, 0)`,
    3,
    'Cannot add sum (an energy or a torque, in J) and energy',
  ),
  // a plain list with one odd item reduced
  wrong(
    `const list = [10 * u.kg, 20 * u.m]
const total = list.reduce((a, b) => a + b, 0)`,
    2,
    'Cannot add a (kg) and b (m): both sides of + need the same dimension',
  ),
  // a map that adds to an odd item
  wrong(
    `const list = [{ d: 10 * u.kg }, { d: 2 * u.m }].map(({ d }) => d + 1 * u.kg)`,
    1,
    'Cannot add d (m) and 1 * u.kg (kg): both sides of + need the same dimension',
  ),
  // moment divided by length again
  wrong(
    `const bending = 1200 * u.N * 2 * u.m
const modulus = 3e-5 * u.m3
const stress = bending / modulus
const margin = 300 * u.MPa / stress - 1
const bad = stress + bending`,
    5,
    'Cannot add stress (a pressure or a loading per area, in Pa) and bending (an energy or a to',
  ),
  // a helper used with the wrong kind
  wrong(
    `const reserveOf = (energy: number) => energy + 5 * u.kWh
const e = reserveOf(60 * u.kW)`,
    2,
    'reserveOf does not work with these arguments. Cannot add energy (a power, in W) and 5 * u.',
  ),
  // an index of specific energy upside down
  wrong(
    `const energy = 70 * u.kWh
const specific = 235 * u.Wh / u.kg
const mass_ = specific / energy
const gross = 1200 * u.kg + mass_`,
    4,
    'Cannot add 1200 * u.kg (kg) and mass_ (kg^-1): both sides of + need the same dimension',
  ),
  // unit text of a requirement whose bounds are not alike
  wrong(
    `requirement('climb', { actual: 900 * u.fpm, atLeast: 500, unit: 'ft/min' })`,
    1,
    'requirement cannot mix 900 * u.fpm (a speed, in m/s) and 500 (a pure number): all its valu',
  ),
  // a range of an assumption in bare numbers
  wrong(
    `const radius = assumption('radius', 1.3 * u.m, { unit: 'm', range: [1.1, 1.5] })`,
    1,
    'assumption cannot mix 1.3 * u.m (m) and 1.1 (a pure number): all its values need the same ',
  ),
  // a wing loading from pounds force and kilogram
  wrong(
    `const loading = 23 * u.lbf / u.ft2
const area = 1650 * u.kg / loading
const span = Math.sqrt(area * 11) + 1 * u.m`,
    3,
    'Cannot add Math.sqrt(area * 11) (m^0.5 s) and 1 * u.m (m): both sides of + need the same d',
  ),
  // a nested call with mixed unit in Math.hypot
  wrong(
    `const resultant = Math.hypot(3 * u.m, 4 * u.mps)`,
    1,
    'Math.hypot cannot mix 3 * u.m (m) and 4 * u.mps (a speed, in m/s): all its values need the',
  ),
  // array.includes compare by sort
  wrong(
    `const order = [3 * u.kg, 2 * u.kg].sort((a, b) => a - b * u.m)`,
    1,
    'Cannot subtract a (kg) and b * u.m (kg m): both sides of - need the same dimension',
  ),
  // two steps with a shared mistake
  wrong(
    `const v = 58 * u.mps
const rho = 1.1 * u.kg / u.m3
const q = 0.5 * rho * v
const force = q * 14 * u.m2 * 0.03 
const thrust = 900 * u.N
const excess = thrust - force`,
    6,
    'Cannot subtract thrust (a force, in N) and force (a mass flow, in kg s^-1): both sides of ',
  ),
  // an angle in degrees without a unit is not seen, but a length is
  wrong(
    `const lift = 900 * u.N * Math.sin(3 * u.ft / (2 * u.s))`,
    1,
    'Math.sin wants a pure number but got 3 * u.ft / (2 * u.s) with m s^-1 (for instance mps); ',
  ),
]
