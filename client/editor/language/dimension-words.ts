/** What a dimension is called in the field, and the unit that stands for it in a tag. */
import { describeDimension, parseDimension } from '../../../shared/contracts/index.js'
import { siUnit, typesetUnitText } from '../../../shared/rendering/quantity/index.js'

/** Where one dimension has two meanings both are named; the checker cannot tell a torque from an energy. */
const words: Readonly<Record<string, string>> = {
  kg: 'a mass',
  m: 'a length',
  s: 'a time',
  K: 'a temperature',
  A: 'a current',
  'm^2': 'an area',
  'm^3': 'a volume',
  'm s^-1': 'a speed',
  'm s^-2': 'an acceleration',
  's^-1': 'a frequency or an angular speed',
  'kg m s^-2': 'a force',
  'kg m^2 s^-2': 'an energy or a torque',
  'kg m^2 s^-3': 'a power',
  'kg m^-1 s^-2': 'a pressure or a loading per area',
  'kg m^-3': 'a density',
  'kg m^-2': 'a mass per area',
  'kg s^-2': 'a force per length',
  'kg s^-1': 'a mass flow',
  'kg m^2': 'a moment of inertia',
  'm^2 s^-2': 'an energy per mass',
  'm^2 s^-3': 'a power per mass',
  'm^-1 s': 'a thrust per power',
  'kg m^-1 s^-1': 'a dynamic viscosity',
  's A': 'an electric charge',
  'kg m^2 s^-3 A^-1': 'a voltage',
  'kg m^2 s^-3 A^-2': 'an electrical resistance',
}

/** `a force, in N`; `a pure number`; `kg^2 m` for what has no name. Undefined for text that is no dimension. */
export function dimensionInWords(dimension: string): string | undefined {
  const parsed = parseDimension(dimension)
  if (parsed === null) return undefined
  if (dimension === '1') return 'a pure number'
  const named = words[dimension]
  return named === undefined
    ? `in ${unitTag(dimension) ?? describeDimension(parsed)}`
    : `${named}, in ${unitTag(dimension)}`
}

/** `N`, `m²`, `kg/m³`; undefined for a pure number and for what is not known. */
export function unitTag(dimension: string | null): string | undefined {
  if (dimension === null || dimension === '1' || parseDimension(dimension) === null) return undefined
  return typesetUnitText(siUnit(dimension))
}
