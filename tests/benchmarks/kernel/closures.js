/**
 * Worked closures per second: the kernel's `sizing.close` on the worked sizing problem, the same formulas bare, and the same in
 * plain Python and in NumPy over 10,000 designs. Run by plain node against the built kernel: `node tests/benchmarks/kernel/closures.js`.
 *
 * Rounds are interleaved (kernel, bare, Python, NumPy, and again), medians compared as ratios; absolute times belong to the
 * machine. Processor time is counted on every side, garbage collection included, so that a busy machine does not blur the ratios. Every side's gross masses are summed and compared, so that nothing is skipped and all answer the same question.
 */
import { spawnSync } from 'node:child_process'
import { availableParallelism, cpus, loadavg } from 'node:os'
import { fileURLToPath } from 'node:url'

const { preloaded } = await import(new URL('../../../.build/kernel/library/index.js', import.meta.url).href).catch(
  () => {
    process.stderr.write('The kernel is not built; run "npx tsc -b kernel/library" first.\n')
    process.exit(1)
  },
)
const { air, battery, drag, rotor, sizing, u, wing } = preloaded

const designs = 10_000
/** Plain Python takes seconds for all of them; a fifth says as much. */
const plainDesigns = 2000
const rounds = 5
const payloads = Float64Array.from({ length: designs }, (_, index) => 350 + (100 * index) / designs)

/** As a cell would write it: kernel calls, items by name. */
function kernelClosure(payload) {
  const density = air.standard(600, 15).density
  const rotorCount = 8
  const wingArea = 15
  const diskArea = rotorCount * Math.PI * 1.3 ** 2
  const polar = drag.polar({
    zeroLiftDrag: (0.42 + rotorCount * 0.018) / wingArea,
    aspectRatio: 11,
    spanEfficiency: 0.8,
  })
  const [speed, hoverTime, reserveTime] = [58, 90, 20 * u.min]
  const cruiseTime = (85 * u.km) / speed
  return sizing.close({
    from: 1000,
    requiredMass: (grossMass) => {
      const weight = grossMass * u.g0
      const hover = rotor.hover({ thrust: weight / 0.95, diskArea, density, figureOfMerit: 0.72 })
      const cruise = drag.powerRequired({ polar, weight, wingArea, density, speed })
      const floor = 1.3 * wing.stallSpeed({ weight, density, wingArea, maximumLift: 1.5 })
      const reserve = drag.leastPowerSpeed({ polar, weight, wingArea, density, floor })
      const energy =
        (hover.power / 0.9) * hoverTime +
        (cruise.power * cruiseTime + reserve.power * reserveTime) / (0.84 * 0.91) +
        2 * u.kW * (hoverTime + cruiseTime + reserveTime)
      return {
        payload,
        battery: battery.massForEnergy({ energy, specificEnergy: (235 * u.Wh) / u.kg, usableShare: 0.8 }).mass,
        motors: (hover.power * (16 / 11) ** 1.5) / (5 * u.kW),
        structure: 0.32 * grossMass,
        systemsFixed: 90,
        systems: 0.03 * grossMass,
        rotors: rotorCount * 6.5,
      }
    },
  }).grossMass
}

/** The same formulas as one function of plain numbers: what the checks, records and items of the kernel cost. */
function bareRequired(mass, payload) {
  const temperature = 288.15 - 0.0065 * 600
  const pressure = 101_325 * (temperature / 288.15) ** (9.80665 / (287.05287 * 0.0065))
  const rho = pressure / (287.05287 * (temperature + 15))
  const weight = mass * 9.80665
  const thrust = weight / 0.95
  const hover = (thrust * Math.sqrt(thrust / (2 * rho * 8 * Math.PI * 1.3 ** 2))) / 0.72
  const zeroLift = (0.42 + 8 * 0.018) / 15
  const induced = 1 / (Math.PI * 11 * 0.8)
  const stall = Math.sqrt((2 * weight) / (rho * 15 * 1.5))
  const least = Math.sqrt((2 * weight) / (rho * 15 * Math.sqrt((3 * zeroLift) / induced)))
  const reserve = barePower(Math.max(least, 1.3 * stall), weight, rho, zeroLift, induced)
  const cruise = barePower(58, weight, rho, zeroLift, induced)
  const cruiseTime = 85_000 / 58
  const energy =
    (hover / 0.9) * 90 + (cruise * cruiseTime + reserve * 1200) / (0.84 * 0.91) + 2000 * (90 + cruiseTime + 1200)
  return payload + energy / (235 * 3600 * 0.8) + (hover * (16 / 11) ** 1.5) / 5000 + 0.35 * mass + 90 + 8 * 6.5
}

function barePower(speed, weight, rho, zeroLift, induced) {
  const force = 0.5 * rho * speed * speed * 15
  const lift = weight / force
  return force * (zeroLift + induced * lift * lift) * speed
}

function bareClosure(payload) {
  let mass = 1000
  let excess = bareRequired(mass, payload) - mass
  let next = mass + excess
  for (;;) {
    const nextExcess = bareRequired(next, payload) - next
    if (Math.abs(nextExcess) <= 1e-12 * next) return next
    const slope = (nextExcess - excess) / (next - mass)
    mass = next
    excess = nextExcess
    next = mass - nextExcess / slope
  }
}

function time(closure) {
  const begin = process.cpuUsage()
  let sum = 0
  for (let index = 0; index < designs; index += 1) sum += closure(payloads[index])
  const { user, system } = process.cpuUsage(begin)
  return { seconds: (user + system) / 1e6, sum }
}

function timePython() {
  const script = fileURLToPath(new URL('closures.py', import.meta.url))
  const run = spawnSync('python3', [script, JSON.stringify({ designs, plain: plainDesigns })], { encoding: 'utf8' })
  return run.status === 0 ? JSON.parse(run.stdout) : undefined
}

function median(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]
}

function requireSame(what, sum, expected) {
  if (Math.abs(sum / expected - 1) > 1e-9) throw new Error(`${what} sums to ${sum}, the kernel to ${expected}`)
}

const rates = { kernel: [], bare: [], python: [], numpy: [] }
const versions = { node: process.version }
let firstFifth = 0
for (let index = 0; index < plainDesigns; index += 1) firstFifth += kernelClosure(payloads[index])
time(kernelClosure)
time(bareClosure)
for (let round = 0; round < rounds; round += 1) {
  const kernel = time(kernelClosure)
  const bare = time(bareClosure)
  requireSame('bare JavaScript', bare.sum, kernel.sum)
  rates.kernel.push(designs / kernel.seconds)
  rates.bare.push(designs / bare.seconds)
  const python = timePython()
  if (python === undefined) continue
  requireSame('Python', python.plain.sum, firstFifth)
  versions.python = python.python
  rates.python.push(plainDesigns / python.plain.seconds)
  if (python.numpy === undefined) continue
  requireSame('NumPy', python.numpy.sum, kernel.sum)
  versions.numpy = python.numpy.version
  rates.numpy.push(designs / python.numpy.seconds)
}

const perSecond = Object.fromEntries(
  Object.entries(rates).map(([side, values]) => [side, values.length === 0 ? null : Math.round(median(values))]),
)
const ratio = (side) => (perSecond[side] === null ? null : Number((perSecond.kernel / perSecond[side]).toFixed(2)))
const kernelOver = { bare: ratio('bare'), python: ratio('python'), numpy: ratio('numpy') }
const say = (value, unit) => (value === null ? 'not measured' : `${value.toLocaleString('en')} ${unit}`)

process.stdout.write(
  [
    `Worked closures (${rounds} interleaved rounds of ${designs}, medians; Python ${plainDesigns})`,
    `  environment              ${cpus()[0]?.model ?? 'unknown'}, ${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)}, ${JSON.stringify(versions)}`,
    `  kernel, sizing.close     ${say(perSecond.kernel, 'per second')} (${(1e6 / perSecond.kernel).toFixed(1)} us each)`,
    `  bare JavaScript          ${say(perSecond.bare, 'per second')}; kernel over it ${say(kernelOver.bare, 'times')}`,
    `  plain Python             ${say(perSecond.python, 'per second')}; kernel over it ${say(kernelOver.python, 'times')}`,
    `  NumPy over ${designs}         ${say(perSecond.numpy, 'per second')}; kernel over it ${say(kernelOver.numpy, 'times')}`,
    JSON.stringify({ benchmark: 'worked closures', perSecond, kernelOver }),
    '',
  ].join('\n'),
)
