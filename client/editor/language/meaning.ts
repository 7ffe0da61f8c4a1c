/** What a name means, and where it is declared. */

import type ts from 'typescript'
import type { CellLanguage } from '../../../kernel/cells/check/index.js'
import { displayOf, tagsOf, textOf } from './documentation.js'
import type { At, DeclarationPlace, DeclaredName, Meaning } from './protocol.js'
import { isTopLevel, nodeAt, sourceFileOf } from './syntax.js'

export function meaningAt(cells: CellLanguage, at: At): Meaning | null {
  const info = cells.service.getQuickInfoAtPosition(cells.fileOf(at.cell), at.offset)
  const source = sourceFileOf(cells, at.cell)
  if (info === undefined || source === undefined) return null
  const { start, length } = info.textSpan
  const declared = declarationNode(cells, at)
  return {
    span: { start, end: start + length },
    name: source.text.slice(start, start + length),
    display: displayOf(info.displayParts),
    text: textOf(info.documentation),
    tags: tagsOf(info.tags),
    ...(declared !== undefined && isTopLevel(cells.typescript, declared.node)
      ? { declaredIn: declared.cell }
      : cells.dimensionAt(nodeAt(cells.typescript, source, start))),
  }
}

/** Where the cells declare the name at a place; `null` for the kernel's names and for what is no name. */
export function declarationAt(cells: CellLanguage, at: At): DeclarationPlace | null {
  const declared = declarationNode(cells, at)
  if (declared === undefined) return null
  const { line, character } = declared.file.getLineAndCharacterOfPosition(declared.node.getStart(declared.file))
  return { cell: declared.cell, line: line + 1, column: character + 1 }
}

function declarationNode(cells: CellLanguage, { cell, offset }: At) {
  for (const definition of cells.service.getDefinitionAtPosition(cells.fileOf(cell), offset) ?? []) {
    const owner = cells.cellOf(definition.fileName)
    const file = owner === undefined ? undefined : sourceFileOf(cells, owner)
    if (owner === undefined || file === undefined) continue
    return { cell: owner, file, node: nodeAt(cells.typescript, file, definition.textSpan.start) }
  }
  return undefined
}

/** Names that a cell declares at its top level, in the order written. */
export function declaredNamesOf(cells: CellLanguage, { cell }: { readonly cell: At['cell'] }): readonly DeclaredName[] {
  const { typescript } = cells
  const names: DeclaredName[] = []
  const collect = (name: ts.BindingName): void => {
    if (typescript.isIdentifier(name)) names.push({ name: name.text, end: name.end })
    else for (const element of name.elements) if (typescript.isBindingElement(element)) collect(element.name)
  }
  for (const statement of sourceFileOf(cells, cell)?.statements ?? [])
    if (typescript.isVariableStatement(statement))
      for (const declaration of statement.declarationList.declarations) collect(declaration.name)
  return names
}
