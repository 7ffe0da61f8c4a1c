import { describe, expect, test } from 'vitest'
import { analyse } from '../../../../kernel/cells/analyse/index.js'
import type { Eraser } from '../../../../kernel/cells/program/index.js'
import { cellsOf, erase, kernelNames } from './support.js'

const sources = { a: 'const a = 1', b: 'const b = a + 1', c: 'const c = b + 1' }

/** An eraser of its own, so that nothing is remembered from another test. */
const fresh = (): Eraser => (texts) => erase(texts)

describe('analyse: by turns', () => {
  test('analyse() asks for a pause between cells that it reads for the first time, and gives the same graph', async () => {
    let pauses = 0
    const eraser = fresh()
    const pause = () => {
      pauses += 1
      return pauses === 1 ? undefined : new Promise<void>((resolve) => setTimeout(resolve))
    }
    const graph = await analyse(cellsOf(sources), eraser, kernelNames, pause)
    expect(pauses).toBe(2)
    expect(graph).toEqual(await analyse(cellsOf(sources), fresh(), kernelNames))
    await analyse(cellsOf({ ...sources, c: 'const c = b + 2' }), eraser, kernelNames, pause)
    expect(pauses).toBe(2)
  })

  test('analyse() fails when the eraser gives fewer answers than sources, also by turns', async () => {
    const short: Eraser = async (texts) => (await erase(texts)).slice(0, 1)
    const reading = analyse(cellsOf(sources), short, kernelNames, () => new Promise((resolve) => setTimeout(resolve)))
    await expect(reading).rejects.toThrow('the eraser gave 1 answers to 3 sources')
  })
})
