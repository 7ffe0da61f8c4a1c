/**
 * The sheet's fonts as text inside a style sheet: a file that opens without a network carries them. Latin parts of the faces that a sheet
 * uses make 290 kB; the mathematics font, another 360 kB, goes along only with formulas.
 */
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'

interface Face {
  readonly family: string
  readonly weight: number
  readonly style: 'normal' | 'italic'
  readonly file: string
}

const face = (family: string, name: string, weight: number, style: Face['style'] = 'normal'): Face => ({
  family,
  weight,
  style,
  file: `@fontsource/${name}/files/${name}-latin-${weight}-${style}.woff2`,
})

const faces: readonly Face[] = [
  face('Barlow', 'barlow', 400),
  face('Barlow', 'barlow', 600),
  face('Barlow Semi Condensed', 'barlow-semi-condensed', 400),
  face('Barlow Semi Condensed', 'barlow-semi-condensed', 500),
  face('Barlow Semi Condensed', 'barlow-semi-condensed', 600),
  face('Source Serif 4', 'source-serif-4', 400),
  face('Source Serif 4', 'source-serif-4', 400, 'italic'),
  face('Source Serif 4', 'source-serif-4', 600),
  face('JetBrains Mono', 'jetbrains-mono', 400),
  face('JetBrains Mono', 'jetbrains-mono', 600),
]
const mathFace = face('Noto Sans Math', 'noto-sans-math', 400)

const written = new Map<string, Promise<string>>()

/** `@font-face` rules with the fonts inside. */
export async function fontRules(withMath: boolean): Promise<string> {
  const rules = await Promise.all([...faces, ...(withMath ? [mathFace] : [])].map(rule))
  return rules.join('\n')
}

function rule(one: Face): Promise<string> {
  const known = written.get(one.file)
  if (known !== undefined) return known
  const made = writeRule(one)
  written.set(one.file, made)
  made.catch(() => written.delete(one.file))
  return made
}

async function writeRule({ family, weight, style, file }: Face): Promise<string> {
  const bytes = await readFile(createRequire(import.meta.url).resolve(file))
  const source = `url(data:font/woff2;base64,${bytes.toString('base64')}) format("woff2")`
  return `@font-face { font-family: "${family}"; font-weight: ${weight}; font-style: ${style}; src: ${source}; }`
}
