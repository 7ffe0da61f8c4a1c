/** The plain host with records of assumptions, read off the values that cells declare. */
import type { EvaluationHost } from '../../../../../kernel/cells/program/index.js'
import type { PlainHost } from '../../pipeline/plain-host.js'

export function withAssumptions(host: PlainHost): EvaluationHost {
  return {
    ...host,
    async evaluate(program, overrides, wanted, options) {
      const evaluation = await host.evaluate(program, overrides, wanted, options)
      const declared = new Map(program.cells.map(({ id, assumptions }) => [id, assumptions]))
      const results = evaluation.results.map((result) => ({
        ...result,
        assumptions: (declared.get(result.cell) ?? []).flatMap((name) => {
          const value = result.values.find((each) => each.name === name)?.value
          return value?.kind === 'number' ? [{ name, value: value.si }] : []
        }),
      }))
      return { ...evaluation, results }
    },
  }
}
