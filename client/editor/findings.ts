/** The checker's findings as marks under the text. The sentences are the checker's; cells are named by number, as on the page. */
import type { CellId, Finding } from '../../shared/contracts/index.js'
import { withNumbers } from './language/message-numbers.js'
import { MarkerSeverity, type editor as monacoEditor } from './monaco.js'

export function marksOf(
  model: monacoEditor.ITextModel,
  findings: readonly Finding[],
  numberOf: (cell: CellId) => string | undefined,
): monacoEditor.IMarkerData[] {
  return findings.map((finding) => {
    const line = Math.min(Math.max(finding.line, 1), model.getLineCount())
    const column = Math.min(Math.max(finding.column, 1), model.getLineMaxColumn(line))
    const word = model.getWordAtPosition({ lineNumber: line, column })
    return {
      severity: finding.severity === 'error' ? MarkerSeverity.Error : MarkerSeverity.Warning,
      message: withNumbers(finding.message, numberOf),
      startLineNumber: line,
      startColumn: column,
      endLineNumber: finding.endLine ?? line,
      endColumn: finding.endColumn ?? word?.endColumn ?? column + 1,
    }
  })
}
