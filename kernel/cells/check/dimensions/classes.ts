/** Classes of cells: their fields as the constructor leaves them, their methods as functions that know the instance. */
import type ts from 'typescript'
import { defineFunction } from './functions.js'
import type { Inference } from './inference.js'
import { matchDeclared } from './matching.js'
import { Scope } from './scope.js'
import { type ClassShape, type Self, type Shape, unknown, unknownBecause } from './shape.js'

/** Binds the class, and looks at its methods with an instance that nothing was given to. */
export function declareClass(inference: Inference, node: ts.ClassDeclaration, scope: Scope): void {
  const shape: ClassShape = { kind: 'class', node, scope }
  if (node.name !== undefined) inference.bind(node.name, shape, scope)
  construct(inference, shape, [], node)
}

/** What `new` gives for these arguments. */
export function construct(
  inference: Inference,
  { node, scope }: ClassShape,
  args: readonly Shape[],
  site: ts.Node,
): Shape {
  const t = inference.typescript
  if (node.heritageClauses !== undefined) return unknownBecause('a class that extends another is not followed')
  const self: Self = { shape: { kind: 'record', fields: new Map() } }
  const inside = new Scope(scope, self)
  for (const member of node.members) {
    if (t.isMethodDeclaration(member) && member.body !== undefined)
      setField(self, member.name.getText(), defineFunction(inference, member, inside, self))
    else if (t.isPropertyDeclaration(member) && !isStatic(inference, member))
      setField(self, member.name.getText(), initialValue(inference, member, inside))
  }
  const made = node.members.find((member) => t.isConstructorDeclaration(member) && member.body !== undefined)
  if (made !== undefined) runConstructor(inference, made as ts.ConstructorDeclaration, self, inside, args, site)
  for (const member of node.members)
    if (t.isGetAccessor(member)) {
      const [got] = inference.follow({ kind: 'closure', node: member, scope: inside, self }, [], site, 'in place')
      setField(self, member.name.getText(), got?.shape ?? unknown)
    }
  return self.shape
}

function isStatic(inference: Inference, member: ts.PropertyDeclaration): boolean {
  return member.modifiers?.some((modifier) => modifier.kind === inference.typescript.SyntaxKind.StaticKeyword) === true
}

function setField(self: Self, name: string, shape: Shape): void {
  const fields = self.shape.kind === 'record' ? self.shape.fields : new Map<string, Shape>()
  self.shape = { kind: 'record', fields: new Map([...fields, [name, shape]]) }
}

function initialValue(inference: Inference, member: ts.PropertyDeclaration, scope: Scope): Shape {
  const { initializer, type: annotation } = member
  const shape = initializer === undefined ? undefined : inference.expression(initializer, scope)
  if (annotation === undefined) return shape ?? unknown
  const type = inference.checker.getTypeFromTypeNode(annotation)
  if (initializer !== undefined && shape !== undefined)
    matchDeclared(inference, { node: initializer, shape }, type, member.name.getText())
  return inference.declared(type) ?? shape ?? inference.fromType(type)
}

function runConstructor(
  inference: Inference,
  node: ts.ConstructorDeclaration,
  self: Self,
  scope: Scope,
  args: readonly Shape[],
  site: ts.Node,
): void {
  node.parameters.forEach((parameter, index) => {
    const kept = parameter.modifiers !== undefined && parameter.modifiers.length > 0
    if (!kept) return
    const declared =
      parameter.type === undefined
        ? undefined
        : inference.declared(inference.checker.getTypeFromTypeNode(parameter.type))
    setField(self, parameter.name.getText(), declared ?? args[index] ?? unknown)
  })
  inference.follow({ kind: 'closure', node, scope, self }, args, site, 'from elsewhere')
}
