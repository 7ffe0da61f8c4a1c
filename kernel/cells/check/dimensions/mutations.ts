/**
 * Which names are given another value after their declaration, and where from. A name that a function changes behind the
 * back of the order of statements cannot be followed and stays unknown; so does a changing name inside a function that
 * may run at any later time.
 */
import type ts from 'typescript'

/** Methods that call their argument at once, so that its body runs where it stands. */
export const immediateMethods: ReadonlySet<string> = new Set([
  'map',
  'forEach',
  'filter',
  'reduce',
  'reduceRight',
  'some',
  'every',
  'find',
  'findIndex',
  'findLast',
  'flatMap',
  'from',
  'sort',
  'toSorted',
])

const growing: ReadonlySet<string> = new Set(['push', 'unshift', 'fill', 'splice', 'set', 'add'])

export class Mutations {
  readonly #typescript: typeof ts
  readonly #checker: ts.TypeChecker
  readonly #changed = new Set<ts.Symbol>()
  readonly #escaped = new Set<ts.Symbol>()
  readonly #within = new Map<ts.Node, readonly ts.Symbol[]>()

  constructor(typescript: typeof ts, checker: ts.TypeChecker) {
    this.#typescript = typescript
    this.#checker = checker
  }

  /** Reads a cell: every name it changes is known from here on. */
  read(cell: ts.SourceFile): void {
    for (const [root, symbol] of this.#changesIn(cell)) {
      this.#changed.add(symbol)
      const declaration = symbol.valueDeclaration
      if (declaration !== undefined && this.home(root) !== this.home(declaration)) this.#escaped.add(symbol)
    }
  }

  /** Whether nothing certain can be said of this name where it is read. */
  cannotFollow(symbol: ts.Symbol, at: ts.Node): boolean {
    if (!this.#changed.has(symbol)) return false
    if (this.#escaped.has(symbol)) return true
    const declaration = symbol.valueDeclaration
    if (declaration === undefined) return true
    const home = this.home(at)
    return !this.#typescript.isSourceFile(home) && home !== this.home(declaration)
  }

  /** Names changed somewhere inside a node: what a branch or loop may leave different. */
  within(node: ts.Node): readonly ts.Symbol[] {
    const known = this.#within.get(node)
    if (known !== undefined) return known
    const symbols = [...new Set([...this.#changesIn(node)].map(([, symbol]) => symbol))]
    this.#within.set(node, symbols)
    return symbols
  }

  /** The function (or cell) whose course of statements a node belongs to. */
  home(node: ts.Node): ts.Node {
    let at = node
    while (at.parent !== undefined) {
      const above = at.parent
      if (this.#typescript.isFunctionLike(above) && !this.runsAtOnce(above)) return above
      at = above
    }
    return at
  }

  /** A function written as the argument of `map`, `reduce` and the like. */
  runsAtOnce(node: ts.Node): boolean {
    const call = node.parent
    return (
      call !== undefined &&
      this.#typescript.isCallExpression(call) &&
      this.#typescript.isPropertyAccessExpression(call.expression) &&
      immediateMethods.has(call.expression.name.text)
    )
  }

  *#changesIn(node: ts.Node): Generator<readonly [ts.Node, ts.Symbol]> {
    const waiting: ts.Node[] = [node]
    while (waiting.length > 0) {
      const next = waiting.pop() as ts.Node
      this.#typescript.forEachChild(next, (child) => {
        waiting.push(child)
      })
      for (const target of this.#targets(next)) {
        const root = this.#root(target)
        const symbol = root === undefined ? undefined : this.#symbol(root)
        // Static members of a class are kept with the class, whoever changes them.
        const isClass = symbol !== undefined && (symbol.flags & this.#typescript.SymbolFlags.Class) !== 0
        if (root !== undefined && symbol !== undefined && !isClass) yield [root, symbol]
      }
    }
  }

  #targets(node: ts.Node): readonly ts.Node[] {
    const typescript = this.#typescript
    if (typescript.isBinaryExpression(node)) {
      const operator = node.operatorToken.kind
      const assigns =
        operator >= typescript.SyntaxKind.FirstAssignment && operator <= typescript.SyntaxKind.LastAssignment
      return assigns ? this.#leaves(node.left) : []
    }
    if (typescript.isPrefixUnaryExpression(node) || typescript.isPostfixUnaryExpression(node)) {
      const { PlusPlusToken, MinusMinusToken } = typescript.SyntaxKind
      return node.operator === PlusPlusToken || node.operator === MinusMinusToken ? [node.operand] : []
    }
    if (typescript.isCallExpression(node) && typescript.isPropertyAccessExpression(node.expression))
      return growing.has(node.expression.name.text) ? [node.expression.expression] : []
    if (
      (typescript.isForOfStatement(node) || typescript.isForInStatement(node)) &&
      typescript.isExpression(node.initializer)
    )
      return this.#leaves(node.initializer)
    return []
  }

  /** The targets inside `[a, b] = ...` and `({ a, b } = ...)`. */
  #leaves(target: ts.Node): readonly ts.Node[] {
    const typescript = this.#typescript
    if (typescript.isArrayLiteralExpression(target)) return target.elements.flatMap((item) => this.#leaves(item))
    if (typescript.isSpreadElement(target)) return this.#leaves(target.expression)
    if (typescript.isBinaryExpression(target)) return this.#leaves(target.left)
    if (!typescript.isObjectLiteralExpression(target)) return [target]
    return target.properties.flatMap((property) => {
      if (typescript.isPropertyAssignment(property)) return this.#leaves(property.initializer)
      if (typescript.isShorthandPropertyAssignment(property)) return [property.name]
      return typescript.isSpreadAssignment(property) ? this.#leaves(property.expression) : []
    })
  }

  #root(target: ts.Node): ts.Identifier | undefined {
    const typescript = this.#typescript
    let at = target
    for (;;) {
      if (typescript.isIdentifier(at)) return at
      if (
        typescript.isPropertyAccessExpression(at) ||
        typescript.isElementAccessExpression(at) ||
        typescript.isParenthesizedExpression(at) ||
        typescript.isNonNullExpression(at) ||
        typescript.isAsExpression(at)
      )
        at = at.expression
      else return undefined
    }
  }

  #symbol(root: ts.Identifier): ts.Symbol | undefined {
    return this.#typescript.isShorthandPropertyAssignment(root.parent)
      ? this.#checker.getShorthandAssignmentValueSymbol(root.parent)
      : this.#checker.getSymbolAtLocation(root)
  }
}
