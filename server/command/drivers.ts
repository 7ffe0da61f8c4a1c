/** `hoverfolio drivers FILE NAME`: what moves a number, each assumption varied alone. */
import { EvidenceTrouble, openEvaluator, runDrivers } from '../../kernel/cells/evidence/index.js'
import { cautionLine } from '../../shared/contracts/index.js'
import { viewInUnits } from '../../shared/rendering/index.js'
import { computeSheet, fileAndName, fileAndNameUsage, placeOfNumber } from './asked-number.js'
import { subjectInCode } from './asked-text.js'
import { computingOptions, computingUsage } from './computing-options.js'
import { describeDrivers } from './drivers-text.js'
import { readNotebookFile } from './notebook-input.js'
import { withNumbersHost } from './numbers-host.js'
import { showProgress } from './progress.js'
import { readArguments, type Subcommand } from './subcommand.js'
import { readUnits } from './units-option.js'

export const drivers: Subcommand = {
  name: 'drivers',
  usage: `drivers ${fileAndNameUsage} ${computingUsage}`,
  about: 'says what moves a number: its change at the ends of each assumption, and per 1 % of it',
  async run(args) {
    const { values, positionals } = readArguments({
      args: [...args],
      allowPositionals: true,
      options: computingOptions,
    })
    const [file, name] = fileAndName(positionals, 'drivers')
    const units = readUnits(values.units)
    const sheet = await computeSheet(await readNotebookFile(file), values.set)
    const { view, reading, overrides } = sheet
    const wanted = { names: [placeOfNumber(sheet, name)], requirements: [] }
    try {
      const found = await withNumbersHost(async (host) => {
        const evaluator = await openEvaluator(reading, wanted, host, { probes: [overrides] })
        const assumptions = view.cells
          .flatMap(({ result }) => result?.assumptions ?? [])
          .filter((assumption) => evaluator.assumptions.includes(assumption.name))
        const onProgress = showProgress('Varying', process.stderr)
        return runDrivers({ target: name, assumptions, base: overrides }, { ...evaluator, onProgress })
      })
      const shown = viewInUnits(view, units)
      const { dimension, unit } = subjectInCode(shown, name)
      process.stdout.write(
        values.json
          ? `${JSON.stringify({ title: view.title, caution: cautionLine, overrides, dimension, unit, ...found }, null, 2)}\n`
          : describeDrivers({ view: shown, drivers: found, trials: Object.keys(overrides) }),
      )
      return 0
    } catch (fault) {
      if (!(fault instanceof EvidenceTrouble)) throw fault
      process.stderr.write(`${fault.message}\n`)
      return 1
    }
  },
}
