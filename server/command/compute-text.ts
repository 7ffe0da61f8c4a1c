/** A computation as a page of text: cell by cell, stated results first, then requirements and advisories in words. */
import { type CellResult, cautionLine, type NamedValue, type RequirementRecord } from '../../shared/contracts/index.js'
import { formatQuantity } from '../../shared/rendering/index.js'
import { cellNumbers } from './cell-numbers.js'
import type { Computed } from './compute-data.js'

export function describeComputation(computed: Computed): string {
  const numbers = cellNumbers(computed.notebook)
  const dimensions = new Map(computed.names.map((entry) => [`${entry.cell} ${entry.name}`, entry.dimension]))
  const dimensionOf = (cell: string, name: string) => dimensions.get(`${cell} ${name}`) ?? null
  const lines = [computed.notebook.title, cautionLine, ...trialLines(computed)]
  for (const result of computed.results)
    lines.push('', ...cellLines(result, numbers.get(result.cell) ?? '?', numbers, dimensionOf))
  const errors = computed.findings.filter(
    (finding) => finding.severity === 'error' && finding.kind !== 'order' && finding.kind !== 'syntax',
  )
  if (errors.length > 0)
    lines.push(
      '',
      ...errors.map(
        (finding) => `remark on cell ${numbers.get(finding.cell)}, line ${finding.line}: ${finding.message}`,
      ),
    )
  return `${lines.join('\n')}\n`
}

type DimensionOf = (cell: string, name: string) => string | null

function cellLines(
  result: CellResult,
  number: string,
  numbers: ReadonlyMap<string, string>,
  dimensionOf: DimensionOf,
): string[] {
  if (result.outcome === 'held back')
    return [
      `cell ${number} (${result.cell}): held back, because cell ${numbers.get(result.heldBackBy ?? '') ?? '?'} failed`,
    ]
  if (result.error !== undefined) {
    const { place, message } = result.error
    const where = place === undefined ? '' : `, line ${place.line}`
    return [`cell ${number} (${result.cell})${where}: failed: ${message}`]
  }
  const values = result.values.filter((value) => value.value.kind === 'number')
  return [
    `cell ${number} (${result.cell})`,
    ...values.map((value) => valueLine(value, value.dimension ?? dimensionOf(result.cell, value.name))),
    ...result.requirements.map((requirement) =>
      requirementLine(requirement, dimensionOf(result.cell, requirement.name)),
    ),
    ...result.advisories.map((advisory) => `  advisory: ${advisory.message}`),
    ...result.log.map((line) => `  log: ${line}`),
  ]
}

function valueLine(value: NamedValue, dimension: string | null): string {
  if (value.value.kind !== 'number') return ''
  return `  ${value.name.padEnd(28)} ${formatQuantity(value.value.si, dimension, value.unit).text}`
}

function requirementLine(requirement: RequirementRecord, dimension: string | null): string {
  const word = requirement.met ? 'met' : 'NOT MET'
  const show = (si: RequirementRecord['actual']) => formatQuantity(si, dimension, requirement.unit).text
  const bounds = [
    requirement.atLeast === undefined ? '' : `at least ${show(requirement.atLeast)}`,
    requirement.atMost === undefined ? '' : `at most ${show(requirement.atMost)}`,
  ].filter((text) => text !== '')
  return `  requirement ${requirement.name}: ${word}: ${show(requirement.actual)}, wanted ${bounds.join(' and ')}, margin ${show(requirement.margin)}`
}

function trialLines(computed: Computed): string[] {
  const names = Object.keys(computed.overrides)
  return names.length === 0 ? [] : [`Trial values, not in the document: ${names.join(', ')}.`]
}
