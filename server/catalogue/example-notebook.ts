/** A notebook to try a method in: what it does and rests on as rationale, its example as a sizing cell. */
import {
  CellId,
  type Method,
  methodAddress,
  type Notebook,
  notebookFormat,
  notebookVersion,
} from '../../shared/contracts/index.js'

/** `undefined` where the method has no such form. */
export function exampleNotebook(method: Method, form: number): Notebook | undefined {
  const shown = method.forms[form]
  if (shown === undefined) return undefined
  const rationale = [
    `## ${method.name}`,
    '',
    shown.summary,
    '',
    `- Equation: \`${shown.equation}\``,
    `- Valid for: ${shown.validity}`,
    `- Source: ${shown.source}`,
    '',
    `All of it stands in the [catalogue of methods](${methodAddress(method.name)}).`,
  ]
  const sizing = [
    `// Example of ${method.name}`,
    '// Numbers without a unit are in SI',
    ...shown.example.cell.split('\n'),
  ]
  return {
    format: notebookFormat,
    version: notebookVersion,
    title: `Trying ${method.name}`,
    cells: [
      { id: CellId.parse('about'), kind: 'rationale', source: rationale },
      { id: CellId.parse('example'), kind: 'sizing', source: sizing },
    ],
  }
}
