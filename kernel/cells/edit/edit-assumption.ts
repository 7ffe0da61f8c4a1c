/**
 * Writes a new value, range or source of an assumption into the TypeScript of its cell. Only what changes is touched: units, comments and
 * the layout stay as their author wrote them. What is worked out from other names is not ours to replace by a number: it is refused.
 */
import type { AnyNode, CallExpression, Property } from 'acorn'
import { findAssumption, lineOf } from './find-call.js'
import { numberText } from './number-text.js'
import { addProperties, isText, type Options, propertyOf, readOptions, removeProperty, textCode } from './options.js'
import { namesIn, type Quantity, readQuantity } from './quantity.js'
import { applyEdits, type TextEdit } from './text-edit.js'
import { quantityCode } from './unit-code.js'

/** As an author writes a distribution, in SI; around the value. */
export type DistributionChange =
  | { readonly normal: number }
  | { readonly uniform: readonly [low: number, high: number] }
  | { readonly triangular: readonly [low: number, high: number] }
  | { readonly lognormal: number }

/** What is to change, numbers in SI; `null` takes an option out. */
export interface AssumptionChange {
  readonly value?: number
  readonly range?: readonly [low: number, high: number] | null
  readonly distribution?: DistributionChange | null
  readonly unit?: string | null
  readonly source?: string | null
  readonly note?: string | null
  readonly owner?: string | null
}

export type AssumptionEdit =
  /** The cell as it reads then. */
  | { readonly ok: true; readonly source: string }
  /** A sentence, and the line of the cell that it speaks of, counted from 1. */
  | { readonly ok: false; readonly message: string; readonly line: number }

/** Thrown and caught in this file only: a refusal from deep inside. */
class Refused extends Error {
  readonly at: number
  constructor(message: string, at: number) {
    super(message)
    this.at = at
  }
}

const texts = ['unit', 'source', 'note', 'owner'] as const

/**
 * The source of the cell with the change made. Numbers are written in the units that stand there, in as few digits as
 * give the value to the last bits.
 *
 * Refused, with a sentence: an assumption that is not found or holds types acorn cannot read; a value, range or text that is worked out
 * from other names, also from a named constant (its number belongs to whoever named it); options that are kept elsewhere.
 */
export function editAssumption(source: string, name: string, change: AssumptionChange): AssumptionEdit {
  // One after the other: an option that goes and one that comes would meet at the same comma.
  let text = source
  for (const [option, to] of Object.entries(change)) {
    const edit = editOne(text, name, { [option]: to })
    if (!edit.ok) return edit
    text = edit.source
  }
  return { ok: true, source: text }
}

function editOne(source: string, name: string, change: AssumptionChange): AssumptionEdit {
  const call = findAssumption(source, name)
  if (call === undefined) {
    const at = Math.max(0, source.indexOf(name))
    const message = `The statement of "${name}" cannot be read here; write the change in the cell.`
    return { ok: false, message, line: lineOf(source, at) }
  }
  try {
    return { ok: true, source: applyEdits(source, new Statement(source, name, call).edits(change)) }
  } catch (refusal) {
    if (!(refusal instanceof Refused)) throw refusal
    return { ok: false, message: refusal.message, line: lineOf(source, refusal.at) }
  }
}

class Statement {
  readonly #source: string
  readonly #name: string
  readonly #call: CallExpression
  readonly #options: Options
  readonly #value: Quantity | undefined
  readonly #edits: TextEdit[] = []
  readonly #added: string[] = []

  constructor(source: string, name: string, call: CallExpression) {
    this.#source = source
    this.#name = name
    this.#call = call
    this.#options = readOptions(call)
    const value = call.arguments[1]
    this.#value = value === undefined ? undefined : readQuantity(value, source)
  }

  edits(change: AssumptionChange): readonly TextEdit[] {
    if (change.value !== undefined) this.#setValue(change.value)
    if (change.range !== undefined) this.#setPair('range', change.range)
    if (change.distribution !== undefined) this.#setDistribution(change.distribution)
    for (const text of texts) {
      const to = change[text]
      if (to !== undefined) this.#setText(text, to === '' ? null : to)
    }
    return [...this.#edits, ...addProperties(this.#source, this.#options, this.#added)]
  }

  #setValue(value: number): void {
    const node = this.#call.arguments[1]
    if (node === undefined) this.#refuse('the value')
    this.#setQuantity('the value', node, value)
  }

  /** The number alone where there is one; arithmetic of numbers alone is replaced as a whole; names are left to their author. */
  #setQuantity(what: string, node: AnyNode, value: number, pure = false): void {
    const quantity = readQuantity(node, this.#source)
    if (quantity === undefined) this.#replace(what, node, pure ? numberText(value) : this.#written(value))
    else this.#edits.push({ ...quantity.number, insert: quantity.numberFor(value) })
  }

  #setPair(what: 'range', pair: readonly [number, number] | null): void {
    const property = this.#property(what)
    if (pair === null || property === undefined) this.#setProperty(what, property, this.#pair(pair))
    else this.#setBothEnds(`the ${what}`, property.value, pair)
  }

  #setBothEnds(what: string, node: AnyNode, pair: readonly [number, number]): void {
    const [low, high] = node.type === 'ArrayExpression' && node.elements.length === 2 ? node.elements : []
    if (low == null || high == null) this.#replace(what, node, this.#pair(pair))
    else {
      this.#setQuantity(what, low, pair[0])
      this.#setQuantity(what, high, pair[1])
    }
  }

  #setDistribution(change: DistributionChange | null): void {
    const property = this.#property('distribution')
    const [kind, form] = change === null ? [] : (Object.entries(change)[0] ?? [])
    if (kind === undefined || form === undefined) {
      this.#setProperty('distribution', property, null)
      return
    }
    const written = property?.value.type === 'ObjectExpression' ? property.value : undefined
    const same = written?.properties.length === 1 ? propertyOf(written, kind) : undefined
    if (same === undefined) this.#setProperty('distribution', property, this.#distribution(kind, form))
    else if (typeof form === 'number') this.#setQuantity('the distribution', same.value, form, kind === 'lognormal')
    else this.#setBothEnds('the distribution', same.value, form)
  }

  #distribution(kind: string, form: number | readonly [number, number]): string {
    if (typeof form !== 'number') return `{ ${kind}: ${this.#pair(form)} }`
    // The factor of a lognormal is a pure number; a deviation has the unit of the value.
    return `{ ${kind}: ${kind === 'lognormal' ? numberText(form) : this.#written(form)} }`
  }

  #setText(name: (typeof texts)[number], text: string | null): void {
    const property = this.#property(name)
    const was = property?.value
    if (was !== undefined && !isText(was)) this.#refuse(`the ${name}`, was)
    this.#setProperty(name, property, text === null ? null : textCode(text, this.#source[was?.start ?? -1]))
  }

  #setProperty(name: string, property: Property | undefined, code: string | null): void {
    if (this.#options.kind === 'elsewhere') this.#refuse(`the ${name}`)
    if (property === undefined) {
      if (code !== null) this.#added.push(`${name}: ${code}`)
    } else if (code !== null) this.#replace(`the ${name}`, property.value, code)
    else if (this.#options.kind === 'written')
      this.#edits.push(removeProperty(this.#source, this.#options.object, property))
  }

  #property(name: string): Property | undefined {
    return this.#options.kind === 'written' ? propertyOf(this.#options.object, name) : undefined
  }

  #replace(what: string, node: AnyNode, code: string): void {
    if (namesIn(node).length > 0) this.#refuse(what, node)
    this.#edits.push({ from: node.start, to: node.end, insert: code })
  }

  /** A quantity in the style of the value: in its units if it has any, else in the unit it is shown in. */
  #written(value: number): string {
    if (this.#value !== undefined) return this.#value.written(value)
    const unit = this.#property('unit')?.value
    return quantityCode(value, unit?.type === 'Literal' && typeof unit.value === 'string' ? unit.value : undefined)
  }

  #pair(pair: readonly [number, number]): string
  #pair(pair: readonly [number, number] | null): string | null
  #pair(pair: readonly [number, number] | null): string | null {
    return pair === null ? null : `[${this.#written(pair[0])}, ${this.#written(pair[1])}]`
  }

  #refuse(what: string, node?: AnyNode): never {
    const names = node === undefined ? [] : namesIn(node)
    const why =
      names.length > 0
        ? `is worked out from ${names.join(', ')}`
        : this.#options.kind === 'elsewhere'
          ? 'is kept outside the statement'
          : 'is not written out'
    throw new Refused(
      `In the source ${what} of "${this.#name}" ${why}, so it is not replaced from here; change it in the cell.`,
      node?.start ?? this.#call.start,
    )
  }
}
