/** An equation of a doc comment: mathematics where it can be read so, else as it is written. */
import { element } from '../dom.js'
import { mathPieces } from '../formula/math-nodes.js'
import { runsOf, splitOutside } from './equation-runs.js'
import { proseNodes } from './prose-nodes.js'

/** One line per part; parts are told apart by semicolons. */
export function renderEquation(document: Document, equation: string): HTMLElement {
  return element(
    document,
    'div',
    { class: 'equation' },
    partsOf(equation).map((part) => renderPart(document, part)),
  )
}

export interface EquationPart {
  /** `hover`, `low speed`: what the part holds for. */
  readonly label: string
  readonly text: string
  /** Units in which a formula of the trade is written: `lb, ft`. */
  readonly units: string
}

const label = /^([A-Za-z-][\w ,'()<>=-]{1,60}?): (?=\S)/
const tail = / \[([A-Za-z\d/^,. ]+)\]$/

export function partsOf(equation: string): readonly EquationPart[] {
  return splitOutside(equation, /^;\s*/)
    .filter((_, index) => index % 2 === 0)
    .filter((part) => part !== '')
    .map((part) => {
      const labelled = label.exec(part)
      const rest = labelled === null ? part : part.slice(labelled[0].length)
      const units = tail.exec(rest)
      return {
        label: labelled?.[1] ?? '',
        text: units === null ? rest : rest.slice(0, units.index),
        units: units?.[1] ?? '',
      }
    })
}

function renderPart(document: Document, { label, text, units }: EquationPart): HTMLElement {
  return element(
    document,
    'div',
    { class: 'equation-part' },
    label === '' ? null : element(document, 'span', { class: 'equation-label' }, `${label}: `),
    runsOf(text).map((run) =>
      run.box === undefined
        ? element(document, 'span', { class: 'equation-text' }, proseNodes(document, run.text))
        : element(document, 'span', { role: 'math', 'aria-label': run.text }, mathPieces(document, run.box)),
    ),
    units === '' ? null : element(document, 'span', { class: 'equation-units' }, ` in ${units}`),
  )
}
