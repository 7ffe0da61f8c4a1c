/**
 * Which units a reader sees: those that the author wrote, SI throughout, or those of aviation. Only the display changes; values stay in SI.
 *
 * Every unit has its counterpart in the other system, so what decides is the unit that would be shown otherwise: a span in m is read in ft, a
 * range in km in nmi. Power, energy, voltage, temperature, time and angle are read alike in both, as operators of electric aircraft do.
 * ICAO Annex 5, *Units of Measurement to be Used in Air and Ground Operations*, 5th edition 2010, table 3-4 (from memory), for ft, kt, NM and
 * ft/min; customary US units for the rest. The thresholds are common practice, no source.
 */
import { formatDimension, parseUnit } from '../../contracts/index.js'
import { chooseUnit, siUnit } from './unit-choice.js'

export const unitSystems = ['as written', 'SI', 'aviation'] as const
export type UnitSystem = (typeof unitSystems)[number]

/** What is to be shown: its unit so far, its name, and how large it is. */
export interface Shown {
  /** Of the author; absent where it is chosen by size. */
  readonly unit: string | undefined
  /** In base units; null where it is not known. */
  readonly dimension: string | null
  /** Tells an altitude from a range and a rate of climb from an airspeed. */
  readonly name: string
  /** Largest magnitude that is shown [SI]. */
  readonly largest: number
}

/** The unit text to show it in; `undefined` leaves the choice as it was. Always of the same dimension. */
export function unitFor(system: UnitSystem, shown: Shown): string | undefined {
  const { unit, dimension, largest } = shown
  if (system === 'as written' || (unit === undefined && dimension === null)) return unit
  if (system === 'SI') return unit === undefined ? undefined : sameQuantity(unit, inSi(unit, largest))
  const before = unit ?? chooseUnit(dimension ?? '1', largest)
  const after = sameQuantity(before, inAviation(before, shown))
  return after === before ? unit : after
}

/** A unit that cannot be read, or would change what is measured, stays. */
function sameQuantity(before: string, after: string): string {
  const [one, other] = [parseUnit(before), parseUnit(after)]
  if (!one.ok || !other.ok) return before
  return formatDimension(one.unit.dimension) === formatDimension(other.unit.dimension) ? after : before
}

const siOf: Readonly<Record<string, string>> = {
  ft: 'm',
  in: 'mm',
  nmi: 'km',
  mi: 'km',
  lb: 'kg',
  slug: 'kg',
  lbf: 'N',
  hp: 'kW',
  psf: 'Pa',
  psi: 'kPa',
  ft2: 'm2',
  kt: 'mps',
  fpm: 'mps',
}

/** A single unit is chosen by size, a compound one is translated factor by factor. */
function inSi(unit: string, largest: number): string {
  const translated = translate(unit, siOf)
  if (translated === unit) return unit
  const reading = parseUnit(unit)
  if (!reading.ok) return unit
  const dimension = formatDimension(reading.unit.dimension)
  return /^\w+$/.test(unit.trim()) ? chooseUnit(dimension, largest) : readable(translated, siUnit(dimension))
}

/** `mps` reads as m/s, which no longer says what was divided by it: such a compound is written in its SI unit. */
const readable = (translated: string, plain: string) => (/\bmps\b/.test(translated) ? plain : translated)

const aviationOf: Readonly<Record<string, string>> = {
  m: 'ft',
  km: 'nmi',
  cm: 'in',
  mm: 'in',
  mi: 'nmi',
  kg: 'lb',
  g: 'lb',
  t: 'lb',
  N: 'lbf',
  kN: 'lbf',
  m2: 'ft2',
  m3: 'ft^3',
  L: 'ft^3',
  MPa: 'psi',
  bar: 'psi',
}

/** Compounds that are quantities of their own. */
const aviationWhole: Readonly<Record<string, string>> = {
  'N/W': 'lbf/hp',
  'N/kW': 'lbf/hp',
  'N m': 'ft lbf',
  'Wh/km': 'Wh/nmi',
  'kWh/km': 'kWh/nmi',
}

/** With one of these in it a compound is read alike in both systems: Wh/kg, kW/kg, Pa s. */
const electrical = /\b(?:W|kW|MW|hp|J|kJ|MJ|Wh|kWh|A|V|Ah|ohm|mohm|C|K|Pa|kPa)\b/

function inAviation(unit: string, { name, largest }: Shown): string {
  const text = unit.trim()
  if (isSpeed(text)) return speedUnit(name, largest)
  if (/^(?:k?Pa|N\/m\^?2)$/.test(text)) return largest < loadingBelow ? 'psf' : 'psi'
  if (/^kg\/m\^?3$/.test(text)) return largest < gasBelow ? 'slug/ft^3' : 'lb/ft^3'
  if (text === 'km' && largest < farFrom && upright.test(name)) return 'ft'
  const whole = aviationWhole[text]
  if (whole !== undefined) return whole
  return electrical.test(text) ? unit : translate(unit, aviationOf)
}

/** Disk and wing loadings and dynamic pressures lie below, pressures of the air and stresses above [Pa]. */
const loadingBelow = 20_000
/** The densest gas of interest is lighter, the lightest foam heavier [kg/m^3]. */
const gasBelow = 10
/** Whatever is higher up than this is no aircraft of this kind [m]. */
const farFrom = 20_000
const upright = /altitude|height|ceiling|elevation|clearance|flight ?level/i

const isSpeed = (text: string) => /^(?:m\/s|mps|km\/h|kmh|m s\^-1)$/.test(text)

/** Faster than this nothing of this kind climbs or sinks; then it is the airspeed while it climbs [m/s]. */
const climbBelow = 15
const vertical = /climb|descent|descend|sink|vertical/i
const ofBlades = /\btips?\b|tip ?speed|induced|inflow/i

function speedUnit(name: string, largest: number): string {
  const words = name.replace(/(?<=[a-z])(?=[A-Z])/g, ' ')
  if (vertical.test(words) && largest < climbBelow) return 'fpm'
  return ofBlades.test(words) ? 'ft/s' : 'kt'
}

function translate(unit: string, counterparts: Readonly<Record<string, string>>): string {
  return unit.replace(/[A-Za-z]\w*/g, (symbol) => counterparts[symbol] ?? symbol)
}
