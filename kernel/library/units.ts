/**
 * `u`: the units of the contracts' table as numbers with a dimension. `250 * u.kW` makes a power, `power / u.kW` takes it apart.
 *
 * The factors live in one table, shared with the reader of unit text; this file only gives each symbol its type, because a
 * type cannot be computed from the table's exponents and a reader of a cell wants the unit's name on hovering.
 */
import { type UnitSymbol, unitTable } from '../../shared/contracts/unit-table.js'
import type {
  Acceleration,
  Angle,
  AngularSpeed,
  Area,
  Charge,
  Current,
  Energy,
  Force,
  Frequency,
  Length,
  Mass,
  Power,
  Pressure,
  Resistance,
  Speed,
  Temperature,
  Time,
  Voltage,
  Volume,
} from './quantity.js'

/** Units with exact factors to SI. Products and quotients make the others: `235 * u.Wh / u.kg`. */
export interface Units {
  /** metre */
  readonly m: Length
  /** kilometre */
  readonly km: Length
  /** centimetre */
  readonly cm: Length
  /** millimetre */
  readonly mm: Length
  /** foot */
  readonly ft: Length
  /** inch */
  readonly in: Length
  /** nautical mile */
  readonly nmi: Length
  /** mile */
  readonly mi: Length
  /** kilogram */
  readonly kg: Mass
  /** gram */
  readonly g: Mass
  /** tonne */
  readonly t: Mass
  /** pound */
  readonly lb: Mass
  /** slug */
  readonly slug: Mass
  /** second */
  readonly s: Time
  /** minute */
  readonly min: Time
  /** hour */
  readonly h: Time
  /** newton */
  readonly N: Force
  /** kilonewton */
  readonly kN: Force
  /** pound-force */
  readonly lbf: Force
  /** watt */
  readonly W: Power
  /** kilowatt */
  readonly kW: Power
  /** megawatt */
  readonly MW: Power
  /** mechanical horsepower */
  readonly hp: Power
  /** joule */
  readonly J: Energy
  /** kilojoule */
  readonly kJ: Energy
  /** megajoule */
  readonly MJ: Energy
  /** watt-hour */
  readonly Wh: Energy
  /** kilowatt-hour */
  readonly kWh: Energy
  /** pascal */
  readonly Pa: Pressure
  /** kilopascal */
  readonly kPa: Pressure
  /** megapascal */
  readonly MPa: Pressure
  /** bar */
  readonly bar: Pressure
  /** pound-force per square foot */
  readonly psf: Pressure
  /** pound-force per square inch */
  readonly psi: Pressure
  /** square metre */
  readonly m2: Area
  /** square foot */
  readonly ft2: Area
  /** cubic metre */
  readonly m3: Volume
  /** litre */
  readonly L: Volume
  /** metre per second */
  readonly mps: Speed
  /** kilometre per hour */
  readonly kmh: Speed
  /** knot */
  readonly kt: Speed
  /** foot per minute */
  readonly fpm: Speed
  /** radian */
  readonly rad: Angle
  /** degree */
  readonly deg: Angle
  /** revolution per minute */
  readonly rpm: AngularSpeed
  /** hertz */
  readonly Hz: Frequency
  /** kelvin */
  readonly K: Temperature
  /** ampere */
  readonly A: Current
  /** volt */
  readonly V: Voltage
  /** ohm */
  readonly ohm: Resistance
  /** milliohm */
  readonly mohm: Resistance
  /** ampere-hour */
  readonly Ah: Charge
  /** coulomb */
  readonly C: Charge
  /** standard gravity */
  readonly g0: Acceleration
}

/** Fails to compile when the interface lacks a unit of the table. */
type Complete = Units extends Record<UnitSymbol, number> ? Units : never

/** Made in one step: V8 looks names up slowly in an object that grew to fifty of them, and units stand in inner loops. */
function readTable(): Complete {
  const units = Object.fromEntries(unitTable.map(({ symbol, factor }) => [symbol, factor])) as Record<
    UnitSymbol,
    number
  >
  return Object.freeze(units) as Complete
}

/**
 * Units as numbers in SI.
 *
 * @equation value in SI = number x factor; number = value in SI / factor
 * @validity Exact by definition, to the last digit of a double. Temperatures are kelvin only: Celsius has an offset.
 * @source BIPM, The International System of Units (SI), 9th edition, 2019; NIST Special Publication 811, 2008, appendix B.
 * @example
 * const packSpecificEnergy = (235 * u.Wh) / u.kg // 846000 J/kg
 * const inKilowatts = (12000 * u.W) / u.kW // 12
 */
export const u: Units = readTable()
