/** Requirement lines: a mark, the word, the margin. */
import type { RequirementRecord } from '../../contracts/index.js'
import { element } from '../dom.js'
import { formatQuantity, numberOf, typesetNodes } from '../quantity/index.js'
import type { TrialMarks } from '../view.js'

export function renderRequirements(
  document: Document,
  requirements: readonly RequirementRecord[],
  trial?: TrialMarks,
): HTMLElement | null {
  if (requirements.length === 0) return null
  return element(
    document,
    'ul',
    { class: 'requirements', 'aria-label': 'Requirements' },
    requirements.map((requirement) =>
      requirementLine(document, requirement, trial?.requirements.includes(requirement.name) === true),
    ),
  )
}

function requirementLine(document: Document, requirement: RequirementRecord, tried: boolean): HTMLElement {
  const { met } = requirement
  return element(
    document,
    'li',
    { class: 'requirement', 'data-name': requirement.name, 'data-met': met, 'data-trial': tried },
    element(document, 'span', { class: 'mark', 'aria-hidden': 'true' }, met ? '✓' : '✕'),
    ' ',
    element(document, 'span', { class: 'requirement-name' }, requirement.name),
    ': ',
    element(document, 'strong', { class: 'requirement-word' }, met ? 'met' : 'not met'),
    tried ? [' ', element(document, 'span', { class: 'tried' }, 'trial')] : null,
    ' ',
    element(document, 'span', { class: 'requirement-margin' }, typesetNodes(document, marginWords(requirement))),
  )
}

/** `margin 2 min; 22 min, at least 20 min`, or `short by 0.6 m; 14.6 m, at most 14 m`. */
export function marginWords(requirement: RequirementRecord): string {
  const shown = (si: RequirementRecord['actual']) => formatQuantity(si, null, requirement.unit ?? '1').text
  const margin = numberOf(requirement.margin)
  const distance = shown(Math.abs(margin))
  const { atLeast, atMost } = requirement
  const bounds = [
    atLeast === undefined ? null : `at least ${shown(atLeast)}`,
    atMost === undefined ? null : `at most ${shown(atMost)}`,
  ].filter((bound) => bound !== null)
  const lead = requirement.met ? `margin ${distance}` : `misses by ${distance}`
  return `${lead} (${[shown(requirement.actual), ...bounds].join('; ')})`
}
