/** Steps that journeys on a sheet share, in the words of the page. */
import type { Page } from 'playwright'

const patience = 30_000

/** Waits until the live document has answered, so that editing is possible. */
export async function untilSaved(page: Page): Promise<void> {
  await page.locator('.bar .saving', { hasText: 'all edits saved' }).waitFor({ timeout: patience })
}

export const cellAt = (page: Page, id: string) => page.locator(`[data-cell="${id}"]`)

/** Waits until a cell is in a state. */
export async function untilState(page: Page, id: string, state: string): Promise<void> {
  await page.locator(`[data-cell="${id}"][data-state="${state}"]`).waitFor({ timeout: patience })
}

/** Opens the cell's editor from the keyboard; resolves when it has the focus. */
export async function edit(page: Page, id: string): Promise<void> {
  await cellAt(page, id).focus()
  await page.keyboard.press('Enter')
  await page.waitForFunction(
    (cell) => document.querySelector(`[data-cell="${cell}"] .surface`)?.contains(document.activeElement) === true,
    id,
    { timeout: patience },
  )
}

/** Leaves the editor. Escape first closes a list of proposals where one has opened, so it may take two. */
export async function leave(page: Page): Promise<void> {
  for (let press = 0; press < 3; press += 1) {
    await page.keyboard.press('Escape')
    const inside = await page.evaluate(() => document.activeElement?.closest('.surface') != null)
    if (!inside) return
  }
  throw new Error('the Escape key does not leave the editor')
}

/** Replaces the whole text of a cell by typing over it, and leaves the editor. */
export async function rewrite(page: Page, id: string, source: string): Promise<void> {
  await edit(page, id)
  await page.keyboard.press('Control+a')
  await page.keyboard.insertText(source)
  await page.keyboard.press('Escape')
}

/** Number and unit of a named value, `1 637 kg`; null while it is not shown. */
export async function shownValue(page: Page, id: string, name: string): Promise<string | null> {
  return page.evaluate(
    ([cell, value]) => {
      const row = document.querySelector(`[data-cell="${cell}"] .value[data-name="${value}"] dd`)
      return row === null ? null : (row.textContent ?? '').replace(/\s+/g, ' ').trim()
    },
    [id, name],
  )
}

/** Waits until a named value reads so. */
export async function untilValue(page: Page, id: string, name: string, text: string | RegExp): Promise<void> {
  const row = page.locator(`[data-cell="${id}"] .value[data-name="${name}"] dd`)
  await row.filter({ hasText: text }).waitFor({ state: 'attached', timeout: patience })
}
