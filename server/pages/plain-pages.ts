/** Cautions in full, and a refusal as a page. */
import { cautionInFull } from '../../shared/contracts/index.js'
import type { ClientBuild } from './client-build.js'
import { html } from './html.js'
import { caution, layout, ways, withPlainStyle } from './layout.js'

export function cautionsPage(build: ClientBuild): string {
  const body = html`<main class="plain"><header><p class="mark"><a href="/">Hoverfolio</a></p><h1>Cautions</h1></header>
${cautionInFull.map((sentence) => html`<p>${sentence}</p>`)}
${ways}</main>`
  return layout({ title: 'Cautions', assets: withPlainStyle(build.entry('list')), body })
}

export function refusalPage(message: string, build: ClientBuild): string {
  const body = html`<main class="plain"><header><p class="mark"><a href="/">Hoverfolio</a></p><h1>This did not work</h1></header>
<p class="refusal">${message}</p>
${caution}
${ways}</main>`
  return layout({ title: 'Refused', assets: withPlainStyle(build.entry('list')), body })
}
