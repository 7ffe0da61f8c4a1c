/**
 * The sheet as one HTML file that opens anywhere without a network: drawn by the same renderer, with its style and fonts inside, no script,
 * and a policy of its own that lets it fetch nothing. After the sheet stand the register, the requirements, the methods and the cautions.
 */
import { parseHTML } from 'linkedom'
import {
  cautionLine,
  type Method,
  methodOfAddress,
  type Provenance,
  provenanceLine,
  shortFingerprint,
} from '../../shared/contracts/index.js'
import { type Readers, renderSheet, type SheetView, usedMethods } from '../../shared/rendering/index.js'
import { escapeHtml } from '../pages/html.js'
import { appendices } from './appendices.js'
import { fontRules } from './fonts.js'
import { sheetStyle } from './sheet-style.js'

export interface SheetFileParts {
  readonly view: SheetView
  readonly provenance: Provenance
  /** The whole catalogue; those that the sheet uses go along. */
  readonly methods: readonly Method[]
  readonly readers: Readers
}

/** Nothing is fetched and nothing runs; style and fonts are in the file. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'"

export async function sheetFile({ view, provenance, methods, readers }: SheetFileParts): Promise<string> {
  const { document } = parseHTML('<!doctype html><html><head></head><body></body></html>')
  const used = methodsOfSheet(view, methods)
  const sheet = renderSheet(document, { ...view, fingerprint: shortFingerprint(provenance.fingerprint) })
  const parts = [sheet, ...appendices(document, { view, provenance, methods: used, readers })]
  for (const part of parts) redirectLinks(part, new Set(used.map(({ name }) => name)))
  const body = parts.map((part) => part.outerHTML).join('\n')
  const style = [await fontRules(body.includes('<math')), await sheetStyle(), footOfPages(provenance)].join('\n')
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="content-security-policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="description" content="${escapeHtml(`${provenanceLine(provenance)}. ${cautionLine}`)}">
<meta name="fingerprint" content="${provenance.fingerprint}">
<title>${escapeHtml(provenance.title.trim() === '' ? 'Untitled' : provenance.title)}</title>
<style>
${style.replaceAll('</', '<\\/')}
</style>
</head>
<body>
${body}
</body>
</html>
`
}

/** Pages after the sheet have no title block: the foot of every page says what it belongs to. */
function footOfPages(provenance: Provenance): string {
  const words = `${provenanceLine(provenance)} · concept estimate, see the cautions`
  return `@page { @bottom-left { content: ${cssString(words)}; font: 400 7.5pt "Barlow Semi Condensed", sans-serif; color: #3c4146; } }`
}

/** Whatever is not plain is written as its number, so that no title can end the text it stands in. */
function cssString(text: string): string {
  const short = [...text].length > 160 ? `${[...text].slice(0, 160).join('')} …` : text
  return `"${short.replace(/[^\w .,()·-]/gu, (character) => `\\${(character.codePointAt(0) ?? 32).toString(16)} `)}"`
}

/** Those that its cells call, and those that spoke up in what they called. */
function methodsOfSheet({ cells }: SheetView, methods: readonly Method[]): readonly Method[] {
  const names = new Set(
    cells.flatMap(({ kind, source, result }) => [
      ...(kind === 'sizing' ? usedMethods(source) : []),
      ...(result?.advisories ?? []).map(({ method }) => method),
    ]),
  )
  return methods.filter(({ name }) => names.has(name))
}

type Part = ReturnType<typeof renderSheet>

/** Places of the server become places of the file; a method that is not in it stays as text. */
function redirectLinks(part: Part, methods: ReadonlySet<string>): void {
  for (const link of part.querySelectorAll('a[href]')) {
    const address = link.getAttribute('href') ?? ''
    const method = methodOfAddress(address)
    if (address === '/cautions') link.setAttribute('href', '#cautions')
    else if (method !== undefined && methods.has(method)) link.setAttribute('href', `#method-${method}`)
    else if (address.startsWith('/')) link.removeAttribute('href')
  }
}
