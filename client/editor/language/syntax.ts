/** Small steps that several language features take in TypeScript's view of the cells. */
import type ts from 'typescript'
import type { CellLanguage } from '../../../kernel/cells/check/index.js'
import type { CellId } from '../../../shared/contracts/index.js'

/** The parsed cell; absent when no such cell is known. */
export function sourceFileOf(cells: CellLanguage, cell: CellId): ts.SourceFile | undefined {
  return cells.service.getProgram()?.getSourceFile(cells.fileOf(cell))
}

/** The innermost node at an offset. */
export function nodeAt(typescript: typeof ts, file: ts.SourceFile, offset: number): ts.Node {
  let found: ts.Node = file
  const descend = (node: ts.Node): void => {
    if (offset < node.getStart(file) || offset >= node.end) return
    found = node
    typescript.forEachChild(node, descend)
  }
  typescript.forEachChild(file, descend)
  return found
}

/** Whether a declared name stands at the top level of its cell, not inside a function or block. */
export function isTopLevel(typescript: typeof ts, name: ts.Node): boolean {
  for (let node = name.parent; node !== undefined; node = node.parent) {
    if (typescript.isSourceFile(node)) return true
    const passes =
      typescript.isVariableDeclaration(node) ||
      typescript.isVariableDeclarationList(node) ||
      typescript.isVariableStatement(node) ||
      typescript.isBindingElement(node) ||
      typescript.isObjectBindingPattern(node) ||
      typescript.isArrayBindingPattern(node) ||
      ((typescript.isFunctionDeclaration(node) || typescript.isClassDeclaration(node)) && node.name === name)
    if (!passes) return false
  }
  return false
}
