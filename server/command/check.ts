/** `hoverfolio check FILE`: syntax, types, units and order of every cell, without computing. */
import { cautionLine, type Finding, type NameDimension, type Notebook } from '../../shared/contracts/index.js'
import { withCellNumbers } from '../../shared/rendering/sheet/cell-numbers.js'
import { openToolchain } from '../toolchain.js'
import { commandCaution } from './caution.js'
import { cellNumbers } from './cell-numbers.js'
import { readNotebookFile, sizingCells } from './notebook-input.js'
import { onlyFile, readArguments, type Subcommand } from './subcommand.js'

export const check: Subcommand = {
  name: 'check',
  usage: 'check FILE [--json]',
  about: 'says what is wrong with a notebook: syntax, types, units, names',
  async run(args) {
    const { values, positionals } = readArguments({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean', default: false } },
    })
    const notebook = await readNotebookFile(onlyFile(positionals, 'check'))
    const toolchain = await openToolchain({ checkSoon: true })
    try {
      const { findings, names } = await toolchain.pipeline.check(sizingCells(notebook))
      const report = values.json
        ? `${JSON.stringify({ title: notebook.title, caution: cautionLine, findings, names }, null, 2)}\n`
        : describe(notebook, findings, names)
      process.stdout.write(report)
      return findings.some((finding) => finding.severity === 'error') ? 1 : 0
    } finally {
      await toolchain.close()
    }
  },
}

function describe(notebook: Notebook, findings: readonly Finding[], names: readonly NameDimension[]): string {
  const numbers = cellNumbers(notebook)
  const lines = findings.map(
    (finding) =>
      `cell ${numbers.get(finding.cell)} (${finding.cell}), line ${finding.line}, column ${finding.column}: ${finding.severity}, ${finding.kind}: ${withCellNumbers(finding.message, numbers)}`,
  )
  const summary =
    findings.length === 0
      ? 'Nothing to remark.'
      : `${findings.length} ${findings.length === 1 ? 'finding' : 'findings'}.`
  const open = names.flatMap(({ cell, name, why }) =>
    why === undefined ? [] : [`cell ${numbers.get(cell)} (${cell}): the dimension of ${name} is not known: ${why}.`],
  )
  return `${[notebook.title, commandCaution, '', ...lines, ...open, summary].join('\n')}\n`
}
