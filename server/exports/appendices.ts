/** What follows the sheet in a file of its own: register, requirements, methods, cautions. */
import { cautionInFull, type Method, type Provenance, provenanceLine } from '../../shared/contracts/index.js'
import {
  assumptionRows,
  element,
  formatQuantity,
  humaniseName,
  marginWords,
  type Readers,
  rangeWords,
  renderMethod,
  requirementRows,
  type SheetView,
  typesetNodes,
} from '../../shared/rendering/index.js'
import { sureness } from './register-csv.js'
import { tableUnit } from './table-file.js'

type Document = Parameters<typeof element>[0]
type Element = ReturnType<typeof element>
type Child = Parameters<typeof element>[3]

export interface AppendixParts {
  readonly view: SheetView
  readonly provenance: Provenance
  readonly methods: readonly Method[]
  readonly readers: Readers
}

export function appendices(document: Document, parts: AppendixParts): readonly Element[] {
  return [
    register(document, parts),
    requirements(document, parts),
    methodsUsed(document, parts.methods),
    cautions(document, parts.provenance),
  ].filter((part) => part !== null)
}

function register(document: Document, { view, readers }: AppendixParts): Element | null {
  const rows = assumptionRows(view, readers)
  if (rows.length === 0) return null
  const heads = ['Assumption', 'Value', 'Range or distribution', 'Source', 'Note', 'Owner', 'Cell', 'Used in']
  const body = rows.map(({ record, dimension, cell, number, usedIn }): Child[] => [
    humaniseName(record.name),
    typesetNodes(document, formatQuantity(record.value, dimension, record.unit).text),
    typesetNodes(
      document,
      [rangeWords(record, dimension), sureness(record, tableUnit(record.unit, dimension))]
        .filter((text) => text !== '')
        .join('; '),
    ),
    record.source ?? element(document, 'em', {}, 'none given'),
    record.note ?? '',
    record.owner ?? '',
    element(document, 'a', { href: `#cell-${cell}` }, number),
    usedIn.flatMap((use, index): Child[] => [
      index === 0 ? '' : ', ',
      element(document, 'a', { href: `#cell-${use.cell}` }, use.number),
    ]),
  ])
  return section(document, 'register', 'Register of assumptions', [table(document, heads, body)])
}

function requirements(document: Document, { view }: AppendixParts): Element | null {
  const rows = requirementRows(view)
  if (rows.length === 0) return null
  const heads = ['Requirement', 'Rule paragraph', 'Means', 'Met', 'Margin', 'Source', 'Owner', 'Cell']
  const body = rows.map(({ record, cell, number }): Child[] => [
    record.name,
    record.paragraph ?? '',
    record.means ?? '',
    element(document, 'strong', {}, record.met ? '✓ met' : '✕ not met'),
    typesetNodes(document, marginWords(record)),
    record.source ?? element(document, 'em', {}, 'none given'),
    record.owner ?? '',
    element(document, 'a', { href: `#cell-${cell}` }, number),
  ])
  return section(document, 'requirements', 'Requirements', [table(document, heads, body)])
}

function methodsUsed(document: Document, methods: readonly Method[]): Element | null {
  if (methods.length === 0) return null
  return section(
    document,
    'methods',
    'Methods used',
    methods.flatMap((method) => [
      element(document, 'h3', { id: `method-${method.name}` }, method.name),
      renderMethod(document, method),
    ]),
  )
}

function cautions(document: Document, provenance: Provenance): Element {
  return section(document, 'cautions', 'Cautions', [
    ...cautionInFull.map((sentence) => element(document, 'p', {}, sentence)),
    element(
      document,
      'p',
      { class: 'appendix-end' },
      `${provenanceLine(provenance)}. In full: ${provenance.fingerprint}.`,
    ),
  ])
}

function section(document: Document, id: string, title: string, content: readonly Element[]): Element {
  return element(
    document,
    'section',
    { class: 'appendix', id, 'aria-labelledby': `${id}-title` },
    element(document, 'h2', { id: `${id}-title` }, title),
    content,
  )
}

function table(document: Document, heads: readonly string[], rows: readonly (readonly Child[])[]): Element {
  const head = heads.map((text) => element(document, 'th', { scope: 'col' }, text))
  const body = rows.map((row) =>
    element(
      document,
      'tr',
      {},
      row.map((cell) => element(document, 'td', {}, cell)),
    ),
  )
  return element(
    document,
    'div',
    { class: 'appendix-field', tabindex: 0, role: 'group', 'aria-label': 'Table' },
    element(
      document,
      'table',
      {},
      element(document, 'thead', {}, element(document, 'tr', {}, head)),
      element(document, 'tbody', {}, body),
    ),
  )
}
