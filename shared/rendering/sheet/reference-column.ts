/** The Reference column: what the numbers rest on. */
import type { AssumptionRecord, CellResult, ResultNumber } from '../../contracts/index.js'
import { methodAddress } from '../../contracts/method-address.js'
import { element } from '../dom.js'
import { usedMethods } from '../method/used-methods.js'
import { chooseUnit, formatQuantity, humaniseName, numberOf, typesetNodes } from '../quantity/index.js'
import type { CellView, SheetContext } from '../view.js'
import { aloneContext } from './context.js'

/** More assumptions than this fold to their count. */
const shownAssumptions = 10
/** And more methods than this. */
const shownMethods = 6

export function renderReference(
  document: Document,
  cell: CellView,
  context: SheetContext = aloneContext(cell),
): HTMLElement {
  const column = element(document, 'div', { class: 'reference' })
  const used = methods(document, cell, context)
  if (used !== null) column.append(used)
  const result = cell.result
  if (result === undefined) return column
  for (const part of [requirements(document, result), assumptions(document, result)])
    if (part !== null) column.append(part)
  return column
}

/** The methods of the kernel that a sizing cell calls, as its text stands. */
export function methodsOf(cell: CellView, context: SheetContext): readonly string[] {
  return cell.kind === 'sizing' ? usedMethods(cell.source, (name) => context.known(name) !== undefined) : []
}

/** What the cell calls itself, then what spoke up in what it called. */
function methods(document: Document, cell: CellView, context: SheetContext): HTMLElement | null {
  const advised = new Set((cell.result?.advisories ?? []).map((advisory) => advisory.method))
  const names = [...new Set([...methodsOf(cell, context), ...advised])]
  if (names.length === 0) return null
  const items = names.map((name) =>
    element(
      document,
      'li',
      {},
      methodTag(document, name),
      advised.has(name) ? element(document, 'span', { class: 'origin' }, 'with advisory') : null,
    ),
  )
  const folded = names.length > shownMethods
  const title = folded ? `${names.length} methods` : names.length === 1 ? 'Method' : 'Methods'
  return group(document, 'methods', title, items, folded)
}

/** A method with its place in the catalogue; a name of another form is one that only the author knows. */
function methodTag(document: Document, name: string): HTMLElement {
  return /^[a-z]\w*(?:\.\w+)?$/i.test(name)
    ? element(document, 'a', { class: 'tag', href: methodAddress(name) }, name)
    : element(document, 'span', { class: 'tag' }, name)
}

function requirements(document: Document, result: CellResult): HTMLElement | null {
  if (result.requirements.length === 0) return null
  const items = result.requirements.map((requirement) =>
    element(
      document,
      'li',
      {},
      element(document, 'span', { class: 'tag' }, requirement.name),
      requirement.source === undefined
        ? null
        : element(document, 'span', { class: 'origin' }, ` ${requirement.source}`),
    ),
  )
  return group(document, 'required', items.length === 1 ? 'Requirement' : 'Requirements', items)
}

/** Assumptions that share a source stand above it once; a trial value stands with the value that the document says. */
function assumptions(document: Document, result: CellResult): HTMLElement | null {
  if (result.assumptions.length === 0) return null
  const dimensions = new Map(result.values.map((value) => [value.name, value.dimension]))
  const bySource = new Map<string, AssumptionRecord[]>()
  for (const record of result.assumptions) {
    const source = record.source ?? ''
    bySource.set(source, [...(bySource.get(source) ?? []), record])
  }
  const items = [...bySource].flatMap(([source, records]) => [
    ...records.map((record) => assumptionItem(document, record, dimensions.get(record.name) ?? null)),
    ...(source === '' ? [] : [element(document, 'li', { class: 'origin' }, source)]),
  ])
  const count = result.assumptions.length
  return group(document, 'assumptions', countTitle(count, 'Assumption'), items, count > shownAssumptions)
}

function countTitle(count: number, word: string): string {
  return count > shownAssumptions ? `${count} ${word.toLowerCase()}s` : count === 1 ? word : `${word}s`
}

function assumptionItem(document: Document, record: AssumptionRecord, dimension: string | null): HTMLElement {
  const value = formatQuantity(record.trial ?? record.value, dimension, record.unit).text
  const said = formatQuantity(record.value, dimension, record.unit).text
  const range = rangeWords(record, dimension)
  return element(
    document,
    'li',
    { class: 'assumption', 'data-name': record.name, 'data-trial': record.trial !== undefined },
    element(document, 'span', { class: 'tag', title: record.name }, humaniseName(record.name)),
    ' ',
    element(document, 'span', { class: 'assumed' }, typesetNodes(document, value)),
    record.trial === undefined
      ? null
      : element(document, 'span', { class: 'trial' }, ' trial value; the document says ', typesetNodes(document, said)),
    range === '' ? null : element(document, 'span', { class: 'range' }, ' ', typesetNodes(document, range)),
    record.note === undefined ? null : element(document, 'span', { class: 'origin' }, ` ${record.note}`),
  )
}

/** `200 to 265 Wh/kg`; one-sided ranges as `from` or `up to`. */
export function rangeWords(record: AssumptionRecord, dimension: string | null): string {
  const { low, high } = record
  // Both ends in the unit of the larger, or a range would read "600 m to 12 km".
  const larger = Math.max(Math.abs(numberOf(low ?? 0)), Math.abs(numberOf(high ?? 0)))
  const unit = record.unit ?? sharedUnit(larger, dimension)
  const shown = (si: ResultNumber) => formatQuantity(si, dimension, unit)
  if (low !== undefined && high !== undefined) return `${shown(low).number} to ${shown(high).text}`
  if (low !== undefined) return `from ${shown(low).text}`
  return high === undefined ? '' : `up to ${shown(high).text}`
}

function sharedUnit(larger: number, dimension: string | null): string | undefined {
  return dimension === null ? undefined : chooseUnit(dimension, larger)
}

function group(document: Document, name: string, title: string, items: HTMLElement[], folded = false): HTMLElement {
  const list = element(document, 'ul', {}, items)
  return element(
    document,
    'div',
    { class: `references ${name}` },
    folded
      ? element(document, 'details', {}, element(document, 'summary', {}, title), list)
      : [element(document, 'p', { class: 'references-title' }, title), list],
  )
}
