/**
 * Classes of cells: fields as the constructors leave them, methods as functions that know the instance, what a class takes over
 * from the one it extends, and its static members as a record of the class itself.
 */
import type ts from 'typescript'
import { defineFunction } from './functions.js'
import type { Inference } from './inference.js'
import { matchDeclared } from './matching.js'
import { Scope } from './scope.js'
import { type ClassShape, type Self, type Shape, unknown, unknownBecause } from './shape.js'

/** Binds the class, and looks at its methods with an instance that nothing was given to. */
export function declareClass(inference: Inference, node: ts.ClassLikeDeclaration, scope: Scope): ClassShape {
  const shape: ClassShape = { kind: 'class', node, scope, base: baseOf(inference, node, scope), statics: emptySelf() }
  if (node.name !== undefined && inference.typescript.isClassDeclaration(node)) inference.bind(node.name, shape, scope)
  fillStatics(inference, shape)
  construct(inference, shape, [], node)
  return shape
}

function emptySelf(): Self {
  return { shape: { kind: 'record', fields: new Map() } }
}

function baseOf(inference: Inference, node: ts.ClassLikeDeclaration, scope: Scope): Shape | undefined {
  const clause = node.heritageClauses?.find((one) => one.token === inference.typescript.SyntaxKind.ExtendsKeyword)
  const extended = clause?.types[0]?.expression
  return extended === undefined ? undefined : inference.expression(extended, scope)
}

function fillStatics(inference: Inference, { node, scope, base, statics }: ClassShape): void {
  if (base?.kind === 'class') statics.shape = base.statics.shape
  const inside = new Scope(scope, statics)
  for (const member of node.members) {
    if (!isStatic(inference, member)) continue
    if (inference.typescript.isClassStaticBlockDeclaration(member))
      inference.statements(member.body.statements, inside, [])
    else addMember(inference, member, statics, inside)
  }
  addGetters(inference, node, statics, inside, node, true)
}

/** What `new` gives for these arguments. */
export function construct(inference: Inference, shape: ClassShape, args: readonly Shape[], site: ts.Node): Shape {
  const chain = chainOf(shape)
  if (chain === undefined) return unknownBecause('the class that this one extends is not followed')
  const instance = emptySelf()
  const levels = chain.map((one) => levelOf(instance, one))
  levels.forEach((level, index) => {
    level.self.parent = level.instanceSoFar()
    addMethods(inference, level)
    const above = levels[index - 1]
    level.self.startParent = above === undefined ? undefined : (given) => start(inference, above, given, site)
  })
  const own = levels.at(-1)
  if (own !== undefined) start(inference, own, args, site)
  for (const { node, self, inside } of levels) addGetters(inference, node, self, inside, site, false)
  return instance.shape
}

/** The constructor that `new` runs first: of the class, or of the nearest above it that has one. */
export function constructorOf(inference: Inference, shape: ClassShape): ts.ConstructorDeclaration | undefined {
  const t = inference.typescript
  for (const { node } of [...(chainOf(shape) ?? [])].reverse()) {
    const own = node.members.find((member) => t.isConstructorDeclaration(member) && member.body !== undefined)
    if (own !== undefined) return own as ts.ConstructorDeclaration
  }
  return undefined
}

/** From the first ancestor to the class itself; `undefined` where one of them is no class of a cell. */
function chainOf(shape: ClassShape): readonly ClassShape[] | undefined {
  if (shape.base === undefined) return [shape]
  if (shape.base.kind !== 'class') return undefined
  const above = chainOf(shape.base)
  return above === undefined ? undefined : [...above, shape]
}

/** One class of the chain and how its members see the instance: `super` means another one at each. */
interface Level {
  readonly node: ts.ClassLikeDeclaration
  readonly self: Self
  readonly inside: Scope
  instanceSoFar(): Shape
}

function levelOf(instance: Self, { node, scope }: ClassShape): Level {
  const self: Self = {
    get shape() {
      return instance.shape
    },
    set shape(shape) {
      instance.shape = shape
    },
  }
  return { node, self, inside: new Scope(scope, self), instanceSoFar: () => instance.shape }
}

function addMethods(inference: Inference, { node, self, inside }: Level): void {
  for (const member of node.members)
    if (inference.typescript.isMethodDeclaration(member) && !isStatic(inference, member))
      addMember(inference, member, self, inside)
}

/** Runs the fields and the constructor; one of a class that extends another waits for its `super(...)`. */
function start(inference: Inference, level: Level, args: readonly Shape[], site: ts.Node): void {
  const { node, self, inside } = level
  const t = inference.typescript
  const made = node.members.find((member) => t.isConstructorDeclaration(member) && member.body !== undefined)
  const { startParent } = self
  const addFields = (): void => {
    for (const member of node.members)
      if (t.isPropertyDeclaration(member) && !isStatic(inference, member)) addMember(inference, member, self, inside)
    if (made !== undefined) keepParameters(inference, made as ts.ConstructorDeclaration, self, args)
  }
  if (made === undefined || startParent === undefined) {
    startParent?.(args)
    addFields()
  } else
    self.startParent = (given) => {
      startParent(given)
      addFields()
    }
  if (made !== undefined)
    inference.follow(
      { kind: 'closure', node: made as ts.ConstructorDeclaration, scope: inside, self },
      args,
      site,
      'from elsewhere',
    )
  self.startParent = startParent
}

function isStatic(inference: Inference, member: ts.ClassElement): boolean {
  const t = inference.typescript
  if (t.isClassStaticBlockDeclaration(member)) return true
  const modifiers = t.canHaveModifiers(member) ? t.getModifiers(member) : undefined
  return modifiers?.some((modifier) => modifier.kind === t.SyntaxKind.StaticKeyword) === true
}

function addMember(inference: Inference, member: ts.ClassElement, self: Self, inside: Scope): void {
  const t = inference.typescript
  if (t.isMethodDeclaration(member) && member.body !== undefined)
    setField(self, member.name.getText(), defineFunction(inference, member, inside, self))
  else if (t.isPropertyDeclaration(member))
    setField(self, member.name.getText(), initialValue(inference, member, inside))
}

function addGetters(
  inference: Inference,
  node: ts.ClassLikeDeclaration,
  self: Self,
  inside: Scope,
  site: ts.Node,
  ofClass: boolean,
): void {
  for (const member of node.members) {
    if (!inference.typescript.isGetAccessor(member) || isStatic(inference, member) !== ofClass) continue
    const [got] = inference.follow({ kind: 'closure', node: member, scope: inside, self }, [], site, 'in place')
    setField(self, member.name.getText(), got?.shape ?? unknown)
  }
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

/** `constructor(readonly mass: Mass)` keeps what it is given. */
function keepParameters(
  inference: Inference,
  node: ts.ConstructorDeclaration,
  self: Self,
  args: readonly Shape[],
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
}
