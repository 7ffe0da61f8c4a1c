import { describe, expect, it } from 'vitest'
import { pipelineKernel } from '../../../server/pipeline-kernel.js'
import { Computing } from '../../../server/results/index.js'
import { CellId } from '../../../shared/contracts/index.js'

const thread = (code: string) => new URL(`data:text/javascript,${encodeURIComponent(code)}`)
const answering = (reply: string) =>
  thread(`import { parentPort } from 'node:worker_threads'\nparentPort.on('message', (cells) => { ${reply} })`)
const cells = [{ id: CellId.parse('a'), source: 'const x = 1' }]

describe('Computing', () => {
  it('compute(cells) gives what the thread answers, one question after the other', async () => {
    const computing = new Computing(answering('parentPort.postMessage({ results: cells })'), '')
    const both = await Promise.all([computing.compute(cells), computing.compute([])])
    expect(both).toEqual([cells, []])
    await computing.close()
  })

  it('compute(cells) rejects with the reason, and the next question starts a new thread when the first has ended', async () => {
    const failing = new Computing(answering("parentPort.postMessage({ error: 'no kernel' })"), '')
    await expect(failing.compute(cells)).rejects.toThrow('no kernel')
    await failing.close()
    const ending = new Computing(answering('process.exit(0)'), '')
    await expect(ending.compute(cells)).rejects.toThrow('has ended')
    await expect(ending.compute(cells)).rejects.toThrow('has ended')
    const broken = new Computing(thread('throw new Error("made by the test")'), '')
    await expect(broken.compute(cells)).rejects.toThrow('made by the test')
    await broken.close()
  }, 20_000)
})

describe('pipelineKernel', () => {
  const kernel = { hash: 'h', names: ['u'] }

  it('fingerprints(cells) reads each text once, and again after a failure', async () => {
    let asked = 0
    const reading = pipelineKernel(
      {
        kernel,
        erase: async (sources) => {
          asked += 1
          if (asked === 1) throw new Error('not ready')
          return sources.map((code) => ({
            ok: true,
            code,
            map: '{"version":3,"sources":[""],"mappings":"","names":[]}',
          }))
        },
      },
      async () => [],
    )
    await expect(reading.fingerprints(cells)).rejects.toThrow('not ready')
    const first = await reading.fingerprints(cells)
    expect(await reading.fingerprints(cells)).toBe(first)
    expect([...first.keys()]).toEqual(['a'])
  })
})
