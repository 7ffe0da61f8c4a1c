/**
 * Vortex lattice, lifting line and drag build-up: what one call costs. Run by plain node against the built kernel:
 * `node tests/benchmarks/kernel/lattice.js`.
 *
 * The lattice of 2 x 20 x 4 panels is held against the elimination of its 80 equations alone, in the same rounds, so that the ratio says
 * what geometry, influence and wake add. Processor time, medians over interleaved rounds; the answers are summed and compared.
 */
import { availableParallelism, cpus, loadavg } from 'node:os'
import { median } from '../statistics.js'

const built = new URL('../../../.build/kernel/library/', import.meta.url)
const load = (path) => import(new URL(path, built).href)
const [{ preloaded }, { solveLinear }] = await Promise.all([load('index.js'), load('numerics/index.js')]).catch(() => {
  process.stderr.write('The kernel is not built; run "npx tsc -b kernel/library" first.\n')
  process.exit(1)
})
const { drag, wing } = preloaded

const rounds = 15
const surface = { semiSpan: 6, rootChord: 1.4, tipChord: 0.7, sweepLeadingEdge: 0.05, twist: -0.04 }
const tail = { semiSpan: 1.8, rootChord: 0.7, tipChord: 0.7, sweepLeadingEdge: 0, x: 5, z: 1 }
const lattice = (surfaces, spanwise, chordwise) => () =>
  wing.lattice({ surfaces, spanwise, chordwise, angleOfAttack: 0.06 }).liftCurveSlope

const size = 80
const pattern = Float64Array.from({ length: size * size }, (_, at) => {
  const [row, column] = [Math.floor(at / size), at % size]
  return row === column ? 4 : Math.sin(row + 3 * column) / (1 + Math.abs(row - column))
})
const matrix = new Float64Array(size * size)
const sides = new Float64Array(2 * size)
function eliminate() {
  matrix.set(pattern)
  sides.fill(1)
  if (!solveLinear(matrix, size, sides)) throw new Error('the pattern is singular')
  return sides[0]
}

const parts = Array.from({ length: 12 }, (_, index) => ({
  name: `part ${index}`,
  wettedArea: 3 + index,
  length: 1 + index / 4,
  formFactor: 1.2,
  interference: 1.05,
}))
const flight = { wingArea: 14, leakageShare: 0.05, speed: 58, density: 1.1, dynamicViscosity: 1.79e-5 }

const sidesOf = {
  'lattice 2 x 20 x 4': lattice([surface], 20, 4),
  'elimination of its 80 equations': eliminate,
  'lattice 2 x 10 x 2': lattice([surface], 10, 2),
  'lattice 2 x 40 x 4': lattice([surface], 40, 4),
  'wing and tail, 2 x 20 x 2 each': lattice([surface, tail], 20, 2),
  'lifting line, 100 terms': () =>
    wing.liftingLine({ aspectRatio: 10, taper: 0.5, sectionLiftSlope: 6, twist: -0.04 }).delta,
  'drag build-up of 12 parts': () => drag.buildUp(parts, flight).dragArea,
}

function time(call) {
  const begin = process.cpuUsage()
  let [sum, calls] = [0, 0]
  let spent = 0
  while (spent < 20_000) {
    sum += call()
    calls += 1
    const { user, system } = process.cpuUsage(begin)
    spent = user + system
  }
  return { milliseconds: spent / calls / 1000, mean: sum / calls }
}

const times = Object.fromEntries(Object.keys(sidesOf).map((name) => [name, []]))
const answers = {}
for (let round = 0; round <= rounds; round += 1)
  for (const [name, call] of Object.entries(sidesOf)) {
    const { milliseconds, mean } = time(call)
    if (answers[name] !== undefined && Math.abs(mean / answers[name] - 1) > 1e-9)
      throw new Error(`${name} answers ${mean} after ${answers[name]}`)
    answers[name] = mean
    // The first round warms the compiler up.
    if (round > 0) times[name].push(milliseconds)
  }

const medians = Object.fromEntries(Object.entries(times).map(([name, values]) => [name, median(values)]))
const unit = medians['elimination of its 80 equations']
process.stdout.write(
  [
    `Wing and drag (${rounds} interleaved rounds, processor time, medians)`,
    `  environment  ${cpus()[0]?.model ?? 'unknown'}, ${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)}, Node ${process.version}`,
    ...Object.entries(medians).map(
      ([name, value]) =>
        `  ${name.padEnd(34)} ${value.toFixed(4).padStart(9)} ms, ${(value / unit).toFixed(2)} eliminations`,
    ),
    JSON.stringify({ benchmark: 'wing and drag', milliseconds: medians }),
    '',
  ].join('\n'),
)
