/** The examples of all methods, computed as cells of one notebook on the path that every cell takes. */
import type typescript from 'typescript'
import { exampleCell, type UncomputedMethod, withNames } from '../../kernel/cells/catalogue/index.js'
import { type Pipeline, withDimensions } from '../../kernel/cells/index.js'
import type { SizingCell } from '../../kernel/cells/program/index.js'
import {
  CellId,
  type CellResult,
  type Method,
  type MethodExample,
  type ResultValue,
} from '../../shared/contracts/index.js'

export interface ExampleParts {
  readonly typescript: typeof typescript
  readonly pipeline: Pick<Pipeline, 'check' | 'compute'>
  /** Names that cells see without asking. */
  readonly kernelNames: readonly string[]
}

/** A run may take so long and no longer; examples are computed in groups of this many. */
const together = 60
const shownItems = 8

interface Example {
  readonly method: string
  readonly source: string
  readonly cell: string
  readonly computed: SizingCell
  readonly before: ReadonlyMap<string, string>
}

/**
 * The methods with their examples computed.
 *
 * @throws Error naming the method whose example fails
 */
export async function computeExamples(
  methods: readonly UncomputedMethod[],
  { typescript, pipeline, kernelNames }: ExampleParts,
): Promise<readonly Method[]> {
  const taken = new Set(kernelNames)
  const examples = methods
    .flatMap(({ name, forms }) => forms.map(({ example }) => ({ method: name, source: example })))
    .map(({ method, source }, index): Example => {
      const cell = exampleCell(typescript, source, taken)
      const { source: alone, before } = withNames(typescript, cell, `_${index}`)
      return { method, source, cell, computed: { id: CellId.parse(`example-${index}`), source: alone }, before }
    })
  const results = await computeAll(
    examples.map(({ computed }) => computed),
    pipeline,
  )
  let next = 0
  return methods.map((method) => ({
    ...method,
    forms: method.forms.map((form) => {
      const example = answered(examples[next], results[next])
      next += 1
      return { ...form, example }
    }),
  }))
}

async function computeAll(cells: readonly SizingCell[], pipeline: ExampleParts['pipeline']): Promise<CellResult[]> {
  const { names } = await pipeline.check(cells)
  const results: CellResult[] = []
  for (let start = 0; start < cells.length; start += together)
    results.push(...(await pipeline.compute(cells.slice(start, start + together), {}, 'all')).results)
  return withDimensions(results, names)
}

function answered(example: Example | undefined, result: CellResult | undefined): MethodExample {
  if (example === undefined || result === undefined)
    throw new Error('An example of the method catalogue has no result.')
  if (result.outcome !== 'computed')
    throw new Error(`The example of ${example.method} does not compute: ${result.error?.message ?? result.outcome}`)
  const named = (name: string) => example.before.get(name) ?? name
  return {
    source: example.source,
    cell: example.cell,
    values: result.values.map((value) => ({ ...value, name: named(value.name), value: shortened(value.value) })),
    advisories: result.advisories,
  }
}

/** Long lists keep their first items and their length: the catalogue shows no more. */
function shortened(value: ResultValue): ResultValue {
  if (value.kind === 'list') return { ...value, items: value.items.slice(0, shownItems).map(shortened) }
  if (value.kind !== 'record') return value
  return { ...value, entries: value.entries.map(([name, entry]) => [name, shortened(entry)]) }
}
