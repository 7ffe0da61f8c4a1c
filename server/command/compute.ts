/** `hoverfolio compute FILE`: the same path as in the browser, printed as text or JSON. */
import { withDimensions } from '../../kernel/cells/index.js'
import type { Overrides } from '../../kernel/cells/program/index.js'
import { resultInUnits } from '../../shared/rendering/sheet/in-units.js'
import { openToolchain } from '../toolchain.js'
import { computationAsData } from './compute-data.js'
import { describeComputation } from './compute-text.js'
import { computingOptions, computingUsage } from './computing-options.js'
import { readNotebookFile, sizingCells } from './notebook-input.js'
import { readOverrides } from './overrides.js'
import { onlyFile, readArguments, type Subcommand } from './subcommand.js'
import { readUnits } from './units-option.js'

export const compute: Subcommand = {
  name: 'compute',
  usage: `compute FILE ${computingUsage}`,
  about: 'computes a notebook, with trial values for assumptions where given',
  async run(args) {
    const { values, positionals } = readArguments({
      args: [...args],
      allowPositionals: true,
      options: computingOptions,
    })
    const units = readUnits(values.units)
    const notebook = await readNotebookFile(onlyFile(positionals, 'compute'))
    const toolchain = await openToolchain({ checkSoon: true })
    try {
      const cells = sizingCells(notebook)
      const report = await toolchain.pipeline.check(cells)
      const assumptions = await toolchain.pipeline.assumptions(cells)
      const overrides: Overrides = readOverrides(values.set, assumptions, report.names)
      const computed = await toolchain.pipeline.compute(cells, overrides, 'all')
      const results = withDimensions(computed.results, report.names).map((result) => resultInUnits(result, units))
      const computation = { notebook, results, findings: report.findings, overrides, units }
      process.stdout.write(
        values.json ? `${JSON.stringify(computationAsData(computation), null, 2)}\n` : describeComputation(computation),
      )
      const failed = results.some((result) => result.outcome !== 'computed')
      const missed = results.some((result) => result.requirements.some((requirement) => !requirement.met))
      return failed || missed ? 1 : 0
    } finally {
      await toolchain.close()
    }
  },
}
