/** What could stand at the caret. */
import type ts from 'typescript'
import type { CellLanguage } from '../../../kernel/cells/check/index.js'
import { absentNames, languageNames } from '../../../kernel/cells/program/index.js'
import { displayOf, tagsOf, textOf } from './documentation.js'
import type { At, Documentation, Proposal } from './protocol.js'

/** More are of no use to a reader, and every one costs time on the way. */
const most = 400

export function proposalsAt(cells: CellLanguage, { cell, offset }: At): readonly Proposal[] {
  const found = cells.service.getCompletionsAtPosition(cells.fileOf(cell), offset, {
    includeCompletionsWithInsertText: false,
    includeCompletionsForModuleExports: false,
  })
  if (found === undefined) return []
  const proposals: Proposal[] = []
  for (const entry of found.entries) {
    const rank = found.isMemberCompletion ? 0 : rankOf(entry)
    if (rank === undefined) continue
    proposals.push({ name: entry.name, what: whatIs(entry.kind), rank })
  }
  return proposals.sort((a, b) => a.rank - b.rank).slice(0, most)
}

/** Undefined for what cells do not have, although TypeScript knows it. */
function rankOf(entry: ts.CompletionEntry): number | undefined {
  if (entry.kind === 'keyword') return usefulKeywords.has(entry.name) ? 4 : undefined
  if (entry.kind === 'warning') return undefined
  const ambient = entry.kindModifiers?.split(',').includes('declare') ?? false
  if (!ambient && entry.name !== 'undefined' && entry.name !== 'globalThis') return entry.sortText === '11' ? 0 : 1
  if (absentNames.has(entry.name) || entry.name === 'globalThis') return undefined
  return languageNames.has(entry.name) ? 3 : hidden.test(entry.name) ? undefined : 2
}

/** Helpers of the preamble and of the library files that nobody writes. */
const hidden = /^_|Constructor$|^(?:CallSite|ImportMeta|PropertyKey|Iterator.*|Async.*|Generator.*|ActiveX.*)$/

const usefulKeywords: ReadonlySet<string> = new Set(
  'const let function return if else for while break continue of in new throw try catch finally true false null typeof switch case default'.split(
    ' ',
  ),
)

function whatIs(kind: string): Proposal['what'] {
  if (kind === 'keyword') return 'keyword'
  if (kind === 'string') return 'text'
  if (kind === 'function' || kind === 'method' || kind === 'local function' || kind === 'construct') return 'function'
  if (kind === 'property' || kind === 'getter') return 'property'
  if (kind === 'interface' || kind === 'type' || kind === 'class' || kind === 'type parameter') return 'type'
  return 'value'
}

export function proposalAt(
  cells: CellLanguage,
  { cell, offset, name }: At & { readonly name: string },
): Documentation | null {
  const details = cells.service.getCompletionEntryDetails(
    cells.fileOf(cell),
    offset,
    name,
    undefined,
    undefined,
    undefined,
    undefined,
  )
  if (details === undefined) return null
  return { display: displayOf(details.displayParts), text: textOf(details.documentation), tags: tagsOf(details.tags) }
}
