/** The attacks against the browser host, and the same attacks in a plain worker of a plain page. */
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { EvaluationHost, NumbersHost } from '../../kernel/cells/program/index.js'
import { checkHeld } from '../isolation/attack-check.js'
import { aimed, attacks } from '../isolation/attacks.js'
import { type BrowserBench, prepareBrowserBench } from '../isolation/browser-bench.js'
import { runInPlainWorker } from '../isolation/browser-control.js'
import { type CountingServer, startCountingServer } from '../isolation/counting-server.js'
import { describeConformance } from '../isolation/host-conformance.js'
import { describeNumbersConformance } from '../isolation/numbers-conformance.js'

let bench: BrowserBench
let server: CountingServer

beforeAll(async () => {
  ;[bench, server] = await Promise.all([prepareBrowserBench(), startCountingServer()])
})
afterAll(async () => {
  await bench.close()
  await server.close()
})

describe('createBrowserHost under attack', () => {
  let host: EvaluationHost
  beforeAll(async () => {
    ;({ host } = await bench.open())
  })
  afterAll(() => host.close())

  it.each(attacks)('evaluate holds against: $title', async (attack) => {
    await checkHeld(host, bench.kernelHash, attack, server)
  })

  it('evaluate asks nothing of the server that the page came from', async () => {
    bench.forget()
    const attack = attacks.find(({ title }) => title === 'importScripts')
    await checkHeld(host, bench.kernelHash, attack as (typeof attacks)[number], server)
    expect(bench.asked).toEqual([])
  })
})

describe('createBrowserHost', () => {
  let host: EvaluationHost
  beforeAll(async () => {
    ;({ host } = await bench.open())
  })
  afterAll(() => host.close())
  describeConformance('createBrowserHost', () => ({ host, kernelHash: bench.kernelHash }))
})

describe('createBrowserNumbersHost', () => {
  let host: NumbersHost
  beforeAll(async () => {
    ;({ numbersHost: host } = await bench.open())
  })
  afterAll(() => host.close())
  describeNumbersConformance('createBrowserNumbersHost', () => ({ host, kernelHash: bench.kernelHash }))
})

describe('a plain worker under the same attacks', () => {
  let page: Page
  beforeAll(async () => {
    page = await bench.browser.newPage()
    await page.goto(`${bench.origin}/bare`)
  })

  const controls = attacks.filter(({ control }) => control.includes('browser'))
  it.each(controls)('lets through: $title', async (attack) => {
    server.forget()
    const won = await runInPlainWorker(page, aimed(attack, server), attack.shows === 'won' ? 0 : 400)
    if (attack.shows === 'won') expect(won).toBe(true)
    else expect(server.arrivals.get(attack.title)).toBeGreaterThan(0)
  })
})
