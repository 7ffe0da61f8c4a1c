/** One name changed in every cell that uses it. */
import type ts from 'typescript'
import type { CellLanguage } from '../../../kernel/cells/check/index.js'
import { belongsToLanguage } from '../../../kernel/cells/program/index.js'
import type { At, CellEdit, RenameTarget, Renaming } from './protocol.js'
import { nodeAt, sourceFileOf } from './syntax.js'

export function renameTargetAt(cells: CellLanguage, { cell, offset }: At): RenameTarget {
  const info = cells.service.getRenameInfo(cells.fileOf(cell), offset, {})
  if (!info.canRename) return { ok: false, message: 'There is no name here that could be changed.' }
  const name = info.displayName
  const foreign = locationsOf(cells, { cell, offset }).some((location) => cells.cellOf(location.fileName) === undefined)
  if (foreign)
    return { ok: false, message: `"${name}" belongs to the kernel; only names that a cell declares can be changed.` }
  return {
    ok: true,
    name,
    span: { start: info.triggerSpan.start, end: info.triggerSpan.start + info.triggerSpan.length },
  }
}

export function renamingAt(cells: CellLanguage, question: At & { readonly newName: string }): Renaming {
  const target = renameTargetAt(cells, question)
  if (!target.ok) return target
  const newName = question.newName.trim()
  const refusal = refusalOf(cells, target.name, newName)
  if (refusal !== null) return { ok: false, message: refusal }
  const edits: CellEdit[] = []
  for (const location of locationsOf(cells, question)) {
    const cell = cells.cellOf(location.fileName)
    if (cell === undefined) continue
    const { start, length } = location.textSpan
    const inserted = `${location.prefixText ?? ''}${newName}${location.suffixText ?? ''}`
    edits.push({ cell, at: start, removed: length, inserted })
    const spoken = spokenName(cells, cell, start, target.name)
    if (spoken !== undefined) edits.push({ cell, at: spoken, removed: target.name.length, inserted: newName })
  }
  return { ok: true, edits }
}

function locationsOf(cells: CellLanguage, { cell, offset }: At): readonly ts.RenameLocation[] {
  const found = cells.service.findRenameLocations(cells.fileOf(cell), offset, false, false, {
    providePrefixAndSuffixTextForRename: true,
  })
  return found ?? []
}

function refusalOf(cells: CellLanguage, name: string, newName: string): string | null {
  if (newName === name) return `"${name}" is its name already.`
  if (!/^[\p{ID_Start}$_][\p{ID_Continue}$]*$/u.test(newName))
    return `"${newName}" is not a name; use letters, digits and underscores, beginning with a letter.`
  if (belongsToLanguage(newName) || isKeyword(cells.typescript, newName))
    return `"${newName}" belongs to the language; choose another name.`
  for (const file of cells.service.getProgram()?.getSourceFiles() ?? [])
    if (cells.cellOf(file.fileName) !== undefined && declares(file, newName))
      return `Another cell or function already declares "${newName}"; choose another name.`
  return null
}

function isKeyword(typescript: typeof ts, text: string): boolean {
  const scanner = typescript.createScanner(typescript.ScriptTarget.ES2022, true)
  scanner.setText(text)
  const token = scanner.scan()
  return token >= typescript.SyntaxKind.FirstReservedWord && token <= typescript.SyntaxKind.LastReservedWord
}

/** TypeScript's own table of the identifiers written in a file: quick, and on the safe side. */
function declares(file: ts.SourceFile, name: string): boolean {
  const named = (
    file as ts.SourceFile & { readonly getNamedDeclarations?: () => ReadonlyMap<string, unknown> }
  ).getNamedDeclarations?.()
  return named?.has(name) ?? false
}

const namedLikeConstant: ReadonlySet<string> = new Set(['assumption', 'result'])

/** Assumptions, and often results, are named like their constant: `const x = assumption('x', ...)`; where that text begins. */
function spokenName(cells: CellLanguage, cell: At['cell'], start: number, name: string): number | undefined {
  const { typescript } = cells
  const file = sourceFileOf(cells, cell)
  const declaration = file === undefined ? undefined : nodeAt(typescript, file, start).parent
  if (declaration === undefined || !typescript.isVariableDeclaration(declaration)) return undefined
  const call = declaration.initializer
  if (call === undefined || !typescript.isCallExpression(call)) return undefined
  if (!namedLikeConstant.has(call.expression.getText())) return undefined
  const first = call.arguments[0]
  return first !== undefined && typescript.isStringLiteralLike(first) && first.text === name
    ? first.getStart() + 1
    : undefined
}
