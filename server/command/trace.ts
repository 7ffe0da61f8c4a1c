/** `hoverfolio trace FILE NAME`: where a number came from, as an outline down to the assumptions and their sources. */
import { EvidenceTrouble, traceNumber } from '../../kernel/cells/evidence/index.js'
import { viewInUnits } from '../../shared/rendering/index.js'
import { readCatalogue } from '../catalogue/index.js'
import { kernelFolder } from '../toolchain.js'
import { computeSheet, fileAndName, fileAndNameUsage, placeOfNumber } from './asked-number.js'
import { computingOptions, computingUsage } from './computing-options.js'
import { readNotebookFile } from './notebook-input.js'
import { withNumbersHost } from './numbers-host.js'
import { readArguments, type Subcommand } from './subcommand.js'
import { traceAsData } from './trace-data.js'
import { describeTrace } from './trace-text.js'
import { readUnits } from './units-option.js'

export const trace: Subcommand = {
  name: 'trace',
  usage: `trace ${fileAndNameUsage} ${computingUsage}`,
  about: 'says where a number came from, what moves it, and what would wake what does not',
  async run(args) {
    const { values, positionals } = readArguments({
      args: [...args],
      allowPositionals: true,
      options: computingOptions,
    })
    const [file, name] = fileAndName(positionals, 'trace')
    const units = readUnits(values.units)
    const sheet = await computeSheet(await readNotebookFile(file), values.set)
    const { view, reading, overrides } = sheet
    const target = placeOfNumber(sheet, name)
    const assumptions = view.cells.flatMap(({ result }) => result?.assumptions ?? [])
    try {
      const found = await withNumbersHost((host) =>
        traceNumber({ read: reading, target, assumptions, trials: overrides }, host),
      )
      const traced = {
        trace: found,
        view: viewInUnits(view, units),
        overrides,
        methods: await readCatalogue(kernelFolder),
      }
      process.stdout.write(values.json ? `${JSON.stringify(traceAsData(traced), null, 2)}\n` : describeTrace(traced))
      return 0
    } catch (fault) {
      if (!(fault instanceof EvidenceTrouble)) throw fault
      process.stderr.write(`${fault.message}\n`)
      return 1
    }
  },
}
