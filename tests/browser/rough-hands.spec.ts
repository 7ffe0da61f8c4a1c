/** What a newcomer does to a page without meaning harm: types fast, reloads in the middle, goes back, opens it twice, loses the network. */
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
const source = async (path: string) => (await bench.stored(path)).cells.map((cell) => cell.source.join('\n'))

describe('rough hands', { timeout: 240_000 }, () => {
  it('keep all they typed when they reload in the middle, go back and forward, and open the notebook twice', async () => {
    const path = await bench.notebook('Rough', { a: 'Begun.', b: '' }, 'rationale')
    const { page, context, complaints } = await bench.visit('/')
    await page.goto(new URL(path, bench.address).href)
    await untilSaved(page)
    await edit(page, 'a')
    await page.keyboard.press('Control+End')
    const sentence = ' The quick engineer sizes eight rotors over the lazy sea, twice.'
    await page.keyboard.type(sentence)
    await page.reload()
    await untilSaved(page)
    await expect.poll(() => source(path), { timeout: patience }).toEqual([`Begun.${sentence}`, ''])
    expect(await cellAt(page, 'a').locator('.prose').textContent()).toContain(sentence.trim())

    const second = await context.newPage()
    await second.goto(page.url())
    await untilSaved(second)
    await edit(second, 'b')
    await second.keyboard.type('From the second tab.')
    await cellAt(page, 'b').locator('.prose', { hasText: 'From the second tab.' }).waitFor({ timeout: patience })
    await leave(second)
    await edit(page, 'b')
    await page.keyboard.press('Control+End')
    await page.keyboard.type(' And the first.')
    await page.goBack()
    await page.getByRole('heading', { name: 'Notebooks' }).waitFor()
    await page.goForward()
    await untilSaved(page)
    await cellAt(page, 'b').locator('.prose', { hasText: 'And the first.' }).waitFor({ timeout: patience })
    await expect
      .poll(() => source(path), { timeout: patience })
      .toEqual([`Begun.${sentence}`, 'From the second tab. And the first.'])
    expect(complaints).toEqual([])
  })

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
  })
})
