/** A cell's source as static text, one element per line so that findings can point at it. */
import type { Finding } from '../../contracts/index.js'
import { element } from '../dom.js'
import { type Token, tokenLines } from './tokens.js'

/** Beyond so many lines the text is not coloured: the browser lays out one piece of text a line in a fraction of the time. */
const colouredLines = 1000

/** `<pre><code>` with `<span class="line" id="cell-ID-line-N">` per line; lines that a finding names carry its severity. */
export function renderCode(
  document: Document,
  cell: { readonly id: string; readonly source: string; readonly findings: readonly Finding[] },
): HTMLElement {
  const code = element(document, 'code', { class: 'typescript' })
  const lines = linesOf(cell.source.replace(/\n+$/, ''))
  const severities = severityByLine(cell.findings)
  lines.forEach((tokens, index) => {
    const number = index + 1
    const severity = severities.get(number)
    const line = element(document, 'span', {
      class: 'line',
      id: `cell-${cell.id}-line-${number}`,
      'data-line': number,
      'data-severity': severity,
    })
    for (const token of tokens)
      line.append(token.kind === 'plain' ? token.text : element(document, 'span', { class: token.kind }, token.text))
    // The break belongs to its line: lines are blocks, so that a long one can wrap under its own number.
    if (index < lines.length - 1) line.append('\n')
    code.append(line)
  })
  return element(
    document,
    'pre',
    { class: 'source', tabindex: 0, role: 'group', 'aria-label': 'Source of the cell' },
    code,
  )
}

function linesOf(source: string): readonly (readonly Token[])[] {
  const lines = source.split('\n')
  return lines.length <= colouredLines ? tokenLines(source) : lines.map((text) => [{ kind: 'plain', text }])
}

/** An error counts more than what else is said about a line. */
function severityByLine(findings: readonly Finding[]): ReadonlyMap<number, Finding['severity']> {
  const severities = new Map<number, Finding['severity']>()
  for (const { line, severity } of findings)
    if (severity === 'error' || !severities.has(line)) severities.set(line, severity)
  return severities
}
