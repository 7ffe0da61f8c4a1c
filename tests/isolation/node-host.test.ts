/** The attacks against the Node host, the same attacks with nothing in their way, and the suite that every host must pass. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { EvaluationHost } from '../../kernel/cells/program/index.js'
import { checkHeld } from './attack-check.js'
import { aimed, attacks } from './attacks.js'
import { type CountingServer, startCountingServer } from './counting-server.js'
import { describeConformance } from './host-conformance.js'
import { type NodeBench, prepareNodeBench } from './node-bench.js'
import { runInPlainNode } from './node-control.js'

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

describe('a plain Node process under the same attacks', () => {
  const controls = attacks.filter(({ control }) => control.includes('node'))
  it.each(controls)('lets through: $title', async (attack) => {
    server.forget()
    const won = await runInPlainNode(aimed(attack, server), attack.shows === 'won' ? 0 : 400)
    if (attack.shows === 'won') expect(won).toBe(true)
    else expect(server.arrivals.get(attack.title)).toBeGreaterThan(0)
  })
})
