/**
 * Reads the dimension out of a kernel type. `type Quantity<D> = number & { readonly [dimension]?: D }` carries it as the
 * literal type of an optional property whose name is a unique symbol; TypeScript names such a property `__@dimension@17`.
 */
import type ts from 'typescript'
import { type Dimension, parseDimension } from '../../../../shared/contracts/index.js'

const markerName = /^__@dimension@\d+$/

/** The marker in TypeScript's own wording of a clash. */
export const markerText = '[dimension]'

/** The dimension a number type carries; `undefined` when it carries none. */
export function markedDimension(typescript: typeof ts, checker: ts.TypeChecker, type: ts.Type): Dimension | undefined {
  if (!type.isIntersection() || !type.types.some((part) => part.flags & typescript.TypeFlags.NumberLike))
    return undefined
  for (const part of type.types) {
    if (part.flags & typescript.TypeFlags.NumberLike) continue
    for (const property of checker.getPropertiesOfType(part)) {
      if (!markerName.test(property.escapedName as string)) continue
      const text = literalText(checker.getTypeOfSymbol(property))
      if (text !== undefined) return parseDimension(text) ?? undefined
    }
  }
  return undefined
}

function literalText(type: ts.Type): string | undefined {
  for (const part of type.isUnion() ? type.types : [type]) if (part.isStringLiteral()) return part.value
  return undefined
}
