/** How probable it is that each requirement is met. */
import type { RequirementSpread, Spread } from '../../contracts/index.js'
import { element } from '../dom.js'
import { percentRange, percentText } from './percent.js'
import { shareBar } from './share-bar.js'
import type { AskedSubject } from './subject.js'

/** Null where no requirement was computed. */
export function renderProbabilities(
  document: Document,
  subject: AskedSubject,
  { requirements }: Spread,
): HTMLElement | null {
  if (requirements.length === 0) return null
  const own = new Set(subject.limits.map(({ requirement }) => requirement))
  const ordered = [
    ...requirements.filter(({ name }) => own.has(name)),
    ...requirements.filter(({ name }) => !own.has(name)),
  ]
  return element(
    document,
    'ul',
    { class: 'spread-requirements' },
    ordered.map((one) => probabilityLine(document, one, own.has(one.name))),
  )
}

function probabilityLine(document: Document, requirement: RequirementSpread, own: boolean): HTMLElement {
  const { name, probability, failed } = requirement
  return element(
    document,
    'li',
    { 'data-own': own },
    element(document, 'span', { class: 'spread-name' }, name),
    element(document, 'strong', { class: 'spread-number' }, `met in ${percentText(probability)}`),
    shareBar(document, [{ share: probability }]),
    element(
      document,
      'span',
      { class: 'spread-soft' },
      `95 % interval ${percentRange(requirement.between)}${failed === 0 ? '' : failureWords(requirement)}`,
    ),
  )
}

function failureWords({ failed, bounds }: RequirementSpread): string {
  return `; ${failed} samples did not compute: ${percentRange(bounds)}, according to whether they count as not met or as met`
}
