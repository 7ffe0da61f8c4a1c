/** What spread needs, said while it has nothing to work with. */
import { element } from '../dom.js'
import { countOf } from '../quantity/words.js'

const forms: readonly (readonly [form: string, meaning: string])[] = [
  ['{ normal: 12 * u.kg }', 'standard deviation around the value'],
  ['{ uniform: [350 * u.kg, 450 * u.kg] }', 'anything between, nothing likelier than the rest'],
  ['{ triangular: [350 * u.kg, 450 * u.kg] }', 'the value itself the likeliest, nothing outside'],
  ['{ lognormal: 1.2 }', 'within a factor of 1.2 either way in two cases of three; for scatter between methods'],
]

export function renderNoDistributions(document: Document, ranges: number): HTMLElement {
  return element(
    document,
    'div',
    { class: 'spread-empty' },
    element(
      document,
      'p',
      {},
      `Spread varies all uncertain assumptions together and shows how sure the number is. No assumption of this notebook says how likely its values are${ranges === 0 ? '' : `: ${countOf(ranges, 'assumption')} ${ranges === 1 ? 'has' : 'have'} a range, which says how far a value may lie and nothing about how likely any of it is. What the ranges do is shown below, without probabilities`}.`,
    ),
    element(document, 'p', {}, 'Give an assumption a distribution around its value:'),
    element(
      document,
      'pre',
      { class: 'spread-code', tabindex: 0, role: 'group', 'aria-label': 'Example' },
      element(
        document,
        'code',
        {},
        "const payload = assumption('payload', 400 * u.kg, {\n  distribution: { triangular: [350 * u.kg, 450 * u.kg] },\n  source: 'who says so',\n})",
      ),
    ),
    element(
      document,
      'dl',
      { class: 'spread-forms' },
      forms.map(([form, meaning]) => [
        element(document, 'dt', {}, element(document, 'code', {}, form)),
        element(document, 'dd', {}, meaning),
      ]),
    ),
    element(
      document,
      'p',
      {},
      'Two that go together are tied by their rank correlation: ',
      element(document, 'code', {}, 'correlated: { cellPrice: 0.6 }'),
      '.',
    ),
  )
}
