/** The findings of reading and of checking, put together so that nothing is said twice. */
import type { Finding } from '../../shared/contracts/index.js'
import type { CheckReport, Graph } from './program/index.js'

/**
 * All findings in page order. TypeScript repeats in its own words what reading has found already: complaints at the same place,
 * and about a text that cannot be read at all, are left out.
 */
export function allFindings(graph: Graph, report: CheckReport): Finding[] {
  const page = new Map(graph.cells.map((cell, index) => [cell.id, index]))
  const unreadable = new Set(graph.cells.filter((cell) => cell.code === undefined).map((cell) => cell.id))
  const said = new Set(graph.findings.filter(({ severity }) => severity === 'error').map(placeOf))
  const added = report.findings.filter(
    (finding) => finding.kind !== 'type' || !(unreadable.has(finding.cell) || said.has(placeOf(finding))),
  )
  return [...graph.findings, ...added].sort(
    (a, b) => (page.get(a.cell) ?? 0) - (page.get(b.cell) ?? 0) || a.line - b.line || a.column - b.column,
  )
}

function placeOf({ cell, line, column }: Finding): string {
  return `${cell} ${line}:${column}`
}
