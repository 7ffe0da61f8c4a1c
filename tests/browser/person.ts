/** Someone who writes, moves, splits, joins, removes and undoes cells as chance has it, and remembers which words they wrote. */
import type { BrowserContext, Page } from 'playwright'
import type { Chance } from '../lab/index.js'
import { cellIds, leave, listen, untilSaved } from './sheet-steps.js'

/** A person gives up a step that the page does not answer [ms]: the cell may have gone meanwhile. */
const patience = 10_000

export class Person {
  readonly page: Page
  readonly #context: BrowserContext
  readonly #name: string
  readonly #chance: Chance
  readonly #written: string[] = []
  /** Own words that went when this person undid a step. */
  readonly #takenBack = new Set<string>()
  /** Cells that this person removed, and did not join or divide. */
  readonly removed = new Set<string>()
  #tries = 0
  #offline = 0

  constructor(page: Page, context: BrowserContext, name: string, chance: Chance) {
    this.page = page
    this.#context = context
    this.#name = name
    this.#chance = chance
  }

  /** Words that this person wrote and never took back. */
  get kept(): string[] {
    return this.#written.filter((word) => !this.#takenBack.has(word))
  }

  /** Share of the words begun that reached the page. */
  get success(): number {
    return this.#written.length / Math.max(1, this.#tries)
  }

  async begin(): Promise<void> {
    await untilSaved(this.page)
    await listen(this.page)
  }

  async act(): Promise<void> {
    if (this.#offline > 0) await this.#stayOffline()
    const steps = [
      ...Array.from({ length: 6 }, () => () => this.#write()),
      () => this.#again('Control+z'),
      () => this.#again('Control+z'),
      () => this.#again('Control+Shift+z'),
      () => this.#press(this.#chance.pick(['Alt+ArrowUp', 'Alt+ArrowDown'])),
      () => this.#press('Control+Alt+j'),
      () => this.#press('Insert'),
      () => this.#split(),
      () => this.#remove(),
      () => this.#goOffline(),
    ]
    await this.#chance.pick(steps)()
  }

  /** Back to the network, out of every editor, everything saved. */
  async end(): Promise<void> {
    this.#offline = 0
    await this.#context.setOffline(false)
    await leave(this.page)
    await untilSaved(this.page)
  }

  /** Undoes until nothing is left to undo. */
  async undoAll(): Promise<void> {
    for (let step = 0; step < 200; step += 1) {
      await this.#again('Control+z')
      if ((await this.#said()).at(-1) === 'There is nothing to undo.') return
    }
    throw new Error('there is no end of undoing')
  }

  async #write(): Promise<void> {
    const at = await this.#open()
    if (at === null) return
    this.#tries += 1
    const word = `${this.#name}${this.#tries}z`
    const comment = at.kind === 'sizing' ? '// ' : ''
    await this.#goToLine()
    if (this.#chance.next() < 0.5) {
      await this.page.keyboard.press('Home')
      await this.page.keyboard.insertText(`${comment}${word}\n`)
    } else {
      await this.page.keyboard.press('End')
      await this.page.keyboard.type(` ${comment}${word}`)
    }
    // Written is what the person has seen: where the cell goes at this moment, the rest of a word goes nowhere, and that shows.
    const seen = this.page.waitForFunction(wordsShown, `^${word}$`, { timeout: 1000 })
    if (
      await seen.then(
        () => true,
        () => false,
      )
    )
      this.#written.push(word)
    if (this.#chance.next() < 0.6) await leave(this.page)
  }

  async #split(): Promise<void> {
    if ((await this.#open()) === null) return
    await this.#goToLine()
    await this.page.keyboard.press('Home')
    await this.page.keyboard.press('Control+Alt+s')
  }

  async #remove(): Promise<void> {
    if ((await cellIds(this.page)).length < 2) return
    const id = await this.#press('Delete')
    if (id !== null) this.removed.add(id)
  }

  /** Undo or redo; own words that go with it are taken back. */
  async #again(keys: string): Promise<void> {
    const before = await this.page.evaluate(wordsShown, '.')
    const cells = await cellIds(this.page)
    await this.page.evaluate(() => ((window as unknown as { said: string[] }).said.length = 0))
    await this.page.keyboard.press(keys)
    await this.page.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
    )
    const after = await this.page.evaluate(wordsShown, '.')
    for (const word of before ?? []) if (!after?.includes(word)) this.#takenBack.add(word)
    if (!(await this.#said()).some((sentence) => sentence.includes('Made again: removing'))) return
    const left = await cellIds(this.page)
    for (const id of cells) if (!left.includes(id)) this.removed.add(id)
  }

  readonly #said = () => this.page.evaluate(() => [...(window as unknown as { said: string[] }).said])

  /** Presses a key on some cell; answers which, `null` when it had gone. */
  async #press(keys: string): Promise<string | null> {
    await leave(this.page)
    const id = this.#chance.pick(await cellIds(this.page))
    if (!(await this.#focus(id))) return null
    await this.page.keyboard.press(keys)
    return id
  }

  /** Opens some cell for writing; `null` when it went meanwhile. */
  async #open(): Promise<{ readonly kind: string } | null> {
    const id = this.#chance.pick(await cellIds(this.page))
    if (!(await this.#focus(id))) return null
    await this.page.keyboard.press('Enter')
    const kind = await this.page
      .waitForFunction(
        (cell) => {
          const section = document.querySelector<HTMLElement>(`[data-cell="${cell}"]`)
          return section?.querySelector('.surface')?.contains(document.activeElement) === true && section.dataset.kind
        },
        id,
        { timeout: patience },
      )
      .then((answer) => answer.jsonValue())
      .catch(() => null)
    return typeof kind === 'string' ? { kind } : null
  }

  #focus(id: string): Promise<boolean> {
    return this.page.evaluate((cell) => {
      const section = document.querySelector<HTMLElement>(`[data-cell="${cell}"]`)
      section?.focus()
      return section !== null
    }, id)
  }

  async #goToLine(): Promise<void> {
    await this.page.keyboard.press('Control+Home')
    for (let down = this.#chance.whole(4); down > 0; down -= 1) await this.page.keyboard.press('ArrowDown')
  }

  async #goOffline(): Promise<void> {
    this.#offline = 1 + this.#chance.whole(4)
    await this.#context.setOffline(true)
  }

  async #stayOffline(): Promise<void> {
    this.#offline -= 1
    if (this.#offline === 0) await this.#context.setOffline(false)
  }
}

/** In the page: the words shown or being edited that read so, `null` when there is none. Runs in the browser, so it stands alone. */
function wordsShown(pattern: string): string[] | null {
  const texts = [...document.querySelectorAll<HTMLElement>('.calculation')].map(
    (cell) => `${cell.textContent} ${[...cell.querySelectorAll('textarea')].map((area) => area.value).join(' ')}`,
  )
  const words = texts.flatMap((text) => [...text.matchAll(/(?:ada|ben)\d+z/g)].map(String))
  const found = words.filter((word) => new RegExp(pattern).test(word))
  return found.length === 0 ? null : found
}
