/** The worked problem gives the same numbers in Chromium as in Node; only the last digits of the platform's Math may differ. */
import { readFileSync } from 'node:fs'
import { transform } from 'esbuild-wasm'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createEraser } from '../../kernel/cells/compile/index.js'
import { createNodeHost } from '../../kernel/cells/host-node/index.js'
import { createPipeline } from '../../kernel/cells/index.js'
import type { EvaluationHost, Overrides, SizingCell } from '../../kernel/cells/program/index.js'
import { preloaded } from '../../kernel/library/index.js'
import { type CellResult, readNotebook } from '../../shared/contracts/index.js'
import { type BrowserBench, prepareBrowserBench } from '../isolation/browser-bench.js'

const reading = readNotebook(readFileSync(new URL('../../notebooks/worked-sizing.json', import.meta.url), 'utf8'))
if (!reading.ok) throw new Error(reading.reason)
const cells: SizingCell[] = reading.notebook.cells
  .filter((cell) => cell.kind === 'sizing')
  .map((cell) => ({ id: cell.id, source: cell.source.join('\n') }))

const trials: readonly Overrides[] = [
  {},
  { range: 60_000, rotorCount: 6 },
  { range: 164_900 },
  { payload: 250, altitude: 2500 },
]

let bench: BrowserBench
let inBrowser: EvaluationHost
let inNode: EvaluationHost

beforeAll(async () => {
  bench = await prepareBrowserBench()
  inBrowser = (await bench.open()).host
  inNode = createNodeHost({ sandboxText: bench.sandboxText })
})
afterAll(async () => {
  await inNode.close()
  await inBrowser.close()
  await bench.close()
})

function numbers(results: readonly CellResult[]): ReadonlyMap<string, number> {
  const named = results.flatMap((result) => result.values)
  return new Map(named.flatMap(({ name, value }) => (value.kind === 'number' ? [[name, Number(value.si)]] : [])))
}

describe('evaluate in Chromium and in Node', () => {
  it.each(trials)('gives the same numbers to 1e-9 with trial values %o', async (overrides) => {
    const kernel = { hash: bench.kernelHash, names: Object.keys(preloaded) }
    const erase = createEraser(transform)
    const [here, there] = await Promise.all(
      [inNode, inBrowser].map(async (host) => {
        const { results } = await createPipeline({ erase, host, kernel }).compute(cells, overrides, 'all')
        return numbers(results)
      }),
    )
    expect(here?.get('grossMass')).toBeGreaterThan(500)
    expect([...(there?.keys() ?? [])]).toEqual([...(here?.keys() ?? [])])
    for (const [name, value] of here ?? []) {
      // Next to the fold a difference in the last digit of the build-up grows by the growth factor, here about 30.
      expect(Math.abs((there?.get(name) ?? Number.NaN) / value - 1), name).toBeLessThan(1e-9)
    }
  })
})
