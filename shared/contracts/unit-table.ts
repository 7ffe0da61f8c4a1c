/**
 * Every unit the tool knows, with its exact factor to SI: one table for `u`, the unit text parser and the display.
 *
 * Factors are exact by definition unless `rounded` says otherwise. Sources: BIPM, *The International System of
 * Units (SI)*, 9th edition 2019; NIST Special Publication 811, 2008, appendix B (international foot 0.3048 m and
 * avoirdupois pound 0.45359237 kg, exact since 1959; standard gravity 9.80665 m/s^2, 3rd CGPM 1901).
 */
import type { Dimension } from './dimension.js'

export interface UnitDefinition {
  /** The symbol in unit text and as a member of `u`. */
  readonly symbol: string
  /** Multiply a value in this unit by this to get SI. */
  readonly factor: number
  readonly dimension: Dimension
  /** Full name for help and messages. */
  readonly name: string
  /** How the unit is typeset where it differs from the symbol. */
  readonly typeset?: string
}

const foot = 0.3048
const pound = 0.45359237
const gravity = 9.80665
const poundForce = pound * gravity
const slug = poundForce / foot
const hour = 3600

const mass: Dimension = [1, 0, 0, 0, 0]
const length: Dimension = [0, 1, 0, 0, 0]
const time: Dimension = [0, 0, 1, 0, 0]
const force: Dimension = [1, 1, -2, 0, 0]
const power: Dimension = [1, 2, -3, 0, 0]
const energy: Dimension = [1, 2, -2, 0, 0]
const pressure: Dimension = [1, -1, -2, 0, 0]
const area: Dimension = [0, 2, 0, 0, 0]
const volume: Dimension = [0, 3, 0, 0, 0]
const speed: Dimension = [0, 1, -1, 0, 0]
const pure: Dimension = [0, 0, 0, 0, 0]
const frequency: Dimension = [0, 0, -1, 0, 0]
const temperature: Dimension = [0, 0, 0, 1, 0]
const current: Dimension = [0, 0, 0, 0, 1]
const voltage: Dimension = [1, 2, -3, 0, -1]
const resistance: Dimension = [1, 2, -3, 0, -2]
const charge: Dimension = [0, 0, 1, 0, 1]
const acceleration: Dimension = [0, 1, -2, 0, 0]

export const unitTable = [
  { symbol: 'm', factor: 1, dimension: length, name: 'metre' },
  { symbol: 'km', factor: 1000, dimension: length, name: 'kilometre' },
  { symbol: 'cm', factor: 0.01, dimension: length, name: 'centimetre' },
  { symbol: 'mm', factor: 0.001, dimension: length, name: 'millimetre' },
  { symbol: 'ft', factor: foot, dimension: length, name: 'foot' },
  { symbol: 'in', factor: 0.0254, dimension: length, name: 'inch' },
  { symbol: 'nmi', factor: 1852, dimension: length, name: 'nautical mile' },
  { symbol: 'mi', factor: 1609.344, dimension: length, name: 'mile' },
  { symbol: 'kg', factor: 1, dimension: mass, name: 'kilogram' },
  { symbol: 'g', factor: 0.001, dimension: mass, name: 'gram' },
  { symbol: 't', factor: 1000, dimension: mass, name: 'tonne' },
  { symbol: 'lb', factor: pound, dimension: mass, name: 'pound' },
  { symbol: 'slug', factor: slug, dimension: mass, name: 'slug' },
  { symbol: 's', factor: 1, dimension: time, name: 'second' },
  { symbol: 'min', factor: 60, dimension: time, name: 'minute' },
  { symbol: 'h', factor: hour, dimension: time, name: 'hour' },
  { symbol: 'N', factor: 1, dimension: force, name: 'newton' },
  { symbol: 'kN', factor: 1000, dimension: force, name: 'kilonewton' },
  { symbol: 'lbf', factor: poundForce, dimension: force, name: 'pound-force' },
  { symbol: 'W', factor: 1, dimension: power, name: 'watt' },
  { symbol: 'kW', factor: 1000, dimension: power, name: 'kilowatt' },
  { symbol: 'MW', factor: 1e6, dimension: power, name: 'megawatt' },
  { symbol: 'hp', factor: 550 * foot * poundForce, dimension: power, name: 'mechanical horsepower' },
  { symbol: 'J', factor: 1, dimension: energy, name: 'joule' },
  { symbol: 'kJ', factor: 1000, dimension: energy, name: 'kilojoule' },
  { symbol: 'MJ', factor: 1e6, dimension: energy, name: 'megajoule' },
  { symbol: 'Wh', factor: hour, dimension: energy, name: 'watt-hour' },
  { symbol: 'kWh', factor: 1000 * hour, dimension: energy, name: 'kilowatt-hour' },
  { symbol: 'Pa', factor: 1, dimension: pressure, name: 'pascal' },
  { symbol: 'kPa', factor: 1000, dimension: pressure, name: 'kilopascal' },
  { symbol: 'MPa', factor: 1e6, dimension: pressure, name: 'megapascal' },
  { symbol: 'bar', factor: 1e5, dimension: pressure, name: 'bar' },
  { symbol: 'psf', factor: poundForce / (foot * foot), dimension: pressure, name: 'pound-force per square foot' },
  { symbol: 'psi', factor: poundForce / (0.0254 * 0.0254), dimension: pressure, name: 'pound-force per square inch' },
  { symbol: 'm2', factor: 1, dimension: area, name: 'square metre', typeset: 'm²' },
  { symbol: 'ft2', factor: foot * foot, dimension: area, name: 'square foot', typeset: 'ft²' },
  { symbol: 'm3', factor: 1, dimension: volume, name: 'cubic metre', typeset: 'm³' },
  { symbol: 'L', factor: 0.001, dimension: volume, name: 'litre' },
  { symbol: 'mps', factor: 1, dimension: speed, name: 'metre per second', typeset: 'm/s' },
  { symbol: 'kmh', factor: 1000 / hour, dimension: speed, name: 'kilometre per hour', typeset: 'km/h' },
  { symbol: 'kt', factor: 1852 / hour, dimension: speed, name: 'knot' },
  { symbol: 'fpm', factor: foot / 60, dimension: speed, name: 'foot per minute', typeset: 'ft/min' },
  { symbol: 'rad', factor: 1, dimension: pure, name: 'radian' },
  { symbol: 'deg', factor: Math.PI / 180, dimension: pure, name: 'degree', typeset: '°' },
  { symbol: 'rpm', factor: (2 * Math.PI) / 60, dimension: frequency, name: 'revolution per minute' },
  { symbol: 'Hz', factor: 1, dimension: frequency, name: 'hertz' },
  { symbol: 'K', factor: 1, dimension: temperature, name: 'kelvin' },
  { symbol: 'A', factor: 1, dimension: current, name: 'ampere' },
  { symbol: 'V', factor: 1, dimension: voltage, name: 'volt' },
  { symbol: 'ohm', factor: 1, dimension: resistance, name: 'ohm', typeset: 'Ω' },
  { symbol: 'mohm', factor: 0.001, dimension: resistance, name: 'milliohm', typeset: 'mΩ' },
  { symbol: 'Ah', factor: hour, dimension: charge, name: 'ampere-hour' },
  { symbol: 'C', factor: 1, dimension: charge, name: 'coulomb' },
  { symbol: 'g0', factor: gravity, dimension: acceleration, name: 'standard gravity', typeset: 'g₀' },
] as const satisfies readonly UnitDefinition[]

export type UnitSymbol = (typeof unitTable)[number]['symbol']

/** Looks a symbol up; `undefined` when the table has none. */
export const unitBySymbol: ReadonlyMap<string, UnitDefinition> = new Map(unitTable.map((unit) => [unit.symbol, unit]))
