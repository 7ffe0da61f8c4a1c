/** A computation as a page of text: cell by cell in page order, then what the checker remarks. */
import type { CellResult, Finding, NamedValue, Notebook, RequirementRecord } from '../../shared/contracts/index.js'
import { readHeading } from '../../shared/rendering/code/index.js'
import { formatQuantity } from '../../shared/rendering/quantity/index.js'
import { groupAdvisories, groupWords } from '../../shared/rendering/sheet/advisory-groups.js'
import { numberedFinding, numberedResult } from '../../shared/rendering/sheet/cell-numbers.js'
import { recordTable } from '../../shared/rendering/sheet/record-table.js'
import { commandCaution } from './caution.js'
import { cellNumbers } from './cell-numbers.js'
import type { Computed } from './compute-data.js'
import { pageOrder } from './notebook-input.js'

export function describeComputation({ notebook, results, findings, overrides, units }: Computed): string {
  const nameOf = cellNames(notebook)
  const numbers = cellNumbers(notebook)
  const byCell = new Map(results.map((result) => [result.cell, numberedResult(result, numbers)]))
  const trials = Object.keys(overrides)
  const lines = [notebook.title, commandCaution]
  if (trials.length > 0) lines.push(`Trial values, not in the document: ${trials.join(', ')}.`)
  if (units !== 'as written') lines.push(`In ${units} units.`)
  for (const { id } of pageOrder(notebook)) {
    const result = byCell.get(id)
    if (result !== undefined) lines.push('', ...cellLines(result, nameOf))
  }
  const remarks = findings.filter(isRemark).map((finding) => numberedFinding(finding, numbers))
  if (remarks.length > 0) lines.push('', ...remarks.map((finding) => remarkLine(finding, nameOf)))
  return `${lines.join('\n')}\n`
}

type NameOf = (cell: string) => string

/** `cell 6, Hover: disk area and power`: the number in the margin and the heading of the cell. */
function cellNames(notebook: Notebook): NameOf {
  const numbers = cellNumbers(notebook)
  const names = new Map(
    notebook.cells.map((cell) => {
      const { title } = readHeading(cell.source.join('\n'))
      return [cell.id, `cell ${numbers.get(cell.id)}${title === '' ? '' : `, ${title}`}`]
    }),
  ) as ReadonlyMap<string, string>
  return (cell) => names.get(cell) ?? `cell ${cell}`
}

/** Syntax and order are already told as the failure of their cell. */
function isRemark({ severity, kind }: Finding): boolean {
  return severity === 'error' && kind !== 'order' && kind !== 'syntax'
}

function remarkLine({ cell, line, message }: Finding, nameOf: NameOf): string {
  return `remark on ${nameOf(cell)}, line ${line}: ${message}`
}

function cellLines(result: CellResult, nameOf: NameOf): string[] {
  const name = nameOf(result.cell)
  if (result.heldBackBy !== undefined) return [name, `  held back, because ${nameOf(result.heldBackBy)} failed`]
  if (result.error !== undefined) {
    const { place, message } = result.error
    return [name, `  failed${place === undefined ? '' : ` at line ${place.line}`}: ${message}`]
  }
  return [
    name,
    ...result.values.flatMap(valueLine),
    ...result.values.flatMap(tableLines),
    ...result.requirements.map(requirementLine),
    ...groupAdvisories(result.advisories).map((group) => `  advisory: ${groupWords(group)}`),
    ...result.log.map((line) => `  log: ${line}`),
  ]
}

function valueLine({ name, value, dimension, unit }: NamedValue): string[] {
  if (value.kind !== 'number') return []
  return [`  ${name.padEnd(28)} ${formatQuantity(value.si, dimension, unit).text}`]
}

/** A list of records as aligned columns, numbers to the right. */
function tableLines(named: NamedValue): string[] {
  const table = recordTable(named)
  if (table === null) return []
  const widths = table.heads.map(({ text }, column) =>
    Math.max(text.length, ...table.rows.map((row) => row[column]?.length ?? 0)),
  )
  const line = (cells: readonly string[]) =>
    `    ${cells
      .map((text, column) =>
        table.heads[column]?.numeric === true ? text.padStart(widths[column] ?? 0) : text.padEnd(widths[column] ?? 0),
      )
      .join('  ')}`.trimEnd()
  return [`  ${table.label} (${table.remark})`, line(table.heads.map(({ text }) => text)), ...table.rows.map(line)]
}

function requirementLine({ name, actual, atLeast, atMost, margin, met, unit }: RequirementRecord): string {
  const show = (si: RequirementRecord['actual']) => formatQuantity(si, null, unit).text
  const bounds = [
    ...(atLeast === undefined ? [] : [`at least ${show(atLeast)}`]),
    ...(atMost === undefined ? [] : [`at most ${show(atMost)}`]),
  ]
  const verdict = met ? 'met' : 'NOT MET'
  return `  requirement ${name}: ${verdict}: ${show(actual)}, wanted ${bounds.join(' and ')}, margin ${show(margin)}`
}
