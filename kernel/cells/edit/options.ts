/** The options of a call, as they are written: an object with properties, no object yet, or something that is not ours to change. */
import type { AnyNode, CallExpression, ObjectExpression, Property } from 'acorn'
import type { TextEdit } from './text-edit.js'

export type Options =
  | { readonly kind: 'written'; readonly object: ObjectExpression }
  | { readonly kind: 'none'; readonly after: number }
  | { readonly kind: 'elsewhere'; readonly at: number }

export function readOptions(call: CallExpression): Options {
  const [, value, options] = call.arguments
  if (options === undefined) return { kind: 'none', after: value?.end ?? call.end - 1 }
  return options.type === 'ObjectExpression'
    ? { kind: 'written', object: options }
    : { kind: 'elsewhere', at: options.start }
}

export function propertyOf(object: ObjectExpression, name: string): Property | undefined {
  return object.properties.find((each): each is Property => each.type === 'Property' && keyOf(each) === name)
}

function keyOf({ key, computed }: Property): string | undefined {
  if (computed) return undefined
  return key.type === 'Identifier' ? key.name : key.type === 'Literal' ? String(key.value) : undefined
}

/** New properties at the end of the object, in its own style: on the same line, or each on a line of its own. */
export function addProperties(source: string, options: Options, added: readonly string[]): readonly TextEdit[] {
  if (added.length === 0 || options.kind === 'elsewhere') return []
  if (options.kind === 'none') return [{ from: options.after, to: options.after, insert: `, { ${added.join(', ')} }` }]
  const { object } = options
  const last = object.properties.at(-1)
  if (last === undefined) return [{ from: object.start + 1, to: object.end - 1, insert: ` ${added.join(', ')} ` }]
  const indent = /\n([ \t]*)$/.exec(source.slice(0, last.start))?.[1]
  const comma = commaAfter(source, last.end, object.end - 1)
  const at = comma === undefined ? last.end : comma + 1
  const between = indent === undefined ? ' ' : `\n${indent}`
  const text = added.join(`,${between}`)
  return [
    { from: at, to: at, insert: `${comma === undefined ? ',' : ''}${between}${text}${comma === undefined ? '' : ','}` },
  ]
}

/** Takes a property out with the comma that parts it from the others; comments stay. */
export function removeProperty(source: string, object: ObjectExpression, property: Property): TextEdit {
  const comma = commaAfter(source, property.end, object.end - 1)
  const ownLine = /\n[ \t]*$/.exec(source.slice(0, property.start))?.[0].length ?? 0
  const before = object.properties[object.properties.indexOf(property) - 1]
  if (comma === undefined && before !== undefined) {
    // With a comment between, the comma before stays: one at the end of an object is allowed.
    const lead = commaAfter(source, before.end, property.start) ?? before.end
    const bare = source.slice(lead + 1, property.start).trim() === ''
    return { from: bare ? lead : property.start, to: property.end, insert: '' }
  }
  const end = comma === undefined ? property.end : comma + 1
  const spaces = /^[ \t]*/.exec(source.slice(end))?.[0].length ?? 0
  return ownLine > 0
    ? { from: property.start - ownLine, to: end, insert: '' }
    : { from: property.start, to: end + spaces, insert: '' }
}

/** The comma after a place, comments passed over. */
function commaAfter(source: string, from: number, to: number): number | undefined {
  for (let at = from; at < to; at += 1) {
    if (source[at] === ',') return at
    if (source.startsWith('//', at)) at = endOr(source.indexOf('\n', at), to)
    else if (source.startsWith('/*', at)) at = endOr(source.indexOf('*/', at) + 1, to)
    else if (!/[\s)]/.test(source[at] ?? '')) return undefined
  }
  return undefined
}

const endOr = (at: number, to: number) => (at <= 0 ? to : at)

/** Text as a literal of the source: in the quotes that were there, else in single ones. */
export function textCode(text: string, like?: string): string {
  const quote = like === '"' ? '"' : "'"
  const escaped = JSON.stringify(text).slice(1, -1).replaceAll('\\"', '"').replaceAll(quote, `\\${quote}`)
  return quote + escaped.replaceAll('\u2028', '\\u2028').replaceAll('\u2029', '\\u2029') + quote
}

/** True for text that is written out: one literal, a template without places, or such joined by `+`. */
export function isText(node: AnyNode): boolean {
  if (node.type === 'Literal') return typeof node.value === 'string'
  if (node.type === 'TemplateLiteral') return node.expressions.length === 0
  if (node.type === 'ParenthesizedExpression') return isText(node.expression)
  return node.type === 'BinaryExpression' && node.operator === '+' && isText(node.left as AnyNode) && isText(node.right)
}
