/**
 * Which unit a value is read in when its author named none: the one the field uses at that size. Common practice of
 * engineering offices, no source; the thresholds keep the number between about 0.1 and 10 000.
 */
import { formatDimension, parseDimension, unitTable } from '../../contracts/index.js'

/** Unit texts with the smallest magnitude in SI from which each is used, rising; the first also takes what is smaller. */
type Ladder = readonly (readonly [unit: string, from: number])[]

const ladders: Readonly<Record<string, Ladder>> = {
  kg: [
    ['g', 0],
    ['kg', 0.1],
  ],
  m: [
    ['mm', 0],
    ['m', 0.1],
    ['km', 10_000],
  ],
  s: [
    ['s', 0],
    ['min', 120],
    ['h', 7200],
  ],
  'm^2': [
    ['cm^2', 0],
    ['m^2', 0.001],
  ],
  'm^3': [
    ['L', 0],
    ['m^3', 0.1],
  ],
  'kg m s^-2': [
    ['N', 0],
    ['kN', 10_000],
  ],
  'kg m^2 s^-3': [
    ['W', 0],
    ['kW', 1000],
    ['MW', 1e7],
  ],
  // Torque has the same dimension; an author who means it says `N m`.
  'kg m^2 s^-2': [
    ['J', 0],
    ['Wh', 3600],
    ['kWh', 3.6e6],
  ],
  'kg m^-1 s^-2': [
    ['Pa', 0],
    ['kPa', 10_000],
    ['MPa', 1e7],
  ],
  'm^2 s^-2': [
    ['J/kg', 0],
    ['Wh/kg', 3600],
  ],
  'm^2 s^-3': [
    ['W/kg', 0],
    ['kW/kg', 1000],
  ],
  'm s^-1': [['m/s', 0]],
  'm s^-2': [['m/s^2', 0]],
  'kg m^-3': [['kg/m^3', 0]],
  'kg m^-2': [['kg/m^2', 0]],
  'kg s^-2': [['N/m', 0]],
  'kg s^-1': [['kg/s', 0]],
  'kg m^-1 s^-1': [['Pa s', 0]],
  'm^2 s^-1': [['m^2/s', 0]],
  's^-1': [['1/s', 0]],
  'kg^-1 m^-2 s^2': [['1/J', 0]],
  'kg^-1 m^-1 s^3': [['N/W', 0]],
  'kg^-1 s^2': [['m/N', 0]],
  'm^-1 s': [['N/W', 0]],
  'kg m^2 s^-3 A^-1': [['V', 0]],
  'kg m^2 s^-3 A^-2': [
    ['mohm', 0],
    ['ohm', 0.1],
  ],
  's A': [
    ['C', 0],
    ['Ah', 3600],
  ],
}

/** Unit text for a value in SI with this dimension (canonical text form); `1` for a pure number. */
export function chooseUnit(dimension: string, si: number): string {
  const canonical = canonicalDimension(dimension)
  const ladder = ladders[canonical]
  if (ladder === undefined) return siUnit(canonical)
  const magnitude = Math.abs(si)
  if (!Number.isFinite(magnitude) || magnitude === 0) return siUnit(canonical)
  let chosen = ladder[0]?.[0] ?? canonical
  for (const [unit, from] of ladder) if (magnitude >= from * (1 - 1e-9)) chosen = unit
  return chosen
}

/** The unit of factor one with this dimension: `W`, `N/m`, or the product of base units. */
export function siUnit(dimension: string): string {
  const canonical = canonicalDimension(dimension)
  if (canonical === '1') return '1'
  const step = ladders[canonical]?.find(([unit]) => siUnits.has(unit))
  return step?.[0] ?? plainSymbols.get(canonical) ?? canonical
}

const siUnits = new Set(
  'kg m s m^2 m^3 N W J Pa J/kg W/kg m/s m/s^2 kg/m^3 kg/m^2 N/m kg/s m^2/s 1/s 1/J N/W m/N V ohm C'
    .split(' ')
    .concat('Pa s'),
)

/** Symbols that stand for a dimension without further choice: K, A. */
const plainSymbols: ReadonlyMap<string, string> = new Map(
  unitTable
    .filter((unit) => unit.factor === 1 && (unit.symbol === 'K' || unit.symbol === 'A'))
    .map((unit) => [formatDimension(unit.dimension), unit.symbol]),
)

function canonicalDimension(dimension: string): string {
  const parsed = parseDimension(dimension)
  return parsed === null ? dimension : formatDimension(parsed)
}
