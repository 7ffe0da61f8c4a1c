import { requireFinite, requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Angle, Ratio } from '../quantity.js'
import { plateDrag } from './post-stall.js'

/** Measured or computed coefficients at one Reynolds number. */
export interface TableRows {
  /** Of the rows; may be left out where there is only one polar. */
  readonly reynolds?: Ratio
  /** Angles of attack, rising [rad]. */
  readonly angle: ArrayLike<Angle>
  /** Lift coefficients, one per angle. */
  readonly lift: ArrayLike<Ratio>
  /** Drag coefficients, one per angle. */
  readonly drag: ArrayLike<Ratio>
}

export interface TableSectionOptions {
  /** One polar, or several at different Reynolds numbers. */
  readonly polars: readonly TableRows[]
  /** Mach number of the measurement, 0 when left out. */
  readonly mach?: Ratio
  /** Of the blade, for its drag square to the stream; 10 when left out. */
  readonly aspectRatio?: Ratio
}

export interface TableSection {
  readonly section: 'table'
  /** By rising Reynolds number; a single polar without one has 0. */
  readonly polars: readonly {
    readonly reynolds: Ratio
    readonly angle: readonly Angle[]
    readonly lift: readonly Ratio[]
    readonly drag: readonly Ratio[]
  }[]
  readonly mach: Ratio
  /** Drag coefficient square to the stream. */
  readonly plateDrag: Ratio
}

const method = 'section.table'
const known = new Set(['polars', 'mach', 'aspectRatio'])
const knownRows = new Set(['reynolds', 'angle', 'lift', 'drag'])
/** Ends of a table between which the flat plate can be joined on [rad]. */
const leastEnd = 0.02
const greatestEnd = 1.4
/** A full circle may be written with few digits [rad]. */
const roundingOfPi = 0.01

/**
 * A section polar from tables of one's own, joined to the flat plate where they end.
 *
 * @equation c_l, c_d linear in angle and in ln Re between rows; c_l times sqrt(1 - M_table^2)/sqrt(1 - M^2); past the ends the flat plate of
 * `section.linear`
 * @param options - `polars`: list of `{ reynolds, angle [rad], lift, drag }`, equal lists of at least 3 numbers with rising angles;
 * optional `mach` of the measurement (0), `aspectRatio` of the blade (10)
 * @returns a frozen record for `rotor.bladeElement` and the propeller's methods; `section.coefficients` asks it
 * @throws InvalidInput for lists of unequal length, angles that do not rise, drag that is not positive, ends that the flat plate cannot be
 * joined to (the last angle between 0.02 and 1.4 rad with positive lift, the first its mirror image, or a full circle from -pi to pi), two
 * polars at one Reynolds number, and an unknown option
 * @method Outside the Reynolds numbers given the nearest polar is held. Drag knows no Mach number but that of the table.
 * @validity Within the angles and Reynolds numbers given; the users of the section advise where they leave them.
 * @source The table's own. Mach: Glauert, Proceedings of the Royal Society A 118, 1928 (from memory). Past the ends: Viterna and Corrigan, 1982 (from memory).
 * @example
 * const tested = section.table({
 *   polars: [{ reynolds: 3e5, angle: [-0.2, 0, 0.1, 0.2], lift: [-0.9, 0.1, 0.7, 1.1], drag: [0.03, 0.01, 0.012, 0.03] }],
 * })
 * section.coefficients({ section: tested, angleOfAttack: 0.05 }).lift // 0.4
 */
export function table(options: TableSectionOptions): TableSection {
  checkOptions(method, options, known)
  const { polars, mach = 0, aspectRatio = 10 } = options
  if (!Array.isArray(polars) || polars.length === 0)
    throw new InvalidInput({
      method,
      argument: 'polars',
      value: describeValue(polars),
      accepted: 'a list of at least one { reynolds, angle, lift, drag }',
    })
  requireWithin(method, 'mach', mach, '1', 0, 0.8)
  requirePositive(method, 'aspectRatio', aspectRatio, '1')
  const rows = polars.map((one, index) => readRows(one, `polars[${index}]`, polars.length > 1))
  rows.sort((a, b) => a.reynolds - b.reynolds)
  rows.forEach((one, index) => {
    if (index > 0 && one.reynolds === rows[index - 1]?.reynolds)
      throw new InvalidInput({
        method,
        argument: 'polars',
        value: `two at a Reynolds number of ${one.reynolds}`,
        accepted: 'at different Reynolds numbers',
      })
  })
  return Object.freeze({ section: 'table', polars: Object.freeze(rows), mach, plateDrag: plateDrag(aspectRatio) })
}

function readRows(rows: TableRows, at: string, several: boolean): TableSection['polars'][number] {
  checkOptions(`${method} ${at}`, rows, knownRows)
  const angle = readNumbers(rows.angle, `${at}.angle`)
  const lift = readNumbers(rows.lift, `${at}.lift`, angle.length)
  const drag = readNumbers(rows.drag, `${at}.drag`, angle.length)
  if (several || rows.reynolds !== undefined) requirePositive(method, `${at}.reynolds`, rows.reynolds as number, '1')
  angle.forEach((value, index) => {
    const before = angle[index - 1]
    if (before !== undefined && !(value > before))
      throw new InvalidInput({
        method,
        argument: `${at}.angle[${index}]`,
        value,
        unit: 'rad',
        accepted: `above the one before it, ${before} rad`,
      })
  })
  drag.forEach((value, index) => {
    requirePositive(method, `${at}.drag[${index}]`, value, '1')
  })
  requireEnds(at, angle, lift)
  return Object.freeze({
    reynolds: rows.reynolds ?? 0,
    angle: Object.freeze(angle),
    lift: Object.freeze(lift),
    drag: Object.freeze(drag),
  })
}

function readNumbers(values: ArrayLike<number>, argument: string, length?: number): number[] {
  const isList = Array.isArray(values) || ArrayBuffer.isView(values)
  const list = isList ? Array.from(values) : []
  if (list.length < 3 || list.length > 2000 || (length !== undefined && list.length !== length))
    throw new InvalidInput({
      method,
      argument,
      value: isList ? `a list of ${list.length}` : describeValue(values),
      accepted: length === undefined ? 'a list of 3 to 2000 numbers' : `a list of ${length}, one per angle`,
    })
  list.forEach((value, index) => {
    if (!Number.isFinite(value) || Math.abs(value) > 100) requireFinite(method, `${argument}[${index}]`, value, '1')
    if (Math.abs(value) > 100) requireWithin(method, `${argument}[${index}]`, value, '1', -100, 100)
  })
  return list
}

/** The flat plate joins on where the table ends: a stall on either side, or the table goes all the way round. */
function requireEnds(at: string, angle: readonly number[], lift: readonly number[]): void {
  const first = angle[0] ?? 0
  const last = angle[angle.length - 1] ?? 0
  if (Math.abs(first + Math.PI) < roundingOfPi && Math.abs(last - Math.PI) < roundingOfPi) return
  const upper = last >= leastEnd && last <= greatestEnd && (lift[lift.length - 1] ?? 0) > 0
  const lower = first <= -leastEnd && first >= -greatestEnd && (lift[0] ?? 0) < 0
  if (upper && lower) return
  throw new InvalidInput({
    method,
    argument: `${at}.angle`,
    value: upper ? first : last,
    unit: 'rad',
    accepted: upper
      ? `at its first place from -${greatestEnd} to -${leastEnd} rad, with negative lift there`
      : `at its last place from ${leastEnd} to ${greatestEnd} rad, with positive lift there`,
    remedy: 'The flat plate is joined to the ends of the table; a table from -pi to pi needs none.',
  })
}
