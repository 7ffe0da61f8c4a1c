/**
 * Reads the dimension out of a kernel type. `type Quantity<D> = number & { readonly [dimension]?: D }` carries it as the
 * literal type of an optional property whose name is a unique symbol; TypeScript names such a property `__@dimension@17`.
 */
import type ts from 'typescript'
import { type Dimension, parseDimension } from '../../../../shared/contracts/index.js'

const dimensionMarker = /^__@dimension@\d+$/
const temperatureMarker = /^__@temperature@\d+$/

/** The markers in TypeScript's own wording of a clash. */
export const markerTexts = ['[dimension]', '[temperature]'] as const

/** The dimension a number type carries; `undefined` when it carries none. */
export function markedDimension(typescript: typeof ts, checker: ts.TypeChecker, type: ts.Type): Dimension | undefined {
  const text = marked(typescript, checker, type, dimensionMarker)
  return text === undefined ? undefined : (parseDimension(text) ?? undefined)
}

/** How often the offset from absolute zero is in a temperature of this type: once, or not in a difference. */
export function markedZeros(typescript: typeof ts, checker: ts.TypeChecker, type: ts.Type): number | undefined {
  const text = marked(typescript, checker, type, temperatureMarker)
  return text === undefined ? undefined : text === 'absolute' ? 1 : 0
}

function marked(typescript: typeof ts, checker: ts.TypeChecker, type: ts.Type, marker: RegExp): string | undefined {
  if (!type.isIntersection() || !type.types.some((part) => part.flags & typescript.TypeFlags.NumberLike))
    return undefined
  for (const part of type.types) {
    if (part.flags & typescript.TypeFlags.NumberLike) continue
    for (const property of checker.getPropertiesOfType(part)) {
      if (!marker.test(property.escapedName as string)) continue
      const text = literalText(checker.getTypeOfSymbol(property))
      if (text !== undefined) return text
    }
  }
  return undefined
}

function literalText(type: ts.Type): string | undefined {
  for (const part of type.isUnion() ? type.types : [type]) if (part.isStringLiteral()) return part.value
  return undefined
}
