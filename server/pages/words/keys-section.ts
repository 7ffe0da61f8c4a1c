/** Keys as tables, one for each place where they work, straight from the one table of keys. */
import { type KeyEntry, type KeyPlace, keyTable } from '../../../shared/contracts/index.js'
import { type Html, html } from '../html.js'

const places: readonly (readonly [place: KeyPlace, where: string])[] = [
  ['page', 'Anywhere on the sheet'],
  ['cell', 'On a cell'],
  ['editor', 'Writing in a cell'],
  ['figure', 'On the drawing of a figure'],
  ['search', 'In the search field'],
  ['drag', 'While a cell is dragged'],
  ['drawer', 'In the side drawer'],
]

export function keyTables(): readonly Html[] {
  return places.map(
    ([place, where]) => html`<table class="keys">
<caption>${where}</caption>
<thead><tr><th scope="col">Key</th><th scope="col">What it does</th></tr></thead>
<tbody>
${keyTable.filter((entry) => entry.where === place).map(row)}</tbody>
</table>`,
  )
}

function row({ keys, does }: KeyEntry): Html {
  const combinations = keys.split(', ').map((keys, index) => html`${index === 0 ? '' : ' or '}${combination(keys)}`)
  return html`<tr><td>${combinations}</td><td>${does}</td></tr>\n`
}

function combination(keys: string): Html {
  return html`<span class="combination">${keys.split('+').map((key, index) => html`${index === 0 ? '' : '+'}<kbd>${engraved(key)}</kbd>`)}</span>`
}

/** As it stands on the key: `ArrowUp` is an arrow. */
const engraved = (key: string) => engravings[key] ?? key
const engravings: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  Escape: 'Esc',
}
