/**
 * Reading a cell of 500 lines and one of 5,000, as after a paste: ten times the lines may take about ten times as long. What grew by the
 * square would take a hundred times, and the page that long.
 */
import { stop, transform } from 'esbuild-wasm'
import { analyse, readStatements } from '../../.build/kernel/cells/analyse/index.js'
import { compile, createEraser, guardTransform } from '../../.build/kernel/cells/compile/index.js'
import { formulasOf } from '../../.build/kernel/cells/formulas/index.js'
import { median, milliseconds } from './statistics.js'

const erase = createEraser(guardTransform(transform, { restart: () => stop(), after: () => () => undefined }))
const names = new Set(['u', 'assumption'])

const cells = {
  numbers: (i) => `const x${i} = ${i}`,
  'numbers that read each other': (i) => (i === 0 ? 'const x0 = 1' : `const x${i} = 2 * x${i - 1}`),
  assumptions: (i) => `const x${i} = assumption('x${i}', ${i} * u.kg)`,
  'changes of one list': (i) => (i === 0 ? 'const rows = []' : `rows.push(${i})`),
  'names that nobody declares': (i) => `const x${i} = unknown${i}`,
}

const rounds = 4
let texts = 0

async function timesOf(count, write) {
  const times = { read: [], statements: [], formulas: [] }
  for (let round = 0; round < rounds; round += 1) {
    texts += 1
    // Another text each round, in its code too: what was read before is remembered.
    const source = `${Array.from({ length: count }, (_, index) => write(index)).join('\n')}\nconst text${texts} = 1`
    await timed(times.read, async () => compile(await analyse([{ id: 'a', source }], erase, names)))
    const graph = await analyse([{ id: 'a', source }], erase, names)
    await timed(times.statements, () => readStatements(graph.cells[0].code))
    await timed(times.formulas, () => formulasOf(graph))
  }
  return times
}

async function timed(times, work) {
  const begin = performance.now()
  await work()
  times.push(performance.now() - begin)
}

for (const [name, write] of Object.entries(cells)) {
  await timesOf(100, write)
  const [few, many] = [await timesOf(500, write), await timesOf(5000, write)]
  for (const what of Object.keys(few)) {
    const ratio = (median(many[what]) / median(few[what])).toFixed(1)
    console.log(`${name}, ${what}: 5,000 lines ${milliseconds(many[what])}; ratio to 500 lines ${ratio}, aim: under 25`)
  }
}
await stop()
