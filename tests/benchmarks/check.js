/**
 * From a keystroke in one of forty cells to a new report of types and units, as the checker's worker does it: off the main thread, with all
 * that did not change remembered. Against it, in the same run, a check of the same notebook by a checker that remembers nothing of it.
 */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { stop, transform } from 'esbuild-wasm'
import { analyse } from '../../.build/kernel/cells/analyse/index.js'
import { createChecker } from '../../.build/kernel/cells/check/index.js'
import { createEraser, guardTransform } from '../../.build/kernel/cells/compile/index.js'
import { longNotebook } from './long-notebook.js'
import { median, milliseconds } from './statistics.js'

const folder = new URL('../../.build/kernel/', import.meta.url)
const declarations = JSON.parse(readFileSync(new URL('declarations.json', folder), 'utf8'))
const names = new Set(JSON.parse(readFileSync(new URL('kernel.json', folder), 'utf8')).names)
const typescript = createRequire(import.meta.url)('typescript')
const erase = createEraser(guardTransform(transform, { restart: () => stop(), after: () => () => undefined }))

const cells = longNotebook({ cells: 60, figures: 14 })
  .cells.filter((cell) => cell.kind === 'sizing')
  .map((cell) => ({ id: cell.id, source: cell.source.join('\n') }))

/** The notebook as it stands after so many keystrokes in its middle. */
const graphAfter = (keys) =>
  analyse(
    cells.map((cell, index) =>
      index === 20 ? { ...cell, source: `${cell.source}\nconst typed = ${keys} * u.kg` } : cell,
    ),
    erase,
    names,
  )

const rounds = 20
const checker = createChecker(typescript, declarations)
checker.check(await graphAfter(0))
const typing = []
for (let key = 1; key <= rounds; key += 1) {
  const graph = await graphAfter(key)
  const begin = performance.now()
  checker.check(graph)
  typing.push(performance.now() - begin)
}
const anew = []
for (let round = 0; round < 3; round += 1) {
  const graph = await graphAfter(100 + round)
  const fresh = createChecker(typescript, declarations)
  const begin = performance.now()
  fresh.check(graph)
  anew.push(performance.now() - begin)
}
await stop()

console.log(`${cells.length} sizing cells, a keystroke in one of them: ${milliseconds(typing)}; aim: under 300 ms`)
console.log(`the same by a checker that remembers nothing: ${milliseconds(anew)}`)
console.log(`ratio of a fresh check to one after a keystroke: ${(median(anew) / median(typing)).toFixed(1)}`)
