/** A trace as data, for `trace --json`. */
import type { Overrides } from '../../kernel/cells/program/index.js'
import { cautionLine, type Method, type Trace, type TraceStep } from '../../shared/contracts/index.js'
import { groundWords, type SheetView, TraceSubject } from '../../shared/rendering/index.js'

export interface Traced {
  readonly trace: Trace
  readonly view: SheetView
  readonly overrides: Overrides
  readonly methods: readonly Method[]
}

/** Steps as in the contract, with what the sheet knows of each: label, unit, dimension, source; and the methods that they call. */
export function traceAsData({ trace, view, overrides, methods }: Traced): unknown {
  const subject = new TraceSubject(trace, view)
  const used = new Set(trace.steps.flatMap((step) => step.methods))
  return {
    title: view.title,
    caution: cautionLine,
    overrides,
    ...trace,
    steps: trace.steps.map((step) => ({ ...step, ...known(step, subject) })),
    methods: methods
      .filter(({ name }) => used.has(name))
      .map(({ name, forms }) => ({
        name,
        forms: forms.map(({ summary, equation, validity, source }) => ({ summary, equation, validity, source })),
      })),
  }
}

function known(step: TraceStep, subject: TraceSubject): object {
  const { view } = subject
  const record = subject.record(step.name)
  const result = view.cells.find(({ id }) => id === step.cell)?.result
  const value = result?.values.find(({ name }) => name === step.name)
  return {
    label: subject.label(step.name),
    dimension: value?.dimension ?? null,
    ...(value?.unit === undefined ? {} : { unit: value.unit }),
    ...(record === undefined ? {} : { source: record.source ?? null, ground: groundWords(record) }),
    effect: subject.effect(step),
    advisories: (result?.advisories ?? []).filter(({ method }) => step.methods.includes(method)),
  }
}
