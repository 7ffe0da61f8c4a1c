/** The attacks against the Node host, the same attacks with nothing in their way, and the suite that every host must pass. */
import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Isolate } from '../../kernel/cells/evaluate/index.js'
import { openChildIsolate } from '../../kernel/cells/host-node/child-isolate.js'
import type { EvaluationHost, NumbersHost } from '../../kernel/cells/program/index.js'
import { checkHeld } from './attack-check.js'
import { aimed, attacks } from './attacks.js'
import { type CountingServer, startCountingServer } from './counting-server.js'
import { describeConformance } from './host-conformance.js'
import { type NodeBench, prepareNodeBench } from './node-bench.js'
import { runInPlainNode } from './node-control.js'
import { describeNumbersConformance } from './numbers-conformance.js'
import { programOf } from './programs.js'

let bench: NodeBench
let server: CountingServer

beforeAll(async () => {
  ;[bench, server] = await Promise.all([prepareNodeBench(), startCountingServer()])
}, 60_000)
afterAll(() => server.close())

describe('createNodeHost under attack', () => {
  let host: EvaluationHost
  beforeAll(() => {
    host = bench.open()
  })
  afterAll(() => host.close())

  it.each(attacks)('evaluate holds against: $title', (attack) => checkHeld(host, bench.kernelHash, attack, server))
})

describe('createNodeHost', () => {
  let host: EvaluationHost
  beforeAll(() => {
    host = bench.open()
  })
  afterAll(() => host.close())
  describeConformance('createNodeHost', () => ({ host, kernelHash: bench.kernelHash }))
})

describe('createNodeNumbersHost', () => {
  let host: NumbersHost
  beforeAll(() => {
    host = bench.openNumbers()
  })
  afterAll(() => host.close())
  describeNumbersConformance('createNodeNumbersHost', () => ({ host, kernelHash: bench.kernelHash }))
})

describe('a plain Node process under the same attacks', () => {
  const controls = attacks.filter(({ control }) => control.includes('node'))
  it.each(controls)('lets through: $title', async (attack) => {
    server.forget()
    const arrivals = () => server.arrivals.get(attack.title) ?? 0
    const wins = attack.shows === 'won'
    const won = await runInPlainNode(aimed(attack, server), wins ? 0 : 5000, () => !wins && arrivals() > 0)
    if (wins) expect(won).toBe(true)
    else expect(arrivals()).toBeGreaterThan(0)
  })
})

describe('createNodeHost with little memory', () => {
  it.each([
    ['objects', 'const s = []; for (;;) s.push({ a: new Array(10000).fill(1.5) })'],
    ['array buffers', 'const s = []; for (;;) s.push(new Float64Array(1e5).fill(1.5))'],
  ])(
    'evaluate ends a cell that fills memory with %s and says so',
    async (_what, body) => {
      const host = bench.open({ megabytes: 64 })
      const program = programOf(bench.kernelHash, [
        { id: 'culprit', body },
        { id: 'after', body: '' },
      ])
      const { results } = await host.evaluate(program, {}, 'all', { timeLimit: 30_000 })
      await host.close()
      expect(results[0]?.error).toMatchObject({ code: 'MEMORY_LIMIT', message: expect.stringContaining('64 MB') })
      expect(results[1]?.outcome).toBe('computed')
    },
    40_000,
  )
})

describe('openChildIsolate without the guard in front of it', () => {
  it('send gives nothing of the outer realm to a dynamic import', async () => {
    const childText = readFileSync(bench.childPath, 'utf8')
    const isolate = await openChildIsolate({ sandboxText: bench.sandboxText, childText, megabytes: 256 })
    const body = "let seen; import('node:fs').then((x) => { seen = x }, (x) => { seen = x }); const look = () => seen"
    const { cells } = programOf(bench.kernelHash, [
      { id: 'a', body, declares: ['look'] },
      { id: 'b', body: 'const kind = typeof look()', declares: ['kind'], reads: { look: 'a' } },
    ])
    isolate.send(JSON.stringify({ type: 'program', cells }))
    await linesOf(isolate, { type: 'run', needed: ['a'], blocked: [], overrides: {} })
    const lines = await linesOf(isolate, { type: 'run', needed: ['a', 'b'], blocked: [], overrides: {} })
    isolate.end()
    expect(lines.join()).toContain('"name":"kind","value":{"kind":"text","text":"string"}')
  })

  it('openChildIsolate rejects with a sentence when the sandbox cannot be loaded or the child ends', async () => {
    const childText = readFileSync(bench.childPath, 'utf8')
    const open = (settings: { sandboxText: string; childText: string }) =>
      openChildIsolate({ megabytes: 64, ...settings })
    await expect(open({ sandboxText: '(', childText })).rejects.toThrow(/kernel cannot be loaded: .*SyntaxError/)
    await expect(open({ sandboxText: '', childText: 'process.exit(3)' })).rejects.toThrow(/code 3/)
  })

  it('send to a child whose parent is gone is given up by the child itself, however the cell loops', async () => {
    const childText = readFileSync(bench.childPath, 'utf8')
    const isolate = await openChildIsolate({
      sandboxText: bench.sandboxText,
      childText,
      megabytes: 256,
      longestRun: 2000,
    })
    const { cells } = programOf(bench.kernelHash, [{ id: 'a', body: 'for (;;) { try { for (;;) {} } catch {} }' }])
    const loss = new Promise((resolve) => isolate.listen({ onLine: () => {}, onLost: resolve }))
    isolate.send(JSON.stringify({ type: 'program', cells }))
    isolate.send(JSON.stringify({ type: 'run', needed: ['a'], blocked: [], overrides: {} }))
    expect(await loss).toEqual({ code: 'EVALUATOR_LOST', reason: 'it ended with code 1' })
  })

  it('send reports a child that sends more than it may', async () => {
    const flood = "process.stdout.write('ready\\n' + 'x'.repeat(3e6)); setInterval(() => {}, 1000)"
    const isolate = await openChildIsolate({ sandboxText: '', childText: flood, megabytes: 64 })
    const loss = await new Promise((resolve) => isolate.listen({ onLine: () => {}, onLost: resolve }))
    expect(loss).toEqual({ code: 'EVALUATOR_LOST', reason: 'it sent more than it may' })
  })
})

function linesOf(isolate: Isolate, message: unknown): Promise<string[]> {
  const lines: string[] = []
  return new Promise((resolve, reject) => {
    isolate.listen({
      onLine(line) {
        lines.push(line)
        if (line === 'end') resolve(lines)
      },
      onLost: reject,
    })
    isolate.send(JSON.stringify(message))
  })
}
