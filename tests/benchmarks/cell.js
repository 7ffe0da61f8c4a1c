/**
 * The worked sizing as whole cells: every closure crosses into the isolated evaluator with another payload, and 14 cells run, are frozen,
 * encoded and checked on the way out. Against it, in the same run, an evaluation in which nothing changed.
 */
import { readFileSync } from 'node:fs'
import { openToolchain } from '../../.build/server/toolchain.js'
import { readNotebook } from '../../.build/shared/contracts/index.js'
import { median, milliseconds } from './statistics.js'

const reading = readNotebook(readFileSync(new URL('../../notebooks/worked-sizing.json', import.meta.url), 'utf8'))
const cells = reading.notebook.cells
  .filter((cell) => cell.kind === 'sizing')
  .map((cell) => ({ id: cell.id, source: cell.source.join('\n') }))

const rounds = 200
const toolchain = await openToolchain()
const { pipeline } = toolchain
const program = await pipeline.read(cells)

async function time(overrides, wanted) {
  const begin = performance.now()
  const { results, ran } = await pipeline.evaluate(program, overrides, wanted)
  const elapsed = performance.now() - begin
  if (results.some((result) => result.outcome !== 'computed')) throw new Error('the worked problem did not compute')
  return { elapsed, ran: ran.length }
}

await time({}, 'all')
const changed = []
const closing = []
const unchanged = []
for (let round = 0; round < rounds; round += 1) {
  const payload = 350 + round / 4
  closing.push((await time({ payload }, ['closure'])).elapsed)
  changed.push((await time({ payload }, 'all')).elapsed)
  unchanged.push((await time({ payload }, 'all')).elapsed)
}
await toolchain.close()

console.log(
  `closure and what it reads, another payload each time: ${milliseconds(closing)}, ${(1000 / median(closing)).toFixed(0)} per second`,
)
console.log(`the rest of the notebook after it:                    ${milliseconds(changed)}`)
console.log(`nothing changed:                                      ${milliseconds(unchanged)}`)
console.log(
  `ratio of a whole closure to an evaluation in which nothing runs: ${(median(closing) / median(unchanged)).toFixed(2)}`,
)
