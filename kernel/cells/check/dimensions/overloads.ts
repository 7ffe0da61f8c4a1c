/**
 * Which of several declarations of a function a call means. Told by the fields of its records where that is enough; TypeScript
 * is asked otherwise, because to choose it works out the type of everything the arguments are made from.
 */
import type ts from 'typescript'
import type { Given } from './given.js'
import type { Inference } from './inference.js'
import type { TypedShape } from './shape.js'

/** As declared, with its type parameters open. */
export function signatureOf(
  inference: Inference,
  node: ts.CallExpression | ts.NewExpression,
  callee: TypedShape,
  args: readonly Given[],
): ts.Signature | undefined {
  const { checker, typescript } = inference
  const signatures = callee.type.getCallSignatures()
  if (signatures.length < 2) return signatures[0]
  const fitting = signatures.filter((signature) => fits(inference, signature, args))
  if (fitting.length === 1) return fitting[0]
  const declaration = checker.getResolvedSignature(node)?.getDeclaration()
  return declaration === undefined || typescript.isJSDocSignature(declaration)
    ? signatures[0]
    : checker.getSignatureFromDeclaration(declaration)
}

function fits(inference: Inference, signature: ts.Signature, args: readonly Given[]): boolean {
  return (
    args.length <= signature.parameters.length &&
    args.every(({ shape }, index) => {
      const parameter = signature.parameters[index]
      if (parameter === undefined || shape.kind !== 'record') return true
      return hasFields(inference, inference.checker.getTypeOfSymbol(parameter), shape.fields)
    })
  )
}

function hasFields(inference: Inference, type: ts.Type, fields: ReadonlyMap<string, unknown>): boolean {
  const properties = inference.checker.getPropertiesOfType(type)
  const names = new Set(properties.map((property) => property.name))
  const { Optional } = inference.typescript.SymbolFlags
  return (
    [...fields.keys()].every((name) => names.has(name)) &&
    properties.every((property) => property.flags & Optional || fields.has(property.name))
  )
}
