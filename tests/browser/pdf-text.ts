/**
 * The letters on each page of a PDF that Chromium printed, so that a journey can check what stands on paper. No general reader: it knows
 * the plain form in which Chromium writes (PDF 32000-1, sections 7.3, 9.4.3 and 9.10.3), and refuses anything else.
 */
import { inflateSync } from 'node:zlib'

/** Letters of each page in the order of drawing, without any spaces: those on paper are moves of the pen, not letters. */
export function pdfPages(file: Buffer): string[] {
  const objects = readObjects(file)
  const pages = [...objects.values()].filter(({ words }) => /\/Type \/Page\b/.test(words))
  if (pages.length === 0) throw new Error('there is no page in what came; a PDF that Chromium printed was expected')
  return pages.map(({ words }) => lettersOf(words, objects))
}

/** Whether a page has these words, in this order and however they are spaced. */
export const hasWords = (page: string, words: string): boolean => page.includes(words.replaceAll(/\s/g, ''))

interface PdfObject {
  readonly words: string
  readonly stream: Buffer
}

type PdfObjects = ReadonlyMap<string, PdfObject>

function readObjects(file: Buffer): PdfObjects {
  // One byte is one character here, so places in the text are places in the file.
  const text = file.toString('latin1')
  const objects = new Map<string, PdfObject>()
  const heads = /(?:^|\n)(\d+) 0 obj\n/g
  for (let head = heads.exec(text); head !== null; head = heads.exec(text)) {
    const begin = heads.lastIndex
    const end = text.slice(begin).search(/\bendobj\b|>>\s*stream\n/) + begin
    const words = text.slice(begin, end)
    const streamed = /^>>\s*stream\n/.exec(text.slice(end, end + 20))
    const length = Number(/\/Length (\d+)/.exec(words)?.[1] ?? 0)
    const start = end + (streamed?.[0].length ?? 0)
    const bytes = file.subarray(start, start + (streamed === null ? 0 : length))
    const packed = words.includes('/FlateDecode') && !words.includes('/Subtype /Image')
    objects.set(head[1] ?? '', { words, stream: packed ? inflateSync(bytes) : bytes })
    heads.lastIndex = start + bytes.length
  }
  return objects
}

function lettersOf(page: string, objects: PdfObjects): string {
  const content = [...(/\/Contents (\[[^\]]*\]|\d+ 0 R)/.exec(page)?.[1] ?? '').matchAll(/(\d+) 0 R/g)]
    .map(([, id]) => objects.get(id ?? '')?.stream.toString('latin1') ?? '')
    .join('\n')
  const fonts = new Map(
    [...page.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name, id]) => [name ?? '', glyphLetters(id ?? '', objects)]),
  )
  let letters: ReadonlyMap<number, string> | undefined
  let found = ''
  for (const [, font, hex, plain] of content.matchAll(
    /\/(F\d+) [\d.-]+ Tf|<([0-9A-Fa-f]*)> Tj|\(((?:\\[\s\S]|[^\\)])*)\) Tj/g,
  )) {
    if (font !== undefined) letters = fonts.get(font)
    else for (const glyph of glyphsOf(hex, plain)) found += letters?.get(glyph) ?? ''
  }
  return found.replaceAll(/\s/g, '')
}

/** Numbers of glyphs, two bytes each, from either way of writing a string. */
function glyphsOf(hex: string | undefined, plain: string | undefined): number[] {
  const bytes = hex === undefined ? plainBytes(plain ?? '') : Buffer.from(hex, 'hex')
  return Array.from({ length: bytes.length >> 1 }, (_, index) => bytes.readUInt16BE(2 * index))
}

const escapes: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' }

function plainBytes(text: string): Buffer {
  return Buffer.from(
    text.replaceAll(/\\([0-7]{1,3}|[\s\S])/g, (_, escaped: string) =>
      /^[0-7]/.test(escaped) ? String.fromCharCode(Number.parseInt(escaped, 8)) : (escapes[escaped] ?? escaped),
    ),
    'latin1',
  )
}

/** Which letters a font's glyphs stand for, by its ToUnicode table. */
function glyphLetters(font: string, objects: PdfObjects): ReadonlyMap<number, string> {
  const id = /\/ToUnicode (\d+) 0 R/.exec(objects.get(font)?.words ?? '')?.[1] ?? ''
  const table = objects.get(id)?.stream.toString('latin1') ?? ''
  const letters = new Map<number, string>()
  for (const [, rows] of table.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, from, to] of (rows ?? '').matchAll(/<(\w+)> <(\w+)>/g)) letters.set(hexNumber(from), utf16(to))
  for (const [, rows] of table.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, first, last, to] of (rows ?? '').matchAll(/<(\w+)> <(\w+)> <(\w+)>/g))
      for (let glyph = hexNumber(first); glyph <= hexNumber(last); glyph += 1)
        letters.set(glyph, String.fromCodePoint((utf16(to).codePointAt(0) ?? 0) + glyph - hexNumber(first)))
  return letters
}

const hexNumber = (digits: string | undefined) => Number.parseInt(digits ?? '', 16)
const utf16 = (digits: string | undefined) =>
  Buffer.from(digits ?? '', 'hex')
    .swap16()
    .toString('utf16le')
