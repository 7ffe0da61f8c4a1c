/**
 * Lost rotors: what the trims of a layout cost. Run by plain node against the built kernel: `node tests/benchmarks/kernel/authority.js`.
 *
 * All single and double losses of eight rotors (36 trims: peak, unique thrusts and index) are held against the same 36 least peaks by
 * HiGHS, in the same rounds; the answers are compared. Processor time, medians over interleaved rounds.
 */
import { availableParallelism, cpus, loadavg } from 'node:os'
import loadHighs from 'highs'
import { median } from '../statistics.js'

const built = new URL('../../../.build/kernel/library/index.js', import.meta.url)
const { preloaded } = await import(built.href).catch(() => {
  process.stderr.write('The kernel is not built; run "npx tsc -b kernel/library" first.\n')
  process.exit(1)
})
const highs = await loadHighs()
const { authority } = preloaded

const rounds = 15
const axes = ['lift', 'roll', 'pitch', 'yaw']
const rotors = [1.5, -1.5].flatMap((x) =>
  [-3, -1.5, 1.5, 3].map((y, at) => ({
    x,
    y,
    spin: (at % 2 === 0 ? 1 : -1) * (x > 0 ? -1 : 1),
    maxThrust: 4000,
    torqueRatio: 0.08,
  })),
)
const weight = 16_000
const losses = rotors.flatMap((_, one) => [
  [one],
  ...[...rotors.keys()].flatMap((other) => (other > one ? [[one, other]] : [])),
])
const columns = authority.effectiveness({ rotors })

/** Sum of the peaks over weight of the trims that hold all axes, and how many do. */
function trims() {
  const found = losses.map((lost) => authority.trim({ rotors, weight, lost }))
  return sumUp(found.map((one) => one.peakShare))
}

function trimsByHighs() {
  return sumUp(
    losses.map((lost) => {
      const alive = [...rotors.keys()].filter((at) => !lost.includes(at))
      const sum = (axis) =>
        alive.map((at) => `${columns[axis][at] < 0 ? '-' : '+'} ${Math.abs(columns[axis][at])} f${at}`).join(' ')
      const text = [
        'Minimize\n obj: t\nSubject To',
        ...axes.map((axis) => ` ${axis}: ${sum(axis)} = ${axis === 'lift' ? 8 : 0}`),
        ...alive.map((at) => ` p${at}: f${at} - t <= 0`),
        'Bounds',
        ...alive.map((at) => ` 0 <= f${at} <= ${(8 * rotors[at].maxThrust) / weight}`),
        'End',
      ].join('\n')
      const answer = highs.solve(text)
      return answer.Status === 'Optimal' ? answer.ObjectiveValue / 8 : undefined
    }),
  )
}

function sumUp(peaks) {
  const feasible = peaks.filter((peak) => peak !== undefined)
  return feasible.reduce((sum, peak) => sum + peak, 0) + feasible.length
}

const sides = {
  '36 trims of eight rotors': trims,
  '36 least peaks by HiGHS': trimsByHighs,
  'rating of the layout': () => authority.rating({ rotors, weight }).thrustToHover,
  'pairing on four buses': () => authority.pairing({ rotors, weight }).worstPeakShare,
  'search of 35 spin patterns': () => authority.search({ rotors, weight, keep: 1 }).best.peakShare,
}

function time(call) {
  const begin = process.cpuUsage()
  let [sum, calls, spent] = [0, 0, 0]
  while (spent < 30_000) {
    sum += call()
    calls += 1
    const { user, system } = process.cpuUsage(begin)
    spent = user + system
  }
  return { milliseconds: spent / calls / 1000, mean: sum / calls }
}

const times = Object.fromEntries(Object.keys(sides).map((name) => [name, []]))
const answers = {}
for (let round = 0; round <= rounds; round += 1)
  for (const [name, call] of Object.entries(sides)) {
    const { milliseconds, mean } = time(call)
    if (answers[name] !== undefined && Math.abs(mean / answers[name] - 1) > 1e-9)
      throw new Error(`${name} answers ${mean} after ${answers[name]}`)
    answers[name] = mean
    // The first round warms the compiler up.
    if (round > 0) times[name].push(milliseconds)
  }
const [ours, theirs] = [answers['36 trims of eight rotors'], answers['36 least peaks by HiGHS']]
if (Math.abs(ours / theirs - 1) > 1e-6) throw new Error(`the trims add up to ${ours}, HiGHS says ${theirs}`)

const medians = Object.fromEntries(Object.entries(times).map(([name, values]) => [name, median(values)]))
const unit = medians['36 trims of eight rotors']
process.stdout.write(
  [
    `Lost rotors (${rounds} interleaved rounds, processor time, medians)`,
    `  environment  ${cpus()[0]?.model ?? 'unknown'}, ${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)}, Node ${process.version}`,
    ...Object.entries(medians).map(
      ([name, value]) =>
        `  ${name.padEnd(34)} ${value.toFixed(3).padStart(9)} ms, ${(value / unit).toFixed(2)} of the trims`,
    ),
    JSON.stringify({ benchmark: 'lost rotors', milliseconds: medians }),
    '',
  ].join('\n'),
)
