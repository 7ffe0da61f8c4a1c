/** Collects what the kernel reports while one cell runs, as plain data of bounded size. */
import type { Advisory, AssumptionRecord, Distribution, RequirementRecord } from '../../../../shared/contracts/index.js'
import type { AssumptionStatement, Recorder, RequirementStatement, ResultStatement } from '../../../library/recorder.js'
import type { Overrides } from '../../program/index.js'
import { encodeNumber } from './encode.js'

const most = {
  advisories: 200,
  assumptions: 1000,
  requirements: 1000,
  results: 1000,
  units: 100,
  correlated: 100,
} as const

/** How a name is shown: from its assumption, its `result(...)` or its `table(...)` call. */
export interface Presentation {
  readonly value: number | readonly object[]
  readonly stated: boolean
  readonly unit?: string
  readonly units?: Readonly<Record<string, string>>
  readonly label?: string
  readonly symbol?: string
}

export class Recording implements Recorder {
  readonly #overrides: Overrides
  readonly #overridable: ReadonlySet<string>
  readonly #advisories = new Map<string, Advisory>()
  readonly #assumptions = new Map<string, AssumptionRecord>()
  readonly #requirements: RequirementRecord[] = []
  readonly presentations = new Map<string, Presentation>()

  /** `overridable` are the assumptions analysis found in this cell: only those can be under trial here. */
  constructor(overrides: Overrides, overridable: readonly string[]) {
    this.#overrides = overrides
    this.#overridable = new Set(overridable)
  }

  advisory(advisory: Advisory): void {
    if (this.#advisories.size >= most.advisories) return
    const copy = {
      code: String(advisory.code),
      method: String(advisory.method),
      message: String(advisory.message),
      ...(advisory.quantity === undefined ? {} : { quantity: String(advisory.quantity) }),
      ...(advisory.value === undefined ? {} : { value: numberOf(advisory.value) }),
      ...(advisory.range === undefined ? {} : { range: [end(advisory.range[0]), end(advisory.range[1])] }),
    } as Advisory
    this.#advisories.set(JSON.stringify(copy), copy)
  }

  assumption(statement: AssumptionStatement): number {
    const { name, value } = statement
    const trial =
      this.#overridable.has(name) && Object.hasOwn(this.#overrides, name) ? this.#overrides[name] : undefined
    if (this.#assumptions.size < most.assumptions)
      this.#assumptions.set(name, {
        name,
        value: encodeNumber(value),
        ...(trial === undefined ? {} : { trial: encodeNumber(trial) }),
        ...textFields(statement, ['unit', 'source', 'note', 'owner']),
        ...(statement.low === undefined ? {} : { low: encodeNumber(statement.low) }),
        ...(statement.high === undefined ? {} : { high: encodeNumber(statement.high) }),
        ...(statement.distribution === undefined ? {} : { distribution: plainDistribution(statement.distribution) }),
        ...(statement.correlated === undefined ? {} : { correlated: plainNumbers(statement.correlated) }),
      })
    this.#present(statement, trial ?? value, false)
    return trial ?? value
  }

  requirement(statement: RequirementStatement): void {
    if (this.#requirements.length >= most.requirements) return
    const { name, actual, atLeast, atMost, margin, met } = statement
    this.#requirements.push({
      name,
      actual: encodeNumber(actual),
      ...(atLeast === undefined ? {} : { atLeast: encodeNumber(atLeast) }),
      ...(atMost === undefined ? {} : { atMost: encodeNumber(atMost) }),
      margin: encodeNumber(margin),
      met,
      ...textFields(statement, ['unit', 'source', 'paragraph', 'means', 'owner']),
    })
  }

  result(statement: ResultStatement): void {
    if (this.presentations.size < most.results) this.#present(statement, statement.value, true)
  }

  #present(statement: AssumptionStatement | ResultStatement, value: Presentation['value'], stated: boolean): void {
    const units = 'units' in statement && statement.units !== undefined ? { units: unitTexts(statement.units) } : {}
    this.presentations.set(statement.name, {
      value,
      stated,
      ...textFields(statement, ['unit', 'label', 'symbol']),
      ...units,
    })
  }

  collected(): { advisories: Advisory[]; assumptions: AssumptionRecord[]; requirements: RequirementRecord[] } {
    return {
      advisories: [...this.#advisories.values()],
      assumptions: [...this.#assumptions.values()],
      requirements: this.#requirements,
    }
  }
}

/** A cell may call the recorder with anything; what crosses is numbers by the fields of the kind it names. */
function plainDistribution(stated: Distribution): Distribution {
  const number = (field: string) => numberOf((stated as Record<string, unknown>)[field])
  if (stated.kind === 'uniform') return { kind: 'uniform', low: number('low'), high: number('high') }
  if (stated.kind === 'triangular')
    return { kind: 'triangular', low: number('low'), mode: number('mode'), high: number('high') }
  if (stated.kind === 'lognormal') return { kind: 'lognormal', median: number('median'), factor: number('factor') }
  return { kind: 'normal', mean: number('mean'), deviation: number('deviation') }
}

function plainNumbers(stated: Readonly<Record<string, number>>): Record<string, number> {
  const entries = Object.entries(stated).slice(0, most.correlated)
  return Object.fromEntries(entries.map(([name, value]) => [name, Number(value)]))
}

function unitTexts(units: Readonly<Record<string, string>>): Record<string, string> {
  return textFields(units, Object.keys(units).slice(0, most.units))
}

function textFields(statement: object, keys: readonly string[]): Record<string, string> {
  const fields: Record<string, string> = {}
  for (const key of keys) {
    const value = (statement as Record<string, unknown>)[key]
    if (value !== undefined) fields[key] = String(value)
  }
  return fields
}

function numberOf(value: unknown): ReturnType<typeof encodeNumber> {
  return encodeNumber(Number(value))
}

function end(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null
}
