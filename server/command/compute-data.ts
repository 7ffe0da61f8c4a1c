/** A computation as data, for `compute --json`. Shapes that outside checks rely on: `results.NAME.si`, `requirements`, `advisories`, `cells`. */
import type { Overrides } from '../../kernel/cells/program/index.js'
import {
  type CellResult,
  cautionLine,
  type Finding,
  type Notebook,
  type ResultValue,
} from '../../shared/contracts/index.js'
import type { UnitSystem } from '../../shared/rendering/quantity/unit-system.js'

export interface Computed {
  readonly notebook: Notebook
  readonly results: readonly CellResult[]
  readonly findings: readonly Finding[]
  readonly overrides: Overrides
  /** That the results were put into. */
  readonly units: UnitSystem
}

/** Results by name; names of cells that failed or were held back are absent, so that nobody mistakes an old number for an answer. */
export function computationAsData(computed: Computed): unknown {
  const { notebook, results, findings, overrides } = computed
  const finished = results.filter((result) => result.outcome === 'computed')
  return {
    title: notebook.title,
    caution: cautionLine,
    overrides,
    results: Object.fromEntries(
      finished.flatMap((result) =>
        result.values.map(({ name, value, dimension, unit, columns }) => [
          name,
          {
            cell: result.cell,
            ...plainValue(value),
            dimension,
            ...(unit === undefined ? {} : { unit }),
            ...(columns === undefined ? {} : { columns }),
          },
        ]),
      ),
    ),
    requirements: finished.flatMap((result) => result.requirements.map((entry) => ({ cell: result.cell, ...entry }))),
    assumptions: finished.flatMap((result) => result.assumptions.map((entry) => ({ cell: result.cell, ...entry }))),
    advisories: finished.flatMap((result) => result.advisories.map((entry) => ({ cell: result.cell, ...entry }))),
    cells: results.map((result) => ({
      cell: result.cell,
      state: result.outcome === 'computed' ? 'current' : result.outcome,
      ...(result.error === undefined ? {} : { error: result.error }),
      ...(result.heldBackBy === undefined ? {} : { heldBackBy: result.heldBackBy }),
    })),
    findings,
  }
}

/** A number as `si`; anything else as `value` in plain JSON. */
function plainValue(value: ResultValue): { si: number | string } | { value: unknown } {
  return value.kind === 'number' ? { si: value.si } : { value: toJson(value) }
}

function toJson(value: ResultValue): unknown {
  switch (value.kind) {
    case 'number':
      return value.si
    case 'text':
      return value.text
    case 'truth':
      return value.value
    case 'list':
      return value.items.map(toJson)
    case 'record':
      return Object.fromEntries(value.entries.map(([key, entry]) => [key, toJson(entry)]))
    case 'nothing':
      return null
    default:
      return value.kind
  }
}
