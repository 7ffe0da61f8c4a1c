/** What a dimension is called in the field, and the unit that stands for it in a tag. */
import { describeDimension, parseDimension, quantityNames } from '../../../shared/contracts/index.js'
import { siUnit, typesetUnitText } from '../../../shared/rendering/quantity/index.js'

/** `a force, in N`; `a pure number`; `kg^2 m` for what has no name. Undefined for text that is no dimension. */
export function dimensionInWords(dimension: string): string | undefined {
  const parsed = parseDimension(dimension)
  if (parsed === null) return undefined
  if (dimension === '1') return 'a pure number'
  const named = quantityNames[dimension]
  return named === undefined
    ? `in ${unitTag(dimension) ?? describeDimension(parsed)}`
    : `${named}, in ${unitTag(dimension)}`
}

/** `N`, `m²`, `kg/m³`; undefined for a pure number and for what is not known. */
export function unitTag(dimension: string | null): string | undefined {
  if (dimension === null || dimension === '1' || parseDimension(dimension) === null) return undefined
  return typesetUnitText(siUnit(dimension))
}
