/** Words and keys: what the sheet calls things, how it is read, written and printed, and every key. Readable without script. */
import type { ClientBuild } from '../client-build.js'
import { type Html, html } from '../html.js'
import { caution, layout, withPlainStyle } from '../layout.js'
import { askingGuide, cellGuide, printGuide, readingGuide, troubleGuide } from './guide.js'
import { keyTables } from './keys-section.js'
import { unitLimits } from './limits-section.js'
import { terms } from './terms.js'
import { unitList, unitRules } from './units-section.js'

const sections: readonly (readonly [id: string, title: string, content: Html])[] = [
  [
    'words',
    'Words of the sheet',
    html`<dl class="terms">${terms.map(({ word, meaning }) => html`<dt>${word}</dt><dd>${meaning}</dd>\n`)}</dl>`,
  ],
  ['cells', 'How a cell is read', cellGuide],
  ['units', 'Numbers and units', html`${unitRules}${unitList}`],
  ['unit-limits', 'What the checker of units cannot know', unitLimits],
  ['numbers', 'Following numbers and figures', readingGuide],
  ['asking', 'Asking a number, trying a value', askingGuide],
  [
    'keys',
    'Keys',
    html`<p>Ctrl is the command key on keyboards that have one. Tab goes through the sheet; every button of it can be reached so.</p>
<div class="key-tables">${keyTables()}</div>`,
  ],
  ['print', 'Printing and passing on', printGuide],
  ['failing', 'When something fails', troubleGuide],
]

export function wordsPage(build: ClientBuild): string {
  const body = html`<main class="plain words"><header><p class="mark"><a href="/">Hoverfolio</a></p><h1>Words and keys</h1>
${caution}</header>
<nav aria-label="On this page"><ul class="contents">${sections.map(([id, title]) => html`<li><a href="#${id}">${title}</a></li>`)}</ul></nav>
${sections.map(
  ([id, title, content]) => html`<section id="${id}" aria-labelledby="${id}-title"><h2 id="${id}-title">${title}</h2>
${content}</section>\n`,
)}
<p class="ways"><a href="/">All notebooks</a> <a href="/methods">Methods</a></p></main>`
  return layout({ title: 'Words and keys', assets: withPlainStyle(build.entry('list')), body })
}
