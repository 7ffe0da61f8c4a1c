/** Finding methods by words: of their name, what they answer, their source, and the quantities they take and give. */
import type { Method } from '../../contracts/method.js'

/** Everything a method is found by, in small letters. */
export function methodWords({ name, subject, forms }: Method): string {
  const parts = forms.flatMap((form) => [
    form.summary,
    form.source,
    form.method,
    ...[form.gives, ...form.takes].flatMap((part) => [part, ...(part.fields ?? [])].flatMap(quantityWords)),
  ])
  return [...new Set([name, spaced(name), subject, ...parts])].join(' ').toLowerCase()
}

function quantityWords({ name, kind }: { readonly name: string; readonly kind: string }): readonly string[] {
  return [name, spaced(name), kind]
}

/** `diskLoading` also as `disk loading`. */
function spaced(name: string): string {
  return name.replace(/(?<=[a-z\d])(?=[A-Z])/g, ' ')
}

/** True when every word sought is there. */
export function wordsFit(words: string, sought: string): boolean {
  return sought
    .toLowerCase()
    .split(/\s+/)
    .every((word) => words.includes(word))
}

/** The methods that fit, those first whose name does. */
export function findMethods(methods: readonly Method[], sought: string): readonly Method[] {
  const fitting = methods.filter((method) => wordsFit(methodWords(method), sought))
  const named = fitting.filter(({ name }) => wordsFit(`${name} ${spaced(name)}`.toLowerCase(), sought))
  return [...named, ...fitting.filter((method) => !named.includes(method))]
}
