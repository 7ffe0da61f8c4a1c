/** Revisions: issued, signed by two people, changed, issued again and compared, with what caused the change of a number. */
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { serious } from './axe.js'
import { type Bench, openBench } from './bench.js'
import { untilSaved, untilState, untilValue } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterAll(() => bench.close())

const hostile = `<img src=x onerror="document.title='taken'">\u202e${'long'.repeat(20)}`
const cells = {
  needs: [
    "const payload = assumption('payload', 400 * u.kg, { unit: 'kg' })",
    "const share = assumption('share', 0.25)",
  ].join('\n'),
  sums: "const gross = result('gross', 1200 * u.kg + payload / (1 - share), { unit: 'kg' })",
}

const plain = (text: string | null) => (text ?? '').replace(/[\u00a0\u202f]/g, ' ')
const item = (page: Page, name: string) => page.locator('.revision', { has: page.locator(`#revision-${name}`) })

async function sign(page: Page, revision: string, role: string, name: string): Promise<void> {
  const form = item(page, revision).locator('.sign-fold')
  if ((await form.getAttribute('open')) === null) await form.getByText(`Sign as ${role}`, { exact: true }).click()
  await form.getByLabel('Name', { exact: true }).fill(name)
  await form.getByRole('button', { name: new RegExp(`^Sign ${revision},.*as ${role}$`) }).click()
}

async function changeValue(page: Page, name: string, text: string): Promise<void> {
  await page.getByRole('tab', { name: 'Register' }).click()
  await page
    .locator('.register')
    .getByRole('button', { name: new RegExp(`^value of ${name}:`, 'i') })
    .click()
  await page.keyboard.press('Control+a')
  await page.keyboard.insertText(text)
  await page.keyboard.press('Enter')
}

describe('revisions in a browser', { timeout: 240_000 }, () => {
  it('are issued, signed by different people, told apart from later text, compared, and explained by what changed', async () => {
    const path = await bench.notebook('Revised', cells)
    const { page, complaints } = await bench.visit(`${path}#revisions`)
    await untilSaved(page)
    await untilState(page, 'sums', 'current')
    await bench.untilStored(path, 'sums')
    await page.getByLabel('What it is for, in one line').fill(hostile)
    await page.getByRole('button', { name: 'Issue revision A' }).click()
    await item(page, 'A').waitFor()
    expect(await item(page, 'A').textContent()).toContain(hostile)
    await page.locator('[data-field="revision"] .record', { hasText: 'as issued' }).waitFor()
    await sign(page, 'A', 'prepared', hostile)
    await item(page, 'A').getByText('Sign as checked').waitFor()

    // Whoever prepared does not check: somebody else does, in another browser, and both see it.
    await sign(page, 'A', 'checked', hostile)
    await item(page, 'A').locator('.field-refusal', { hasText: 'somebody else' }).waitFor()
    const other = await bench.visit(`${path}#revisions`)
    await item(other.page, 'A').waitFor()
    await sign(other.page, 'A', 'checked', 'B. Checker')
    await page.locator('[data-field="checked"] .record', { hasText: 'B. Checker' }).waitFor()
    expect(await serious(page, '#drawer')).toEqual([])

    await changeValue(page, 'payload', '430 kg')
    await untilValue(page, 'sums', 'gross', /^1.773/)
    await page.locator('[data-field="revision"] .record', { hasText: 'changed since' }).waitFor()
    await changeValue(page, 'share', '0.2')
    await untilValue(page, 'sums', 'gross', /^1.738/)
    await untilSaved(page)
    await page.getByRole('tab', { name: 'Revisions' }).click()
    await page.getByRole('button', { name: 'Issue revision B' }).click()
    await item(page, 'B').waitFor()
    await page.reload()
    await item(page, 'B').waitFor()
    expect(await item(page, 'A').textContent()).toContain('B. Checker')

    await item(page, 'B').getByRole('link', { name: 'Compare revisions A and B' }).click()
    await page.waitForURL('**/compare?from=A&to=B')
    const compared = plain(await page.locator('main').textContent())
    for (const each of ['payload', '400 kg', '430 kg', '0.25', '0.2']) expect(compared, each).toContain(each)
    await page.getByRole('button', { name: 'Show the waterfall' }).click()
    await page.locator('.waterfall-words', { hasText: 'Done.' }).waitFor({ timeout: 60_000 })
    // By hand: 400/0.75 to 430/0.75 is +40 kg, 430/0.75 to 430/0.8 is -35.8 kg; the other way about -33.3 kg and +37.5 kg.
    const waterfall = plain(await page.locator('.waterfall-answer').textContent())
    for (const each of ['40', '35.8', '33.3', '37.5']) expect(waterfall, each).toContain(each)
    expect(await page.title()).not.toBe('taken')
    expect(await serious(page, 'main')).toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    await page.setViewportSize({ width: 390, height: 850 })
    expect(await serious(page, 'main')).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    // The signature that was refused; a browser notes every refusal.
    expect(complaints).toEqual([expect.stringContaining('409')])
  })
})
