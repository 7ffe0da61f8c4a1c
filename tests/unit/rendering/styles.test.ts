import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const folder = new URL('../../../shared/rendering/styles/', import.meta.url)
const sheet = (name: string) => readFileSync(new URL(name, folder), 'utf8')

function colours(css: string): Map<string, string> {
  return new Map(Array.from(css.matchAll(/(--[\w-]+):\s*(#[0-9a-f]{6})/g), (match) => [match[1] ?? '', match[2] ?? '']))
}

/** Contrast ratio of WCAG 2.2 (relative luminance of sRGB). */
function contrast(a: string, b: string): number {
  const luminance = (hex: string) => {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
    })
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
  }
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
  return (light + 0.05) / (dark + 0.05)
}

const onPaper = [
  '--ink',
  '--ink-soft',
  '--accent',
  '--warning',
  '--ink-second',
  '--ink-third',
  '--ink-warning',
  '--ink-accent',
]
const onTint = ['--ink', '--ink-soft', '--code-comment', '--code-keyword', '--code-text', '--code-number']

describe('styles', () => {
  it('styles(contrast) is that of the published definition: black on white is 21', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6)
  })

  const light = colours(sheet('tokens.css'))
  const schemes = {
    light,
    dark: new Map([...light, ...colours(sheet('dark.css'))]),
    print: new Map([...light, ...colours(sheet('print.css'))]),
  }

  it.each(Object.entries(schemes))('styles(%s) give every text a contrast of at least 4.5 : 1', (_, scheme) => {
    const pairs = [
      ...onPaper.map((name) => [name, '--paper'] as const),
      ...onTint.map((name) => [name, '--paper-tint'] as const),
      ['--ink', '--paper-note'] as const,
      ['--ink', '--desk'] as const,
      ['--ink-soft', '--desk'] as const,
    ]
    for (const [text, ground] of pairs)
      expect(contrast(scheme.get(text) ?? '', scheme.get(ground) ?? ''), `${text} on ${ground}`).toBeGreaterThanOrEqual(
        4.5,
      )
  })

  it.each(Object.entries(schemes))('styles(%s) give drawn lines a contrast of at least 3 : 1', (_, scheme) => {
    for (const ink of ['ink', 'accent', 'second', 'third', 'faint', 'warning'])
      expect(contrast(scheme.get(`--ink-${ink}`) ?? '', scheme.get('--paper') ?? ''), ink).toBeGreaterThanOrEqual(3)
  })

  it('styles(all) use no variable that is not defined, no shadow and nothing from elsewhere', () => {
    const all = readdirSync(folder).map(sheet).join('\n')
    const defined = new Set(Array.from(all.matchAll(/(--[\w-]+):/g), (match) => match[1]))
    for (const used of all.matchAll(/var\((--[\w-]+)/g)) expect(defined.has(used[1])).toBe(true)
    // A gradient of one colour is a ruled line, the only kind that goes on from one printed page to the next.
    const lines = all.replaceAll('linear-gradient(var(--rule) 0 0)', '')
    expect(lines).not.toMatch(/box-shadow|text-shadow|gradient\(|url\(|@import/)
  })
})
