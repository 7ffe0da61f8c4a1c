/** The compliance matrix: every requirement, its rule, how it is shown, and by how much it is met. */
import type { RequirementRecord } from '../../contracts/index.js'
import { element } from '../dom.js'
import { formatQuantity, numberOf } from '../quantity/index.js'
import type { RequirementRow } from './requirement-rows.js'
import type { CornerMargin, RequirementSureness } from './requirement-sureness.js'
import { rowLink, scrollingTable } from './table-parts.js'

const before = ['Requirement', 'Status', 'Actual', 'Bound', 'Margin']
const whereKnown = ['Worst corner', 'P90']
const after = ['Row', 'Paragraph', 'Means', 'Owner', 'Source']

/** `sureness` adds the columns of what it tells. */
export function renderRequirements(
  document: Document,
  rows: readonly RequirementRow[],
  sureness?: RequirementSureness,
): HTMLElement {
  if (rows.length === 0)
    return element(
      document,
      'p',
      {},
      "Requirements say what has to hold. Write requirement('name', { actual, atMost, unit, source }) in a sizing cell, and it stands here once the cell is computed.",
    )
  const failed = rows.filter(({ record }) => !record.met).length
  const close = rows.filter(({ record }) => isAtRisk(record)).length
  const atRisk = close === 0 ? '' : `, ${close} of them by less than ${leastShare} %`
  return element(
    document,
    'div',
    { class: 'record-table' },
    element(document, 'p', {}, `${rows.length - failed} of ${rows.length} met${atRisk}.`),
    scrollingTable(
      document,
      'Requirements',
      element(
        document,
        'tr',
        {},
        [...before, ...(sureness === undefined ? [] : whereKnown), ...after].map((head) =>
          element(document, 'th', { scope: 'col' }, head),
        ),
      ),
      rows.map((row) => requirementRow(document, row, sureness === undefined ? [] : sureWords(row, rows, sureness))),
    ),
  )
}

function requirementRow(document: Document, row: RequirementRow, sure: readonly string[]): HTMLElement {
  const { record, state, tried } = row
  const { actual, margin, unit } = record
  const shown = (si: RequirementRecord['actual']) => formatQuantity(si, null, unit).text
  const text = (words = '') => element(document, 'td', {}, words)
  return element(
    document,
    'tr',
    { 'data-trial': tried },
    element(document, 'th', { scope: 'row' }, record.name),
    text(`${statusOf(record)}${tried ? '; trial' : ''}`),
    element(document, 'td', { class: 'numeric' }, shown(actual)),
    text(boundsOf(record, shown)),
    element(document, 'td', { class: 'numeric', 'data-margin': record.name }, `${shown(margin)}${shareOf(record)}`),
    sure.map((words) => element(document, 'td', {}, words)),
    element(document, 'td', {}, rowLink(document, row), state === 'current' ? '' : ` ${state}`),
    text(record.paragraph),
    text(record.means),
    text(record.owner),
    text(record.source),
  )
}

/** At the worst corner, and what 90 % of the samples keep at least. */
function sureWords(
  { record }: RequirementRow,
  rows: readonly RequirementRow[],
  { corners, spreads }: RequirementSureness,
): readonly string[] {
  const { name, unit } = record
  if (rows.filter((row) => row.record.name === name).length > 1)
    return whereKnown.map(() => 'not told: two of this name')
  const shown = (si: number) => `${formatQuantity(si, null, unit).text}${si < 0 ? ', not met' : ''}`
  const spread = spreads?.find((one) => one.name === name)
  const corner = corners?.find((one) => one.requirement === name)
  return [
    corners === undefined ? 'nothing uncertain is stated' : cornerWords(corner, shown),
    spreads === undefined
      ? 'no distribution is stated'
      : spread === undefined
        ? 'does not compute'
        : `${shown(spread.marginKept90)}; ${chanceWords(spread.probability)}${failedWords(spread.failed)}`,
  ]
}

function cornerWords(corner: CornerMargin | undefined, shown: (si: number) => string): string {
  if (corner === undefined) return 'does not compute'
  const { margin, failing } = corner
  const left = failing.length === 0 ? '' : `; an end of ${failing.join(', ')} does not compute`
  return `${margin === undefined ? 'does not compute' : shown(margin)}${left}`
}

const chanceWords = (probability: number) => `met in ${Number((100 * probability).toPrecision(3))} % of samples`
const failedWords = (failed: number) => (failed === 0 ? '' : `, ${failed} do not compute`)

function boundsOf({ atLeast, atMost }: RequirementRecord, shown: (si: RequirementRecord['actual']) => string): string {
  const low = atLeast === undefined ? [] : [`at least ${shown(atLeast)}`]
  const high = atMost === undefined ? [] : [`at most ${shown(atMost)}`]
  return [...low, ...high].join(', ')
}

function statusOf(record: RequirementRecord): string {
  if (!record.met) return 'not met'
  return isAtRisk(record) ? `met, at risk: less than ${leastShare} % to spare` : 'met'
}

/** A margin below this share of its bound is called at risk [%]. Common practice of early design, no source. */
const leastShare = 5

/** Met by little. Where the bound is 0 there is no share, so nothing is said. */
export function isAtRisk(record: RequirementRecord): boolean {
  const share = marginShare(record)
  return record.met && share !== undefined && share < leastShare
}

function shareOf(record: RequirementRecord): string {
  const share = marginShare(record)
  return share === undefined ? '' : ` (${share.toFixed(1)} %)`
}

/** In per cent of the nearer bound; absent where that is 0. */
function marginShare({ actual, margin, atLeast, atMost }: RequirementRecord): number | undefined {
  const given = numberOf(actual)
  const bounds = [atLeast, atMost].flatMap((bound) => (bound === undefined ? [] : [numberOf(bound)]))
  const bound = bounds.sort((one, other) => Math.abs(one - given) - Math.abs(other - given))[0]
  if (bound === undefined || bound === 0) return undefined
  const share = (100 * numberOf(margin)) / Math.abs(bound)
  return Number.isFinite(share) ? share : undefined
}
