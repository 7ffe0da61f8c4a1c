/** From TypeScript's pieces of text to a name's documentation as data. */
import type ts from 'typescript'
import type { Documentation } from './protocol.js'

export function textOf(parts: readonly ts.SymbolDisplayPart[] | undefined): string {
  return (parts ?? []).map((part) => part.text).join('')
}

/** TypeScript leads with the kind of the name in brackets, which says nothing to an engineer. */
export function displayOf(parts: readonly ts.SymbolDisplayPart[] | undefined): string {
  return textOf(parts)
    .replace(/^\((?:alias|property|method|parameter|local var|local function|local const|getter|enum member)\) /, '')
    .replace(/^function /, '')
    .replace(/\n(?:import|export) [\s\S]*$/, '')
    .trim()
}

export function tagsOf(tags: readonly ts.JSDocTagInfo[] | undefined): Documentation['tags'] {
  return (tags ?? []).map((tag) => ({ tag: tag.name, text: textOf(tag.text).trim() }))
}
