/** The register in the drawer: what the document rests on, sorted, filtered and changed in place. */
import type { AssumptionChange } from '../../kernel/cells/edit/index.js'
import type { CellId } from '../../shared/contracts/index.js'
import {
  type AssumptionRow,
  arrangeRows,
  assumptionRows,
  distributionText,
  type EditableField,
  editableFields,
  element,
  fieldKey,
  nextOrder,
  pageOrder,
  type Readers,
  type RegisterColumn,
  rangeText,
  readDistribution,
  readRange,
  readUnit,
  readValue,
  registerColumns,
  registerCount,
  registerTeaching,
  renderRegister,
  rowKey,
  type SheetView,
  valueText,
  withoutSource,
} from '../../shared/rendering/page.js'
import type { DrawerView } from '../drawer/drawer.js'
import { TrialControl } from '../trial/trial-control.js'
import { InPlace } from './in-place.js'
import { swapTable } from './swap-table.js'

/** Values that are tried, and what can be done with them. */
export interface RegisterTrials {
  /** On trial, SI. */
  tried(name: string): number | undefined
  set(name: string, value: number): void
  discard(name: string): void
  /** Answers why it cannot be written, `null` when it was. */
  adopt(name: string): Promise<string | null>
  /** A hand is near the sliders. */
  prepare(): void
}

export interface RegisterSources {
  view(): SheetView
  readers: Readers
  /** Answers why the change cannot be made, `null` when it was. */
  write(cell: CellId, name: string, change: AssumptionChange): Promise<string | null>
  readonly trials: RegisterTrials
}

export class RegisterView implements DrawerView {
  readonly name = 'register'
  readonly title = 'Register'
  readonly element = element(document, 'div', { class: 'register' })
  readonly #sources: RegisterSources
  readonly #words = element(document, 'input', {
    type: 'search',
    'aria-label': 'Show assumptions whose name, source, note, owner or unit holds these words',
    placeholder: 'Name, source, note or owner',
    autocomplete: 'off',
  }) as HTMLInputElement
  readonly #unsourced = element(document, 'input', { type: 'checkbox' }) as HTMLInputElement
  readonly #unsourcedWords = element(document, 'span')
  readonly #controls = element(
    document,
    'div',
    { class: 'register-controls' },
    this.#words,
    element(document, 'label', {}, this.#unsourced, this.#unsourcedWords),
  )
  readonly #count = element(document, 'p', { class: 'register-count', role: 'status' })
  readonly #table = element(document, 'div', { class: 'record-table' })
  readonly #teaching = element(document, 'p', {}, registerTeaching)
  /** Fields that are being written in, by what they change; also while their row is not shown. */
  readonly #fields = new Map<string, InPlace>()
  /** Sliders and fields of what can be tried, by row. */
  readonly #trials = new Map<string, TrialControl>()
  #rows: readonly AssumptionRow[] = []
  #order = pageOrder
  /** The table as last drawn, without fields: nothing is drawn anew while it stays the same. */
  #drawn: Node | undefined

  constructor(sources: RegisterSources) {
    this.#sources = sources
    this.element.append(this.#teaching, this.#controls, this.#count, this.#table)
    this.#words.addEventListener('input', () => this.update())
    this.#words.addEventListener('keydown', (event) => this.#forgetWords(event))
    this.#unsourced.addEventListener('change', () => this.update())
    this.#table.addEventListener('click', (event) => this.#press(event))
    for (const near of ['pointerenter', 'focusin'])
      this.#table.addEventListener(near, () => sources.trials.prepare(), { once: true })
  }

  show(): void {
    this.update()
  }

  update(): void {
    this.#rows = assumptionRows(this.#sources.view(), this.#sources.readers)
    this.#showTrials()
    this.#markTrials()
    // A table drawn anew would take the slider from under the pointer.
    if ([...this.#trials.values()].some(({ held }) => held)) return
    const filter = { words: this.#words.value, withoutSource: this.#unsourced.checked }
    const shown = arrangeRows(this.#rows, this.#order, filter)
    const empty = this.#rows.length === 0
    this.#teaching.hidden = !empty
    for (const part of [this.#controls, this.#count, this.#table]) part.hidden = empty
    setText(this.#unsourcedWords, `without a source (${withoutSource(this.#rows)})`)
    setText(this.#count, registerCount(this.#rows, shown.length))
    this.#draw(renderRegister(document, shown, this.#order))
    this.#markTrials()
  }

  #draw(table: HTMLElement): void {
    if (this.#drawn?.isEqualNode(table) === true) return
    this.#drawn = table.cloneNode(true)
    const swap = () => {
      for (const [key, field] of this.#fields) buttonOf(table, key)?.replaceWith(field.element)
      for (const place of placesOf(table)) {
        const control = this.#trials.get(place.dataset.trialOf ?? '')
        if (control !== undefined) place.append(control.element)
      }
      swapTable(this.#table, table)
    }
    const focused = [...this.#fields.values(), ...this.#trials.values()].find((part) => part.focused)
    if (focused === undefined) swap()
    else focused.keepThrough(swap)
  }

  /** A value that is no number cannot be moved. */
  #showTrials(): void {
    const { trials } = this.#sources
    const gone = new Set(this.#trials.keys())
    for (const row of this.#rows) {
      if (!Number.isFinite(Number(row.record.value))) continue
      const key = rowKey(row)
      gone.delete(key)
      const control = this.#trials.get(key) ?? this.#makeTrial(row)
      this.#trials.set(key, control)
      control.update(row, trials.tried(row.name))
    }
    for (const key of gone) this.#trials.delete(key)
  }

  #makeTrial(row: AssumptionRow): TrialControl {
    const { trials } = this.#sources
    const { name } = row
    // What makes the sliders appear is drawn once more with them.
    this.#drawn = undefined
    return new TrialControl(row, {
      onTry: (value) => trials.set(name, value),
      onDiscard: () => trials.discard(name),
      onAdopt: () => trials.adopt(name),
      onRelease: () => this.update(),
    })
  }

  /** The whole row is hatched, in words beside the slider. */
  #markTrials(): void {
    for (const place of placesOf(this.#table)) {
      const control = this.#trials.get(place.dataset.trialOf ?? '')
      place.closest('tr')?.toggleAttribute('data-trial', control?.tried === true)
    }
  }

  #press(event: Event): void {
    const button = event.target instanceof Element ? event.target.closest<HTMLElement>('button') : null
    const column = registerColumns.find((each) => each === button?.dataset.sort)
    if (column !== undefined) this.#sort(column)
    const { field: key } = button?.dataset ?? {}
    for (const row of this.#rows)
      for (const field of editableFields) if (fieldKey(row, field) === key) this.#open(row, field)
  }

  #sort(column: RegisterColumn): void {
    this.#order = nextOrder(this.#order, column)
    this.update()
  }

  #open(row: AssumptionRow, of: EditableField): void {
    const key = fieldKey(row, of)
    const unit = of === 'value' || of === 'range' || of === 'distribution' ? this.#unitWords(row) : ''
    const field = new InPlace(`${of} of ${row.name}${unit}`, textOf(row, of), {
      write: (text) => this.#write(key, row, of, text),
      onEnd: (back) => this.#end(key, back),
    })
    this.#fields.set(key, field)
    buttonOf(this.#table, key)?.replaceWith(field.element)
    field.focus()
  }

  #unitWords({ record }: AssumptionRow): string {
    return record.unit === undefined ? '' : ` in ${record.unit}`
  }

  async #write(key: string, opened: AssumptionRow, of: EditableField, text: string): Promise<string | null> {
    // The row as it is now: its cell may have been computed anew meanwhile.
    const row = this.#rows.find((each) => fieldKey(each, of) === key) ?? opened
    const reading = changeOf(row, of, text)
    return reading.ok ? this.#sources.write(row.cell, row.name, reading.change) : reading.message
  }

  #end(key: string, back: boolean): void {
    if (!this.#fields.delete(key)) return
    this.#drawn = undefined
    this.update()
    if (back) buttonOf(this.#table, key)?.focus({ preventScroll: true })
  }

  /** The first Escape forgets the words, the next one closes the drawer. */
  #forgetWords(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || this.#words.value === '') return
    event.preventDefault()
    event.stopPropagation()
    this.#words.value = ''
    this.update()
  }
}

/** What stands in a field when it is opened. */
function textOf(row: AssumptionRow, of: EditableField): string {
  switch (of) {
    case 'value':
      return valueText(row)
    case 'range':
      return rangeText(row)
    case 'distribution':
      return distributionText(row)
    default:
      return (row.stated ?? row.record)[of] ?? ''
  }
}

type ChangeReading =
  | { readonly ok: true; readonly change: AssumptionChange }
  | { readonly ok: false; readonly message: string }

function changeOf(row: AssumptionRow, of: EditableField, text: string): ChangeReading {
  if (of === 'value') {
    const reading = readValue(text, row)
    return reading.ok ? { ok: true, change: { value: reading.si } } : reading
  }
  if (of === 'source' || of === 'note' || of === 'owner') return { ok: true, change: { [of]: text.trim() } }
  const reading = { range: readRange, distribution: readDistribution, unit: readUnit }[of](text, row)
  return reading.ok ? { ok: true, change: { [of]: reading.stated } } : reading
}

function placesOf(table: Element): readonly HTMLElement[] {
  return [...table.querySelectorAll<HTMLElement>('[data-trial-of]')]
}

function buttonOf(table: Element, key: string): HTMLElement | undefined {
  return [...table.querySelectorAll<HTMLElement>('[data-field]')].find(({ dataset }) => dataset.field === key)
}

/** Said aloud only when it changes. */
function setText(target: Element, text: string): void {
  if (target.textContent !== text) target.textContent = text
}
