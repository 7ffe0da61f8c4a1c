/** Reading a name: of the cell, of another cell, of the kernel or of the language. */
import type ts from 'typescript'
import type { Inference } from './inference.js'
import type { Scope } from './scope.js'
import { freeNumber, noBindings, nothing, type Shape, unknown, unknownBecause } from './shape.js'

export function readName(inference: Inference, node: ts.Identifier, scope: Scope): Shape {
  if (node.text === 'undefined') return nothing
  const symbol = inference.checker.getSymbolAtLocation(node)
  return symbol === undefined ? unknown : readSymbol(inference, symbol, node, scope)
}

export function readSymbol(inference: Inference, symbol: ts.Symbol, node: ts.Identifier, scope: Scope): Shape {
  if (inference.disputed.has(symbol.name)) return unknownBecause(`${symbol.name} is declared in several cells`)
  if (inference.mutations.cannotFollow(symbol, node))
    return unknownBecause(`${symbol.name} is changed inside a function that may run at any time`)
  return scope.read(symbol) ?? readGlobal(inference, symbol)
}

function readGlobal(inference: Inference, symbol: ts.Symbol): Shape {
  const declaration = symbol.valueDeclaration
  if (declaration === undefined || !declaration.getSourceFile().isDeclarationFile)
    return unknownBecause(`${symbol.name} has no value yet where it is read`)
  if (symbol.name === 'NaN' || symbol.name === 'Infinity') return freeNumber
  const type = inference.checker.getTypeOfSymbol(symbol)
  return inference.fromType(type, noBindings)
}
