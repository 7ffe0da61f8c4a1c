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

/** Ids of the cells in page order. */
export const cellIds = (page: Page) =>
  page.locator('.cell').evaluateAll((all) => all.map((cell) => (cell as HTMLElement).dataset.cell ?? ''))

/** Numbers in the margin, in page order. */
export const cellNumbers = (page: Page) =>
  page.locator('.cell > .number').evaluateAll((all) => all.map((number) => number.textContent ?? ''))

/** Presses a key on the cell itself, not in its editor. */
export async function pressOn(page: Page, id: string, key: string): Promise<void> {
  await cellAt(page, id).focus()
  await page.keyboard.press(key)
}

/** Adds a cell of the same kind below the named one, writes into it and leaves it; answers its id. */
export async function addBelow(page: Page, id: string, source: string): Promise<string> {
  const before = await cellIds(page)
  await pressOn(page, id, 'Insert')
  await page.waitForFunction(() => document.activeElement?.closest('.surface') != null, undefined, {
    timeout: patience,
  })
  await page.keyboard.insertText(source)
  await leave(page)
  const added = (await cellIds(page)).find((each) => !before.includes(each))
  if (added === undefined) throw new Error(`no cell was added below "${id}"`)
  return added
}

/** Opens a cell's editor with the caret at the start of a line. */
export async function editAtLine(page: Page, id: string, line: number): Promise<void> {
  await edit(page, id)
  await page.keyboard.press('Control+Home')
  for (let down = 1; down < line; down += 1) await page.keyboard.press('ArrowDown')
}

/** Splits a cell before a line; the editor of one of the halves is open afterwards. */
export async function splitAtLine(page: Page, id: string, line: number): Promise<void> {
  const count = await page.locator('.cell').count()
  await editAtLine(page, id, line)
  await page.keyboard.press('Control+Alt+s')
  await page.locator('.cell').nth(count).waitFor()
}

/** Presses one of the buttons that a cell shows when asked for more. */
export async function more(page: Page, id: string, action: string): Promise<void> {
  await cellAt(page, id).focus()
  await cellAt(page, id).locator('[data-action="more"]').click()
  await cellAt(page, id).locator(`[data-action="${action}"]`).click()
}

/** Drags a cell by its grip to the upper edge of another one; `drop` ends the drag there. */
export async function drag(page: Page, id: string, before: string, drop: () => Promise<void>): Promise<void> {
  await cellAt(page, id).scrollIntoViewIfNeeded()
  const grip = await cellAt(page, id).locator('.grip').boundingBox()
  const goal = await cellAt(page, before).boundingBox()
  if (grip === null || goal === null) throw new Error('there is nothing to drag')
  await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2)
  await page.mouse.down()
  await page.mouse.move(grip.x + grip.width / 2, goal.y + 2, { steps: 4 })
  await drop()
  await page.mouse.up()
}

/** Hears from now on what the page says aloud: the next sentence takes the place of one before a test could look. */
export async function listen(page: Page): Promise<void> {
  await page.evaluate(() => {
    const said: string[] = []
    Object.assign(window, { said })
    const region = document.querySelector('.announcements')
    if (region === null) throw new Error('the page says nothing aloud')
    new MutationObserver(() => said.push(region.textContent ?? '')).observe(region, { childList: true, subtree: true })
  })
}

/** Waits until the page has said these words since `listen` or the last call; what was said up to them is forgotten. */
export async function untilSaid(page: Page, words: string): Promise<void> {
  await page.waitForFunction(
    (wanted) => {
      const said = (window as unknown as { said: string[] }).said
      const index = said.findIndex((sentence) => sentence.includes(wanted))
      if (index >= 0) said.splice(0, index + 1)
      return index >= 0
    },
    words,
    { timeout: patience },
  )
}
