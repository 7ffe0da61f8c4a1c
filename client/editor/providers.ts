/** Language features of open cells: each asks the worker and puts the answer in the form the editor draws. */

import { unitTag } from './language/dimension-words.js'
import { documentationMarkdown, fullMarkdown } from './language/documentation-markdown.js'
import { meaningMarkdown } from './language/meaning-markdown.js'
import type { At, Proposal } from './language/protocol.js'
import { methodLinks } from './method-links.js'
import { editor, type IPosition, languages, type editor as monacoEditor, Range } from './monaco.js'
import { dimensionKey, type OpenCell, onDimensions, openCellOf } from './open-cells.js'

/** Registers every feature; once for the page. */
export function registerProviders(language: string): void {
  languages.registerCompletionItemProvider(language, proposals)
  languages.registerSignatureHelpProvider(language, signatures)
  languages.registerHoverProvider(language, meanings)
  languages.registerInlayHintsProvider(language, unitTags)
  languages.registerCodeActionProvider(language, repairs)
  editor.registerLinkOpener(methodLinks)
}

interface Asked {
  readonly open: OpenCell
  readonly at: At
}

function askedAt(model: monacoEditor.ITextModel, position: IPosition): Asked | null {
  const open = openCellOf(model)
  return open === undefined ? null : { open, at: { cell: open.cell, offset: model.getOffsetAt(position) } }
}

/** A worker that died has nothing to say; the person goes on typing. */
async function orNothing<T>(answer: Promise<T>): Promise<T | null> {
  try {
    return await answer
  } catch {
    return null
  }
}

const kinds: Readonly<Record<Proposal['what'], languages.CompletionItemKind>> = {
  value: languages.CompletionItemKind.Variable,
  function: languages.CompletionItemKind.Function,
  property: languages.CompletionItemKind.Property,
  type: languages.CompletionItemKind.Interface,
  keyword: languages.CompletionItemKind.Keyword,
  text: languages.CompletionItemKind.Value,
}

interface CellCompletion extends languages.CompletionItem {
  readonly asked: Asked
  readonly name: string
}

const proposals: languages.CompletionItemProvider = {
  triggerCharacters: ['.', "'", '"'],
  async provideCompletionItems(model, position) {
    const asked = askedAt(model, position)
    const found = asked === null ? null : await orNothing(asked.open.context.ask('proposals', asked.at))
    if (asked === null || found === null) return null
    const word = model.getWordUntilPosition(position)
    const range = new Range(position.lineNumber, word.startColumn, position.lineNumber, word.endColumn)
    const tags = tagsByName(asked.open)
    return {
      suggestions: found.map(({ name, what, rank }): CellCompletion => {
        const tag = rank <= 1 && what === 'value' ? tags.get(name) : undefined
        const label = tag === undefined ? name : { label: name, description: tag }
        return { label, kind: kinds[what], insertText: name, sortText: `${rank}${name}`, range, asked, name }
      }),
    }
  },
  async resolveCompletionItem(item) {
    const { asked, name } = item as CellCompletion
    const found = await orNothing(asked.open.context.ask('proposal', { ...asked.at, name }))
    return found === null ? item : { ...item, documentation: { value: fullMarkdown(found) } }
  },
}

function tagsByName(open: OpenCell): ReadonlyMap<string, string> {
  const tags = new Map<string, string>()
  for (const [key, dimension] of open.dimensions) {
    const tag = unitTag(dimension)
    if (tag !== undefined) tags.set(key.slice(key.indexOf(' ') + 1), tag)
  }
  return tags
}

const signatures: languages.SignatureHelpProvider = {
  signatureHelpTriggerCharacters: ['(', ','],
  signatureHelpRetriggerCharacters: [')'],
  async provideSignatureHelp(model, position) {
    const asked = askedAt(model, position)
    const found = asked === null ? null : await orNothing(asked.open.context.ask('signature', asked.at))
    if (found === null) return null
    return {
      value: {
        activeSignature: found.activeSignature,
        activeParameter: found.activeParameter,
        signatures: found.signatures.map(({ label, parameters, documentation }) => ({
          label,
          documentation: { value: documentationMarkdown(documentation) },
          parameters: parameters.map((parameter) => ({ label: [parameter.label[0], parameter.label[1]] })),
        })),
      },
      dispose: () => undefined,
    }
  },
}

const meanings: languages.HoverProvider = {
  async provideHover(model, position) {
    const asked = askedAt(model, position)
    const found = asked === null ? null : await orNothing(asked.open.context.ask('meaning', asked.at))
    if (asked === null || found === null) return null
    const { open, at } = asked
    const owner = found.declaredIn
    const key = owner === undefined ? undefined : dimensionKey(owner, found.name)
    const value = meaningMarkdown(found, {
      dimension: key === undefined ? found.dimension : open.dimensions.get(key),
      why: key === undefined ? found.why : open.reasons.get(key),
      declaredIn:
        owner === undefined || owner === at.cell ? undefined : `cell ${open.context.numberOf(owner) ?? 'elsewhere'}`,
    })
    const from = model.getPositionAt(found.span.start)
    const to = model.getPositionAt(found.span.end)
    return { range: new Range(from.lineNumber, from.column, to.lineNumber, to.column), contents: [{ value }] }
  },
}

/** Offered at a mark whose mend is plain; the notebook's undo takes it back like typing. */
const repairs: languages.CodeActionProvider = {
  async provideCodeActions(model, range) {
    const open = openCellOf(model)
    const versionId = model.getVersionId()
    const found = open === undefined ? null : await orNothing(open.context.ask('repairs', { cell: open.cell }))
    if (found === null || model.isDisposed() || model.getVersionId() !== versionId) return null
    const placeOf = (start: number, end: number) =>
      Range.fromPositions(model.getPositionAt(start), model.getPositionAt(end))
    const actions = found
      .filter(({ marked }) => Range.areIntersectingOrTouching(placeOf(marked.start, marked.end), range))
      .map(({ title, start, end, text }) => ({
        title,
        kind: 'quickfix',
        edit: { edits: [{ resource: model.uri, versionId, textEdit: { range: placeOf(start, end), text } }] },
      }))
    return { actions, dispose: () => undefined }
  },
}

const unitTags: languages.InlayHintsProvider = {
  onDidChangeInlayHints: onDimensions,
  async provideInlayHints(model) {
    const open = openCellOf(model)
    if (open === undefined) return null
    const version = model.getVersionId()
    const names = await orNothing(open.context.ask('declaredNames', { cell: open.cell }))
    if (names === null || model.isDisposed() || model.getVersionId() !== version) return null
    const hints: languages.InlayHint[] = []
    for (const { name, end } of names) {
      const tag = unitTag(open.dimensions.get(dimensionKey(open.cell, name)) ?? null)
      if (tag !== undefined) hints.push({ label: tag, position: model.getPositionAt(end), paddingLeft: true })
    }
    return { hints, dispose: () => undefined }
  },
}
