/** One attack, run in a host, with what must be true afterwards. */
import { expect } from 'vitest'
import type { EvaluationHost } from '../../kernel/cells/program/index.js'
import { type Attack, aimed, upstreamBody } from './attacks.js'
import type { CountingServer } from './counting-server.js'
import { programOf } from './programs.js'

/** Uses methods and kernel names that an attack may have bent. */
const victimBody =
  'const sum = [1, 2, 3].map((x) => x * u.kg).reduce((a, b) => a + b, upstream.nested.value); const text = JSON.stringify({ sum });'

/** The attack fails or does no harm: it does not win, the cell after it computes what it should, and nothing reached the server. */
export async function checkHeld(host: EvaluationHost, kernelHash: string, attack: Attack, server: CountingServer) {
  server.forget()
  const reads = { upstream: 'above' }
  const program = programOf(kernelHash, [
    { id: 'above', body: upstreamBody, declares: ['upstream'] },
    { id: 'attack', body: aimed(attack, server), declares: ['won'], reads },
    { id: 'victim', body: victimBody, declares: ['sum', 'text'], reads },
  ])
  const { results } = await host.evaluate(program, {}, 'all', { timeLimit: 5000 })
  const [above, attacked, victim] = results
  expect(above?.outcome).toBe('computed')
  if (attacked?.outcome === 'computed' && attack.shows === 'won')
    expect(attacked.values.find(({ name }) => name === 'won')?.value).toEqual({ kind: 'truth', value: false })
  expect(victim?.values.map(({ value }) => value)).toEqual([
    { kind: 'number', si: 7 },
    { kind: 'text', text: '{"sum":7}' },
  ])
  expect(server.arrivals.size).toBe(0)
}
