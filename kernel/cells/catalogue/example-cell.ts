/**
 * An example of a doc comment as a sizing cell: a line that only asks for a value (`lift.diskLoading // 400`) gets a name, so that the
 * sheet shows it.
 */
import type ts from 'typescript'

/** The example as the source of a sizing cell. Names of `taken` are the kernel's, and a cell that owned one would push it aside. */
export function exampleCell(typescript: typeof ts, example: string, taken: ReadonlySet<string>): string {
  const file = typescript.createSourceFile('example.ts', example, typescript.ScriptTarget.ES2023, true)
  const names = new Set([...taken, ...topLevelNames(typescript, file)])
  let cell = ''
  let done = 0
  for (const statement of file.statements) {
    if (!typescript.isExpressionStatement(statement)) continue
    const name = freeName(nameFor(typescript, statement.expression), names)
    names.add(name)
    cell += `${example.slice(done, statement.getStart())}const ${name} = `
    done = statement.getStart()
  }
  return cell + example.slice(done)
}

export interface NamedCell {
  readonly source: string
  /** The names it had, by those it has now. */
  readonly before: ReadonlyMap<string, string>
}

/** The cell with `ending` behind each of its top-level names, so that the examples of all methods can be computed as one notebook. */
export function withNames(typescript: typeof ts, cell: string, ending: string): NamedCell {
  const file = typescript.createSourceFile('example.ts', cell, typescript.ScriptTarget.ES2023, true)
  const own = new Set(topLevelNames(typescript, file))
  const changes: { readonly start: number; readonly end: number; readonly text: string }[] = []
  const visit = (node: ts.Node): void => {
    const text = renamed(typescript, node, own, ending)
    if (text !== undefined) changes.push({ start: node.getStart(), end: node.end, text })
    else typescript.forEachChild(node, visit)
  }
  visit(file)
  let source = cell
  for (const { start, end, text } of changes.reverse()) source = source.slice(0, start) + text + source.slice(end)
  return { source, before: new Map([...own].map((name) => [name + ending, name])) }
}

function renamed(typescript: typeof ts, node: ts.Node, own: ReadonlySet<string>, ending: string): string | undefined {
  const { parent } = node
  // An assumption is named like its constant.
  if (typescript.isStringLiteral(node) && own.has(node.text) && isNameOfAssumption(typescript, node))
    return `'${node.text}${ending}'`
  if (typescript.isShorthandPropertyAssignment(node))
    return own.has(node.name.text) ? `${node.name.text}: ${node.name.text}${ending}` : undefined
  if (!typescript.isIdentifier(node) || !own.has(node.text)) return undefined
  if (typescript.isBindingElement(parent) && parent.name === node && parent.propertyName === undefined)
    return typescript.isObjectBindingPattern(parent.parent) ? `${node.text}: ${node.text}${ending}` : node.text + ending
  const isMember = typescript.isPropertyAccessExpression(parent) && parent.name === node
  const isKey = typescript.isPropertyAssignment(parent) && parent.name === node
  return isMember || isKey ? undefined : node.text + ending
}

function isNameOfAssumption(typescript: typeof ts, { parent }: ts.Node): boolean {
  return (
    typescript.isCallExpression(parent) &&
    typescript.isIdentifier(parent.expression) &&
    parent.expression.text === 'assumption'
  )
}

function topLevelNames(typescript: typeof ts, file: ts.SourceFile): string[] {
  const names: string[] = []
  const collect = (name: ts.BindingName): void => {
    if (typescript.isIdentifier(name)) names.push(name.text)
    else for (const element of name.elements) if (typescript.isBindingElement(element)) collect(element.name)
  }
  for (const statement of file.statements)
    if (typescript.isVariableStatement(statement))
      for (const declaration of statement.declarationList.declarations) collect(declaration.name)
  return names
}

/** `lift.diskLoading` is `liftDiskLoading`, `grid.ceilings[1].altitude` is `gridCeilingsAltitude`, a call has the name of its method. */
function nameFor(typescript: typeof ts, expression: ts.Expression): string {
  const words = wordsOf(typescript, expression)
    .flatMap((word) => word.split(/[^A-Za-z\d]+/))
    .filter((word) => word !== '')
  const name = words.map((word, index) => (index === 0 ? word : `${word[0]?.toUpperCase()}${word.slice(1)}`)).join('')
  return /^[A-Za-z]/.test(name) ? name : 'answer'
}

function wordsOf(typescript: typeof ts, node: ts.Expression): readonly string[] {
  if (typescript.isIdentifier(node)) return [node.text]
  if (typescript.isPropertyAccessExpression(node)) return [...wordsOf(typescript, node.expression), node.name.text]
  if (typescript.isElementAccessExpression(node)) {
    const { argumentExpression: key } = node
    return [...wordsOf(typescript, node.expression), ...(typescript.isStringLiteral(key) ? [key.text] : [])]
  }
  if (typescript.isCallExpression(node)) return wordsOf(typescript, node.expression).slice(-1)
  return []
}

function freeName(wanted: string, taken: ReadonlySet<string>): string {
  if (!taken.has(wanted)) return wanted
  for (let number = 2; ; number += 1) if (!taken.has(`${wanted}${number}`)) return `${wanted}${number}`
}
