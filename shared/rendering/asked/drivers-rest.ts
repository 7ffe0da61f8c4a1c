/** Assumptions that move nothing, were not varied, or stand still to be varied. */
import type { Drivers } from '../../contracts/index.js'
import { element } from '../dom.js'
import { countOf } from '../quantity/words.js'
import { type AssumptionNames, assumptionLink } from './assumption-names.js'
import { unvariedWords } from './drivers-words.js'

/** Null where every assumption moves the number. */
export function renderWithout(
  document: Document,
  { without, unvaried }: Drivers,
  names: AssumptionNames,
): HTMLElement | null {
  const count = without.length + unvaried.length
  if (count === 0) return null
  const list = (items: readonly (readonly (Node | string)[])[]) =>
    element(
      document,
      'ul',
      {},
      items.map((item) => element(document, 'li', {}, item)),
    )
  return element(
    document,
    'details',
    { class: 'drivers-without' },
    element(document, 'summary', {}, `${countOf(count, 'assumption')} without effect or not varied`),
    without.length === 0
      ? null
      : [
          element(document, 'p', {}, 'Varied alone these move nothing:'),
          list(without.map((name) => [assumptionLink(document, names(name))])),
        ],
    unvaried.length === 0
      ? null
      : [
          element(document, 'p', {}, 'Not varied:'),
          list(
            unvaried.map(({ name, reason }) => [assumptionLink(document, names(name)), ` ${unvariedWords[reason]}.`]),
          ),
        ],
  )
}

/** Those that a stop left out; null where none was. */
export function renderLeft(document: Document, { left }: Drivers, names: AssumptionNames): HTMLElement | null {
  if (left.length === 0) return null
  const words = left.map((name) => names(name).label).join(', ')
  return element(document, 'p', { class: 'drivers-left' }, `Stopped before these were varied: ${words}.`)
}

/** Said where no assumption can reach the number. */
export function renderNoAssumptions(document: Document, label: string): HTMLElement {
  return element(
    document,
    'div',
    { class: 'drivers-empty' },
    element(
      document,
      'p',
      {},
      `Drivers vary each assumption alone and show what it does to the number. No assumption can reach ${label}: what it is worked out from is written as plain numbers. State one as an assumption, with the range it may lie in:`,
    ),
    element(
      document,
      'pre',
      { class: 'driver-code', tabindex: 0, role: 'group', 'aria-label': 'Example' },
      element(
        document,
        'code',
        {},
        "const payload = assumption('payload', 400 * u.kg, {\n  range: [350 * u.kg, 450 * u.kg],\n  source: 'who says so',\n})",
      ),
    ),
  )
}
