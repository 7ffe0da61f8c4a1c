/** What a newcomer does to a page without meaning harm: writes on while the network is lost, and leaves in the middle of a word. */
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

  it('reload in the middle of a word on a line that has gone dead: text and title field are kept, and sent afterwards', async () => {
    const path = await bench.notebook('Rough', { a: 'Begun.' }, 'rationale')
    const { page, context } = await bench.visit(path)
    await untilSaved(page)
    await page.route('**/title-block', (route) => route.abort())
    await page.locator('.title-block .edit-fields').click()
    await page.locator('[data-field="checked"] textarea').fill('R. Marsh')
    await page.locator('[data-field="checked"] textarea').press('Enter')
    await page.locator('[data-field="checked"] dd', { hasText: 'R. Marsh' }).waitFor()
    await edit(page, 'a')
    await page.keyboard.press('Control+End')
    await page.evaluate(() => {
      WebSocket.prototype.send = () => undefined
    })
    const sentence = ' Eight rotors over the lazy sea.'
    await page.keyboard.insertText(sentence)
    await page.reload()
    await page.locator('[data-field="checked"] dd', { hasText: 'R. Marsh' }).waitFor({ timeout: patience })
    await untilSaved(page)
    const source = async () => (await bench.stored(path)).cells[0]?.source
    await expect.poll(source, { timeout: patience }).toEqual([`Begun.${sentence}`])
    await page.unroute('**/title-block')
    await context.setOffline(true)
    await page.locator('.bar .saving', { hasText: 'not connected' }).waitFor()
    await context.setOffline(false)
    await expect
      .poll(async () => (await bench.stored(path)).titleBlock?.checked, { timeout: patience })
      .toBe('R. Marsh')
  })
})
