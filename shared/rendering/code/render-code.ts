/** A cell's source as static text, one element per line so that findings can point at it. */
import type { Finding } from '../../contracts/index.js'
import { element } from '../dom.js'
import { tokenLines } from './tokens.js'

/** `<pre><code>` with `<span class="line" id="cell-ID-line-N">` per line; lines that a finding names carry its severity. */
export function renderCode(
  document: Document,
  cell: { readonly id: string; readonly source: string; readonly findings: readonly Finding[] },
): HTMLElement {
  const code = element(document, 'code', { class: 'typescript' })
  const lines = tokenLines(cell.source.replace(/\n+$/, ''))
  lines.forEach((tokens, index) => {
    const number = index + 1
    const found = cell.findings.filter((finding) => finding.line === number)
    const severity = found.some((finding) => finding.severity === 'error') ? 'error' : found[0]?.severity
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
