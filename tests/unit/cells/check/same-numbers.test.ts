/** What the checker finds has no part in the numbers: they are the same to the last bit with it, without it, and with its complaints. */
import typescript from 'typescript'
import { expect, test } from 'vitest'
import { createChecker } from '../../../../kernel/cells/check/index.js'
import { createPipeline } from '../../../../kernel/cells/index.js'
import { cellsOf } from '../analyse/support.js'
import { plainHost } from '../pipeline/plain-host.js'
import { declarations, erase } from './notebook.js'

const kernel = { hash: 'kernel-1', names: ['u', 'assumption'] }
const cells = cellsOf({
  range: 'const range: number = 85 * u.km',
  wrong: 'const wrong: number = range / 0.3 + Math.sqrt(range) * u.km ** 1.7',
  after: 'const after: number = Math.sin(wrong) / 3',
})

test('compute(cells) gives bit for bit the same numbers with the checker on and off, findings or none', async () => {
  const checker = async () => createChecker(typescript, declarations)
  const checked = createPipeline({ erase, host: plainHost(), kernel, checker })
  const unchecked = createPipeline({ erase, host: plainHost(), kernel })
  const { findings } = await checked.check(cells)
  expect(findings.filter(({ kind }) => kind === 'dimension').length).toBeGreaterThan(0)
  const [on, off] = [await checked.compute(cells, {}, 'all'), await unchecked.compute(cells, {}, 'all')]
  const bits = ({ results }: typeof on) =>
    results.flatMap(({ values }) =>
      values.map(({ name, value }) => {
        if (value.kind !== 'number' || typeof value.si !== 'number') throw new TypeError(`${name} is no number`)
        return [name, new BigUint64Array(new Float64Array([value.si]).buffer)[0]]
      }),
    )
  expect(bits(on)).toHaveLength(3)
  expect(bits(on)).toEqual(bits(off))
  const read = async (pipeline: typeof checked) => (await pipeline.read(cells)).program.cells.map(({ code }) => code)
  expect(await read(checked)).toEqual(await read(unchecked))
})
