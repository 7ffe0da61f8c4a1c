/** Trial values: tried by slider, field and link, seen by nobody else, adopted into the source or forgotten. */
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { serious } from './axe.js'
import { type Bench, openBench } from './bench.js'
import { listen, pressOn, shownValue, untilSaid, untilSaved, untilState, untilValue } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterAll(() => bench.close())

const cells = {
  needs: [
    '// What it rests on',
    "const payload = assumption('payload', 400 * u.kg, { unit: 'kg', range: [300 * u.kg, 500 * u.kg] }) // as agreed",
    "const packEnergy = assumption('packEnergy', 235 * u.Wh / u.kg, { unit: 'Wh/kg' })",
  ].join('\n'),
  sums: [
    '// Sums',
    'const gross = 1200 * u.kg + payload / 0.75',
    'const pack = 77 * u.kWh / packEnergy',
    "requirement('Heaviest', { actual: gross, atMost: 1800 * u.kg, unit: 'kg' })",
    "const masses = figure.bars({ caption: 'Masses', names: ['gross', 'pack'], values: [gross, pack], unit: 'kg' })",
  ].join('\n'),
  alone: "const extra = assumption('extra', 3)\nconst apart = extra * 7 * u.m",
}

const payload = (page: Page) => page.getByRole('slider', { name: 'Trial value of payload in kg' })
const field = (page: Page, name: string) =>
  page.getByRole('textbox', { name: new RegExp(`^Trial value of ${name}\\b`) })
const strip = (page: Page) => page.locator('.trial-strip')
const press = (page: Page, name: string) => strip(page).getByRole('button', { name, exact: true }).click()
const plain = (text: string | null) => (text ?? '').replace(/[\u00a0\u202f]/g, ' ')
const fingerprint = (page: Page) => page.locator('[data-field="fingerprint"] dd').textContent()
const gross = (page: Page) => shownValue(page, 'sums', 'gross').then(plain)
const written = async (path: string) => (await bench.stored(path)).cells[0]?.source.join('\n')

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text)
  await page.keyboard.press('Enter')
}

/** Writes a value into the document, in the register. */
async function write(page: Page, name: string, text: string): Promise<void> {
  await page
    .locator('.register')
    .getByRole('button', { name: new RegExp(`^value of ${name}:`) })
    .click()
  await page.keyboard.press('Control+a')
  await page.keyboard.insertText(text)
  await page.keyboard.press('Enter')
}

const edited = (mass: string, energy: string) => cells.needs.replace('400', mass).replace('235', energy)

describe('trial values in a browser', () => {
  it('are tried, marked, kept, shared by link, adopted and forgotten; nobody else sees them', async () => {
    const path = await bench.notebook('Trial', cells)
    const { page, context, complaints } = await bench.visit(`${path}#register`)
    await context.grantPermissions(['clipboard-read', 'clipboard-write'])
    await untilSaved(page)
    await untilState(page, 'sums', 'current')
    await bench.untilStored(path, 'sums')
    const other = await bench.visit(`${path}#register`)
    await untilState(other.page, 'sums', 'current')
    await listen(page)

    // By keyboard: a hundredth of the range, ten times that with Shift. Said once, marked, in words.
    expect(await gross(page)).toBe('1 733 kg')
    await payload(page).press('ArrowRight')
    await untilValue(page, 'sums', 'gross', /^1.736/)
    await untilSaid(page, 'The sheet shows trial values, not the document: payload 402')
    await page.keyboard.press('Shift+ArrowUp')
    await untilValue(page, 'sums', 'gross', /^1.763/)
    expect(await payload(page).getAttribute('aria-valuetext').then(plain)).toBe('422 kg, trial')
    expect(plain(await strip(page).locator('p').textContent())).toBe('Trial: payload 422 kg instead of 400 kg')
    expect(
      await page
        .locator('.cells .value[data-trial]')
        .evaluateAll((all) => all.map((one) => one.getAttribute('data-name'))),
    ).toEqual(['payload', 'gross'])
    expect(plain(await page.locator('[data-name="gross"] .tried').textContent())).toBe('trial; document 1 733 kg')
    expect(await page.locator('[data-cell="sums"] .figures > .tried').count()).toBe(1)
    expect(await page.locator('[data-cell="sums"] .requirement[data-trial]').count()).toBe(1)
    expect(await page.locator('[data-cell="alone"] [data-trial]').count()).toBe(0)
    expect(await page.locator('[data-cell="sums"] .state').textContent()).toContain('current, with trial values')
    expect(await fingerprint(page)).toBe('none: trial values are shown')
    expect(await page.title()).toContain('trial values')

    // By pointer: values follow while it is held, and the thumb stays under it.
    const box = await payload(page).boundingBox()
    if (box === null) throw new Error('there is no slider')
    const middle = box.y + box.height / 2
    await page.mouse.move(box.x + box.width * 0.61, middle)
    await page.mouse.down()
    for (let step = 1; step <= 12; step += 1) await page.mouse.move(box.x + box.width * (0.61 + 0.025 * step), middle)
    await untilValue(page, 'sums', 'gross', /^1.8/)
    await page.mouse.move(box.x + box.width + 40, middle)
    await untilValue(page, 'sums', 'gross', /^1.867/)
    await page.mouse.up()
    expect(plain(await page.locator('[data-cell="sums"] .requirement').textContent())).toContain('not met trial')

    // By typing: the unit shown or another one; out of the range with a word; refused with a sentence.
    await type(page, 'packEnergy', '0.25 kWh/kg')
    await untilValue(page, 'sums', 'pack', /^308 kg/)
    await type(page, 'payload', '520')
    await untilValue(page, 'sums', 'gross', /^1.893/)
    expect(plain(await page.locator('.trial-words').first().textContent())).toBe(
      'trial; document 400 kg; outside its range 300 kg to 500 kg',
    )
    await type(page, 'payload', '5 km')
    await page.locator('.trial-control .in-place-refusal', { hasText: '"5 km" is in m, not in kg.' }).waitFor()
    await page.keyboard.press('Escape')
    expect(await field(page, 'payload').inputValue()).toBe('520')
    expect(await page.locator('#drawer').isVisible()).toBe(true)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await serious(page, '#drawer', '.sheet'), colorScheme).toEqual([])
    }
    await page.emulateMedia({ colorScheme: 'light', media: 'print' })
    expect(plain(await page.locator('.trial-caution').textContent())).toBe(
      'This sheet shows trial values, not the document: payload 520 kg instead of 400 kg; pack energy 250 Wh/kg instead of 235 Wh/kg.',
    )
    expect(await page.locator('.trial-caution').isVisible()).toBe(true)
    expect(await strip(page).isVisible()).toBe(false)
    await page.emulateMedia({ media: 'screen' })

    // Nobody else has seen any of it; the notebook and its stored results are as they were.
    expect(await gross(other.page)).toBe('1 733 kg')
    expect(await other.page.locator('[data-trial], .trial-strip:not([hidden])').count()).toBe(0)
    expect(await written(path)).toBe(cells.needs)

    // A link opens the same trial for somebody else; it is not in the address afterwards.
    await press(page, 'Copy link')
    await untilSaid(page, 'The link to this trial is copied.')
    const link = await page.evaluate(() => navigator.clipboard.readText())
    expect(link).toBe(`${new URL(path, bench.address).href}#trial=payload:520,packEnergy:900000`)
    const guest = await bench.visit(link)
    await untilValue(guest.page, 'sums', 'gross', /^1.893/)
    expect(plain(await strip(guest.page).textContent())).toContain('payload 520 kg instead of 400 kg')
    expect(guest.page.url()).toBe(new URL(path, bench.address).href)
    await press(guest.page, 'Discard')
    await untilValue(guest.page, 'sums', 'gross', /^1.733/)

    // What a link may not do is answered by a sentence and not tried.
    const notice = guest.page.locator('.notice')
    for (const [fragment, words] of [
      ['trial=payload:420,nobody:1', 'names what is no assumption here: "nobody"'],
      ['trial=payload:much', 'gives no number for "payload"'],
      ['trial=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E:1', 'a name that no assumption can have'],
      ['trial=%', 'a name and a value parted by a colon are wanted'],
    ] as const) {
      await guest.page.evaluate((hash) => location.assign(`#${hash}`), fragment)
      await notice.filter({ hasText: words }).waitFor()
      await guest.page.waitForURL((url) => url.hash === '')
    }
    expect(plain(await strip(guest.page).locator('p').textContent())).toBe('Trial: payload 420 kg instead of 400 kg')
    expect(await guest.page.locator('img').count()).toBe(0)
    await guest.context.close()

    // A reload keeps the trial. An edit while it is in force is computed for both.
    await page.reload()
    await untilValue(page, 'sums', 'gross', /^1.893/)
    await untilSaved(page)
    await write(page, 'packEnergy', '230')
    await untilValue(other.page, 'sums', 'pack', /^334.8/)
    await page.locator('[data-name="pack"] .tried', { hasText: /document 334.8/ }).waitFor()
    expect(await shownValue(page, 'sums', 'pack').then(plain)).toMatch(/^308/)

    // Discarding one shows the document for it at once; the register has it in words.
    await page.getByRole('button', { name: 'Discard the trial value of packEnergy' }).click()
    await untilValue(page, 'sums', 'pack', /^334.8/)
    expect(await page.locator('[data-name="pack"][data-trial]').count()).toBe(0)

    // Somebody else changes the assumption meanwhile: adopting asks once more, then writes with the formatting kept.
    await untilSaved(other.page)
    await write(other.page, 'payload', '410')
    await page.locator('.register tr[data-trial]', { hasText: 'document 410' }).waitFor()
    const adopt = page.getByRole('button', { name: 'Adopt the trial value of payload' })
    await adopt.click()
    await page.locator('.trial-control .in-place-refusal', { hasText: '"payload" was changed meanwhile' }).waitFor()
    await adopt.click()
    await strip(page).waitFor({ state: 'hidden' })
    await untilValue(page, 'sums', 'gross', /^1.893/)
    await untilValue(other.page, 'sums', 'gross', /^1.893/)
    await untilSaved(page)
    expect(await written(path)).toBe(edited('520', '230'))
    expect(await fingerprint(page)).not.toContain('trial')

    // Undo takes it back, as one step.
    await page.locator('.bar').getByRole('button', { name: 'Undo' }).click()
    await untilValue(page, 'sums', 'gross', /^1.747/)
    await untilSaved(page)
    expect(await written(path)).toBe(edited('410', '230'))

    // All at once, from the strip.
    await type(page, 'payload', '440')
    await type(page, 'packEnergy', '240')
    await untilValue(page, 'sums', 'gross', /^1.787/)
    await press(page, 'Adopt')
    await strip(page).waitFor({ state: 'hidden' })
    await untilSaved(page)
    expect(await written(path)).toBe(edited('440', '240'))
    await page.locator('.bar').getByRole('button', { name: 'Undo' }).click()
    await untilValue(page, 'sums', 'gross', /^1.747/)

    // An assumption that goes away takes its trial with it, with a sentence.
    await type(page, 'extra', '4')
    await untilValue(page, 'alone', 'apart', /^28/)
    await pressOn(other.page, 'alone', 'Delete')
    await page.locator('.notice', { hasText: 'no such assumption any more: extra' }).waitFor()
    await strip(page).waitFor({ state: 'hidden' })
    expect([...complaints, ...other.complaints, ...guest.complaints]).toEqual([])
  }, 300_000)
})
