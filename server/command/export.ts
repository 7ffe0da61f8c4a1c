/** `hoverfolio export FILE --to KIND`: what can be taken away of a notebook, computed here, written beside the file or where `--out` says. */
import { mkdir, stat, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { formulasOf } from '../../kernel/cells/formulas/index.js'
import { withDimensions } from '../../kernel/cells/index.js'
import { readersOf } from '../../kernel/cells/program/index.js'
import { methodsOf } from '../../kernel/cells/revision/index.js'
import { type Notebook, suggest, writeNotebook } from '../../shared/contracts/index.js'
import { assumptionRows, requirementRows, viewInUnits } from '../../shared/rendering/index.js'
import { readCatalogue } from '../catalogue/index.js'
import {
  complianceCsv,
  type ExportedNotebook,
  figureFiles,
  provenanceOf,
  registerCsv,
  sheetFile,
} from '../exports/index.js'
import { sheetView } from '../pages/index.js'
import { contentOf } from '../revisions/index.js'
import { kernelFolder, openToolchain } from '../toolchain.js'
import { commandCaution } from './caution.js'
import { pageOrder, readNotebookFile, sizingCells } from './notebook-input.js'
import { onlyFile, readArguments, type Subcommand, WrongCall } from './subcommand.js'
import { readUnits } from './units-option.js'

const kinds = ['sheet.html', 'register.csv', 'compliance.csv', 'notebook.json', 'figures/'] as const
type Kind = (typeof kinds)[number]

/** A file to write; `name` is absent where there is only one. */
interface Made {
  readonly name?: string
  readonly text: string
}

export const exportNotebook: Subcommand = {
  name: 'export',
  usage: `export FILE --to ${kinds.join('|')} [--units SI|aviation] [--out PATH] [--overwrite]`,
  about: 'writes the sheet as one file, register or requirements as a table, the notebook, or its figures',
  async run(args) {
    const { values, positionals } = readArguments({
      args: [...args],
      allowPositionals: true,
      options: {
        to: { type: 'string' },
        units: { type: 'string' },
        out: { type: 'string' },
        overwrite: { type: 'boolean', default: false },
      },
    })
    const file = onlyFile(positionals, 'export')
    const kind = readKind(values.to)
    const units = readUnits(values.units)
    const notebook = await readNotebookFile(file)
    const out = values.out ?? defaultPath(file, kind)
    await refuseExisting(out, kind, values.overwrite)
    if (kind === 'notebook.json') return await write(out, [{ text: writeNotebook(notebook) }], kind, values.overwrite)
    const { exported, failed } = await computed(notebook)
    const shown = { ...exported, view: viewInUnits(exported.view, units) }
    const code = await write(out, await make(kind, shown), kind, values.overwrite)
    if (failed > 0)
      process.stderr.write(
        `${failed === 1 ? 'One cell has' : `${failed} cells have`} no values; the export says which.\n`,
      )
    return failed > 0 ? 1 : code
  },
}

function readKind(given: string | undefined): Kind {
  if (given === undefined) throw new WrongCall(`export needs --to with one of: ${kinds.join(', ')}.`)
  const kind = kinds.find((one) => one === given || one === `${given}/`)
  if (kind === undefined)
    throw new WrongCall(
      `--to ${given} is nothing that can be written${suggest(given, kinds)}; there are ${kinds.join(', ')}.`,
    )
  return kind
}

/** `worked-sizing-sheet.html` in the present folder. */
function defaultPath(file: string, kind: Kind): string {
  return `${basename(file).replace(/\.json$/i, '')}-${kind.replace(/\/$/, '')}`
}

async function refuseExisting(out: string, kind: Kind, overwrite: boolean): Promise<void> {
  const found = await stat(out).catch(() => undefined)
  if (found === undefined) return
  if (kind !== 'figures/' && found.isDirectory())
    throw new WrongCall(`${out} is a folder; give a file with --out PATH, for instance ${join(out, kind)}.`)
  if (kind === 'figures/' && !found.isDirectory())
    throw new WrongCall(`${out} is a file; figures are written to a folder: give another with --out PATH.`)
  if (!overwrite && kind !== 'figures/')
    throw new WrongCall(`${out} exists already; choose another with --out PATH, or add --overwrite.`)
}

async function computed(notebook: Notebook): Promise<{ readonly exported: ExportedNotebook; readonly failed: number }> {
  const toolchain = await openToolchain({ checkSoon: true })
  try {
    const ordered = { ...notebook, cells: [...pageOrder(notebook)] }
    const cells = sizingCells(ordered)
    const { pipeline, kernel } = toolchain
    const { names } = await pipeline.check(cells)
    const reading = await pipeline.read(cells)
    const results = withDimensions((await pipeline.evaluate(reading, {}, 'all')).results, names)
    const shelved = { current: results, outOfDate: [] }
    const content = contentOf(ordered, shelved, kernel.hash, methodsOf(reading.graph))
    return {
      exported: {
        view: sheetView(notebook.id ?? 'notebook', ordered, shelved, formulasOf(reading.graph)),
        provenance: provenanceOf(content, notebook.titleBlock, undefined),
        readers: (name) => readersOf(name, reading.graph),
      },
      failed: results.filter((result) => result.outcome !== 'computed').length,
    }
  } finally {
    await toolchain.close()
  }
}

async function make(kind: Exclude<Kind, 'notebook.json'>, exported: ExportedNotebook): Promise<readonly Made[]> {
  const { view, provenance, readers } = exported
  switch (kind) {
    case 'sheet.html':
      return [{ text: await sheetFile({ ...exported, methods: await readCatalogue(kernelFolder) }) }]
    case 'register.csv':
      return [{ text: registerCsv(assumptionRows(view, readers), provenance) }]
    case 'compliance.csv':
      return [{ text: complianceCsv(requirementRows(view), provenance) }]
    case 'figures/':
      return figureFiles(view, provenance)
  }
}

async function write(out: string, made: readonly Made[], kind: Kind, overwrite: boolean): Promise<number> {
  try {
    if (kind === 'figures/') await mkdir(out, { recursive: true })
    for (const { name, text } of made) {
      const path = name === undefined ? out : join(out, name)
      await writeFile(path, text, { flag: overwrite ? 'w' : 'wx' })
      process.stdout.write(`Written: ${path}\n`)
    }
  } catch (error) {
    throw new WrongCall(writeTrouble(out, error as NodeJS.ErrnoException))
  }
  process.stdout.write(
    `${made.length === 0 ? 'The notebook has no figures; nothing was written.\n' : ''}${commandCaution}\n`,
  )
  return 0
}

function writeTrouble(out: string, error: NodeJS.ErrnoException): string {
  if (error.code === 'EEXIST')
    return `${error.path ?? out} exists already; choose another place with --out PATH, or add --overwrite.`
  return `${error.path ?? out} cannot be written (${error.message}); choose another place with --out PATH.`
}
