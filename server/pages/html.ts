/** HTML as text with every value escaped; only what this tag made itself passes unescaped. */

export class Html {
  readonly text: string

  constructor(text: string) {
    this.text = text
  }
}

type Value = Html | string | number | undefined | readonly Value[]

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => entities[character] ?? character)
}

export function html(strings: TemplateStringsArray, ...values: readonly Value[]): Html {
  return new Html(strings.reduce((text, part, index) => text + write(values[index - 1]) + part))
}

function write(value: Value): string {
  if (value === undefined) return ''
  if (value instanceof Html) return value.text
  if (typeof value === 'object') return value.map(write).join('')
  return escapeHtml(String(value))
}

/** JSON that can stand inside a script element: no `<`, so neither an end tag nor a comment can begin. */
export function jsonForScript(value: unknown): Html {
  return new Html(
    JSON.stringify(value)
      .replace(/</g, '\\u003c')
      .replace(/\u2028/g, '\\u2028')
      .replace(/\u2029/g, '\\u2029'),
  )
}
