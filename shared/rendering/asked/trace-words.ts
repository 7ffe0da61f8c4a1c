/** A trace in words: what each step is, what it is worth, what it does to the number, and what it rests on. */
import type { AssumptionRecord, NamedValue, Trace, TraceStep, Waking } from '../../contracts/index.js'
import { linesOf } from '../formula/index.js'
import type { Line } from '../formula/lines.js'
import { formatQuantity } from '../quantity/format-quantity.js'
import { countOf, humaniseName } from '../quantity/words.js'
import { sheetContext } from '../sheet/context.js'
import type { CellView, SheetView } from '../view.js'
import { marginsOf } from './margins.js'

/** What the sheet knows of the steps; made once for a trace. */
export class TraceSubject {
  readonly trace: Trace
  readonly view: SheetView
  readonly running: boolean
  readonly #steps: ReadonlyMap<string, TraceStep>
  readonly #cells: ReadonlyMap<string, CellView>
  readonly #records: ReadonlyMap<string, AssumptionRecord>
  readonly #lines = new Map<string, ReadonlyMap<string, Line>>()

  /** `running`: what has not been tried will be. */
  constructor(trace: Trace, view: SheetView, { running = false }: { readonly running?: boolean } = {}) {
    this.trace = trace
    this.view = view
    this.running = running
    this.#steps = new Map(trace.steps.map((step) => [step.name, step]))
    this.#cells = new Map(view.cells.map((cell) => [cell.id, cell]))
    this.#records = new Map(
      view.cells.flatMap(({ result }) => (result?.assumptions ?? []).map((record) => [record.name, record] as const)),
    )
  }

  label(name: string): string {
    return this.#named(name)?.label ?? humaniseName(name)
  }

  /** `cell 4`, with the number in the margin. */
  place({ cell }: TraceStep): string {
    return `cell ${this.#cells.get(cell)?.number ?? '?'}`
  }

  /** The number with its unit, or in a word what else it is. */
  value({ name, kind, value }: TraceStep): string {
    if (value !== undefined) return this.#quantity(name, value)
    const known = this.#named(name)?.value
    if (known === undefined) return ''
    if (known.kind === 'text') return `text "${known.text.slice(0, 60)}"`
    if (known.kind === 'truth') return known.value ? 'true' : 'false'
    if (known.kind === 'list') return `list of ${known.length}`
    return kind === 'other' && known.kind !== 'nothing' ? known.kind : ''
  }

  record(name: string): AssumptionRecord | undefined {
    return this.#records.get(name)
  }

  /** How it is worked out, where that is a formula. */
  line({ name, cell }: TraceStep): Line | undefined {
    const view = this.#cells.get(cell)
    if (view === undefined || this.#records.has(name)) return undefined
    const known =
      this.#lines.get(cell) ?? new Map(linesOf(view, sheetContext(this.view)).map((line) => [line.name, line]))
    this.#lines.set(cell, known)
    return known.get(name)
  }

  /** What it does to the number; empty where that goes without saying. */
  effect(step: TraceStep): string {
    const { acts, kind, wakes } = step
    const would = wakes.map((waking) => this.#waking(step, waking)).join('; ')
    if (step.name === this.trace.target) return ''
    if (acts === 'moves') return would === '' ? 'moves it' : `moves it, but not by 1 %: ${would}`
    if (acts === 'hardly') return 'moves only digits that solving leaves open'
    if (acts === 'not known') return kind !== 'other' && this.#isLeft(step) && !this.running ? 'not tried' : ''
    return would === '' ? 'does not move it, all else as it stands' : `does not move it; ${would}`
  }

  #isLeft({ name }: TraceStep): boolean {
    return this.trace.left.includes(name)
  }

  #waking({ name }: TraceStep, { by, from, fails }: Waking): string {
    const value = this.#quantity(by, from)
    const held = this.#steps.get(by)?.value ?? 0
    const whole = Number.isInteger(from) && Number.isInteger(held) && Math.abs(from - held) === 1
    const at = whole ? `at ${value}` : `from ${value} ${from > held ? 'up' : 'down'}`
    if (fails) return `${at} it does not compute`
    return by === name ? `would move it ${at}` : `would with ${this.label(by)} ${at}`
  }

  #quantity(name: string, value: number): string {
    const named = this.#named(name)
    return formatQuantity(value, named?.dimension ?? null, named?.unit).text
  }

  /** Of the cell that makes it, where it is a step: another cell may state a number under the same name. */
  #named(name: string): NamedValue | undefined {
    const cell = this.#steps.get(name)?.cell
    const cells = cell === undefined ? this.view.cells : this.view.cells.filter(({ id }) => id === cell)
    for (const { result } of cells) {
      const found = result?.values.find((one) => one.name === name)
      if (found !== undefined) return found
    }
    return marginsOf(this.view).find(({ value }) => value.name === name)?.value
  }
}

/** Source, note and owner of an assumption; an assumption without a source says so. */
export function groundWords({ source, note, owner }: AssumptionRecord): string {
  const stated = source === undefined || source.trim() === '' ? 'no source' : `source: ${source}`
  return [stated, ...(note === undefined ? [] : [note]), ...(owner === undefined ? [] : [`owner: ${owner}`])].join('; ')
}

/** `gross mass = 1 637 kg rests on 31 assumptions: 24 move it, 7 do not.` */
export function traceSentence(subject: TraceSubject): string {
  const { trace } = subject
  const assumptions = trace.steps.filter(({ kind, name }) => kind === 'assumption' && name !== trace.target)
  const target = trace.steps.at(-1)
  const head = `${subject.label(trace.target)}${target === undefined ? '' : ` = ${subject.value(target)}`}`
  if (target?.kind === 'assumption') return `${head} is an assumption: nothing stands behind it but its source.`
  if (assumptions.length === 0) return `${head} rests on no assumption: every number in it is written in the text.`
  const count = (acts: TraceStep['acts']) => assumptions.filter((step) => step.acts === acts).length
  const [moving, idle] = [count('moves'), count('inactive') + count('hardly')]
  if (moving === assumptions.length)
    return `${head} rests on ${countOf(moving, 'assumption')}, ${moving === 1 ? 'which moves it' : 'each of which moves it'}.`
  const parts = [
    ...(moving === 0 ? [] : [`${moving} ${moving === 1 ? 'moves' : 'move'} it`]),
    ...(idle === 0 ? [] : [`${idle} ${idle === 1 ? 'does' : 'do'} not, all else as it stands`]),
    ...(count('not known') === 0
      ? []
      : [subject.running ? `${count('not known')} still to be tried` : notTried(count('not known'))]),
  ]
  return `${head} rests on ${countOf(assumptions.length, 'assumption')}: ${parts.join(', ')}.`
}

const notTried = (count: number) => `${count} ${count === 1 ? 'was' : 'were'} not tried`

/** How it was found out. */
export function traceBasis({ runs }: Trace): string {
  return `The text says what each name is made from. What moves the number was found by changing one thing at a time, in ${countOf(runs, 'evaluation')}: by 1 % and 10 % either way, a switch by turning it over, and what these did not move as far as its range goes, or to a quarter and to five times its value where it has none. What moves the number only together with something else counts as not moving it.`
}
