/** The frame of every page. */
import { cautionLine } from '../../shared/contracts/index.js'
import type { PageAssets } from './client-build.js'
import { type Html, html } from './html.js'

export interface PageParts {
  readonly title: string
  readonly assets: PageAssets
  readonly body: Html
}

export function layout({ title, assets, body }: PageParts): string {
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title} · Hoverfolio</title>
${assets.styles.map((address) => html`<link rel="stylesheet" href="${address}">\n`)}${assets.preloads.map(
  (address) => html`<link rel="modulepreload" href="${address}">\n`,
)}${assets.scripts.map((address) => html`<script type="module" src="${address}"></script>\n`)}</head>
<body>
${body}
</body>
</html>
`.text
}

/** Assets of a page with the server's own style sheet before them. */
export function withPlainStyle(assets: PageAssets): PageAssets {
  return { ...assets, styles: ['/style/pages.css', ...assets.styles] }
}

/** At the end of a page: the way on. */
export const ways: Html = html`<p class="ways"><a href="/">All notebooks</a> <a href="/words">Words and keys</a> <a href="/methods">Methods</a></p>`

/** The caution in one line, with the way to its full text. */
export const caution: Html = html`<p class="plain-caution">${cautionLine} <a href="/cautions">Cautions in full</a></p>`
