/** What a newcomer does to a page without meaning harm: writes on while the network is lost. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, openBench } from './bench.js'
import { cellAt, edit, leave, untilSaved } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

const patience = 60_000

describe('rough hands', { timeout: 240_000 }, () => {
  it('write prose without a network: it shows as plain text, and is set when the network is back', async () => {
    const path = await bench.notebook('Prose', { a: 'Begun.' }, 'rationale')
    const { page, context } = await bench.visit(path)
    await untilSaved(page)
    await context.setOffline(true)
    await page.locator('.bar .saving', { hasText: 'not connected' }).waitFor()
    await edit(page, 'a')
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText('The *lift* rotors')
    await leave(page)
    await cellAt(page, 'a').locator('.prose', { hasText: /lift/ }).waitFor()
    await context.setOffline(false)
    await untilSaved(page)
    await cellAt(page, 'a').locator('.prose em', { hasText: 'lift' }).waitFor({ timeout: patience })
    await expect
      .poll(async () => (await bench.stored(path)).cells[0]?.source, { timeout: patience })
      .toEqual(['The *lift* rotors'])
  })
})
