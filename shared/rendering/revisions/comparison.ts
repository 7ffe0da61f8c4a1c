/** A comparison on one screen: what changed, in the order in which a reviewer asks, and nothing of what did not. */
import type {
  AssumptionChange,
  CellChange,
  FigureChange,
  LineChange,
  NumberChange,
  RevisionComparison,
} from '../../contracts/index.js'
import { type Child, element } from '../dom.js'
import { renderFigure } from '../figure/render-figure.js'
import { countOf, humaniseName, typesetNodes } from '../quantity/index.js'
import { marginSide, numberRow, partWords } from './change-words.js'
import { isolated } from './summary.js'

export interface ComparisonOptions {
  /** Both pictures of each figure that changed; else where they can be had. */
  readonly pictures: boolean
  /** Address of this page with the pictures. */
  readonly picturesAt: string
}

/** Other numbers than results stay folded beyond this many. */
const shownNumbers = 12

export function renderComparison(
  document: Document,
  comparison: RevisionComparison,
  options: ComparisonOptions,
): HTMLElement {
  const sections = [
    numbers(document, comparison),
    requirements(document, comparison),
    assumptions(document, comparison),
    text(document, comparison),
    advisories(document, comparison),
    methods(document, comparison),
    figures(document, comparison, options),
  ].filter((section) => section !== null)
  return element(
    document,
    'div',
    { class: 'comparison' },
    sections.length === 0
      ? element(
          document,
          'p',
          { class: 'nothing-changed' },
          'Nothing changed: text, assumptions, results, margins, advisories and figures are the same.',
        )
      : sections,
    element(document, 'p', { class: 'the-same' }, sameWords(comparison)),
  )
}

function section(document: Document, title: string, ...children: Child[]): HTMLElement {
  const id = `compare-${title.split(' ')[0]?.toLowerCase() ?? ''}`
  return element(document, 'section', { 'aria-labelledby': id }, element(document, 'h2', { id }, title), ...children)
}

function table(document: Document, label: string, heads: readonly string[], rows: readonly HTMLElement[]): HTMLElement {
  return element(
    document,
    'div',
    { class: 'compare-scroll', tabindex: 0, role: 'group', 'aria-label': label },
    element(
      document,
      'table',
      { class: 'compare-table' },
      element(
        document,
        'thead',
        {},
        element(
          document,
          'tr',
          {},
          heads.map((head) => element(document, 'th', { scope: 'col' }, head)),
        ),
      ),
      element(document, 'tbody', {}, rows),
    ),
  )
}

function row(document: Document, name: Child, ...cells: Child[]): HTMLElement {
  return element(
    document,
    'tr',
    {},
    element(document, 'th', { scope: 'row' }, name),
    cells.map((cell) => element(document, 'td', {}, cell)),
  )
}

function numbers(document: Document, { numbers: changes, from, to }: RevisionComparison): HTMLElement | null {
  if (changes.length === 0) return null
  const stated = changes.filter((change) => change.stated)
  const first = stated.length > 0 ? stated : changes.slice(0, shownNumbers)
  const rest = changes.filter((change) => !first.includes(change))
  const heads = ['Number', from, to, 'Change', 'Per cent']
  const rows = (list: readonly NumberChange[]) => list.map((change) => numberLine(document, change))
  return section(
    document,
    'Results',
    table(document, 'Results', heads, rows(first)),
    rest.length === 0
      ? null
      : element(
          document,
          'details',
          {},
          element(document, 'summary', {}, `${countOf(rest.length, 'other number')}`),
          table(document, 'Other numbers', heads, rows(rest)),
        ),
  )
}

function numberLine(document: Document, change: NumberChange): HTMLElement {
  const label = change.label ?? change.name.split('.').map(humaniseName).join(', ')
  return row(
    document,
    typesetNodes(document, label),
    ...numberRow(change).map((words) => typesetNodes(document, words)),
  )
}

function requirements(document: Document, { requirements: changes, from, to }: RevisionComparison): HTMLElement | null {
  if (changes.length === 0) return null
  const rows = changes.map((change) =>
    row(
      document,
      isolated(document, change.name),
      typesetNodes(document, marginSide(change.from)),
      typesetNodes(document, marginSide(change.to)),
    ),
  )
  return section(document, 'Requirements', table(document, 'Requirements', ['Requirement', from, to], rows))
}

function assumptions(document: Document, { assumptions: changes, from, to }: RevisionComparison): HTMLElement | null {
  if (changes.length === 0) return null
  const rows = changes.flatMap((change) => assumptionRows(document, change))
  return section(document, 'Assumptions', table(document, 'Assumptions', ['Assumption', 'What', from, to], rows))
}

function assumptionRows(document: Document, change: AssumptionChange): HTMLElement[] {
  const whole = change.from === undefined || change.to === undefined
  const parts = whole ? ['value'] : change.differs
  return parts.map((part) => {
    const [from, to] = [change.from, change.to].map((record) => partWords(part, record, change.dimension))
    const words = (side: string | undefined) => element(document, 'bdi', {}, typesetNodes(document, side ?? ''))
    const what = whole ? (change.from === undefined ? 'added' : 'removed') : part
    return row(document, humaniseName(change.name), what, words(from), words(to))
  })
}

function text(document: Document, { fields, cells }: RevisionComparison): HTMLElement | null {
  if (fields.length + cells.length === 0) return null
  return section(
    document,
    'Text',
    fields.length === 0
      ? null
      : element(
          document,
          'dl',
          { class: 'field-changes' },
          fields.map(({ field, from, to }) =>
            element(
              document,
              'div',
              {},
              element(document, 'dt', {}, field),
              element(
                document,
                'dd',
                {},
                element(document, 'del', {}, from === '' ? 'empty' : isolated(document, from)),
                ' ',
                element(document, 'ins', {}, to === '' ? 'empty' : isolated(document, to)),
              ),
            ),
          ),
        ),
    cells.map((change) => cellChange(document, change)),
  )
}

function cellChange(document: Document, change: CellChange): HTMLElement {
  const heading = element(
    document,
    'h3',
    {},
    element(document, 'span', { class: 'change-word' }, changeTitle(change)),
    ' ',
    isolated(document, change.heading),
  )
  if (change.lines.length === 0) return element(document, 'div', { class: 'cell-change' }, heading)
  return element(
    document,
    'div',
    { class: 'cell-change' },
    heading,
    element(
      document,
      'pre',
      {
        class: 'line-changes',
        tabindex: 0,
        role: 'group',
        'aria-label': `Lines of cell ${change.to ?? change.from ?? ''}`,
      },
      change.lines.map((line) => lineChange(document, line)),
    ),
  )
}

/** `Cell 4 changed and moved from 6`. */
function changeTitle({ from, to, change, moved }: CellChange): string {
  const number = `Cell ${to ?? from ?? ''}`
  const place = moved && from !== to ? ` from ${from ?? ''}` : ''
  if (change === 'moved') return `${number} moved${place}`
  return `${number} ${change}${change === 'changed' && moved ? ` and moved${place}` : ''}`
}

const marks = { kept: '  ', removed: '− ', added: '+ ' } as const

function lineChange(document: Document, line: LineChange): HTMLElement {
  if (line.kind === 'left out')
    return element(
      document,
      'span',
      { class: 'line-change', 'data-kind': 'left-out' },
      `${countOf(line.lines, 'line')} the same\n`,
    )
  const tag = { kept: 'span', removed: 'del', added: 'ins' }[line.kind]
  return element(
    document,
    tag,
    { class: 'line-change', 'data-kind': line.kind },
    element(document, 'span', { 'aria-hidden': 'true' }, marks[line.kind]),
    line.text,
    '\n',
  )
}

function advisories(document: Document, { advisories: changes }: RevisionComparison): HTMLElement | null {
  if (changes.length === 0) return null
  const items = changes.map(({ change, number, advisory }) =>
    element(
      document,
      'li',
      {},
      element(document, 'strong', {}, change),
      ` in cell ${number}: ${advisory.method}: `,
      isolated(document, advisory.message),
    ),
  )
  return section(document, 'Advisories', element(document, 'ul', { class: 'advisory-changes' }, items))
}

function methods(
  document: Document,
  { kernelChanged, methods: { added, removed } }: RevisionComparison,
): HTMLElement | null {
  if (!kernelChanged && added.length + removed.length === 0) return null
  const list = (word: string, names: readonly string[]) =>
    names.length === 0
      ? null
      : element(document, 'li', {}, element(document, 'strong', {}, word), ` ${names.join(', ')}`)
  return section(
    document,
    'Methods',
    element(
      document,
      'ul',
      {},
      kernelChanged ? element(document, 'li', {}, 'The kernel that computed them is another version.') : null,
      list('now used:', added),
      list('no longer used:', removed),
    ),
  )
}

function figures(
  document: Document,
  { figures: changes, from, to }: RevisionComparison,
  options: ComparisonOptions,
): HTMLElement | null {
  if (changes.length === 0) return null
  if (!options.pictures)
    return section(
      document,
      'Figures',
      element(
        document,
        'ul',
        {},
        changes.map((change) => element(document, 'li', {}, figureTitle(document, change))),
      ),
      element(document, 'p', {}, element(document, 'a', { href: options.picturesAt }, 'Show both pictures of each')),
    )
  const side = (label: string, figure: FigureChange['from']) =>
    element(
      document,
      'div',
      {},
      element(document, 'h4', {}, label),
      figure === undefined ? element(document, 'p', {}, 'none') : renderFigure(document, figure, { width: 480 }),
    )
  return section(
    document,
    'Figures',
    changes.map((change) =>
      element(
        document,
        'div',
        { class: 'figure-change' },
        element(document, 'h3', {}, figureTitle(document, change)),
        element(document, 'div', { class: 'figure-pair' }, side(from, change.from), side(to, change.to)),
      ),
    ),
  )
}

function figureTitle(document: Document, { number, place, change, caption }: FigureChange): Child[] {
  return [`Cell ${number}, figure ${place} ${change}: `, isolated(document, caption)]
}

/** `The same: 12 cells, 30 assumptions, ...` */
function sameWords({ same }: RevisionComparison): string {
  const counts = [
    countOf(same.cells, 'cell'),
    countOf(same.assumptions, 'assumption'),
    countOf(same.numbers, 'number'),
    countOf(same.requirements, 'requirement'),
    countOf(same.figures, 'figure'),
  ]
  return `The same on both sides: ${counts.join(', ')}.`
}
