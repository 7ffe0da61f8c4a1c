/**
 * `npm run benchmark`: every benchmark in turn, with the environment they ran in. Times belong to the machine and the moment; the
 * ratios, taken within one run, are what can be compared. `npm run benchmark -- page` runs one by its name.
 */
import { spawnSync } from 'node:child_process'
import { availableParallelism, cpus, loadavg, release } from 'node:os'
import { fileURLToPath } from 'node:url'
import { ensureBuilt } from '../../server/bin/freshness.js'
import { ensureInstalled, stop } from '../../server/bin/preparation.js'

const benchmarks = {
  closures: 'kernel/closures.js',
  'blade-element': 'kernel/blade-element.js',
  lattice: 'kernel/lattice.js',
  authority: 'kernel/authority.js',
  missions: 'kernel/missions.js',
  cell: 'cell.js',
  'long-cell': 'long-cell.js',
  check: 'check.js',
  evidence: 'evidence.js',
  units: 'units.js',
  page: 'page.js',
  'long-page': 'long-page.js',
  trial: 'trial.js',
}

const say = (sentence) => process.stdout.write(`${sentence}\n`)
const wanted = process.argv.slice(2)
const unknown = wanted.find((name) => !Object.hasOwn(benchmarks, name))
if (unknown !== undefined) stop(`There is no benchmark "${unknown}"; they are ${Object.keys(benchmarks).join(', ')}.`)

ensureInstalled(say)
await ensureBuilt(say)
const load = loadavg()[0].toFixed(2)
say(
  `Environment: ${cpus()[0]?.model ?? 'unknown processor'}, ${availableParallelism()} cores, load ${load}, Node ${process.version}, ${process.platform} ${release()}`,
)
if (loadavg()[0] > 0.5) say('The machine is busy with other work: take the ratios, not the times.')
for (const [name, file] of Object.entries(benchmarks)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue
  say(`\n== ${name}`)
  const script = fileURLToPath(new URL(file, import.meta.url))
  const { status } = spawnSync(process.execPath, [script], { stdio: 'inherit' })
  if (status !== 0) stop(`The benchmark "${name}" failed with exit code ${status}.`)
}
