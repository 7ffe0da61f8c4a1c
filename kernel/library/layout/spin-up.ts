import {
  requireCount,
  requireNonNegative,
  requirePositive,
  requireRepresentable,
  requireText,
  requireWithin,
} from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import type { AngularSpeed, Frequency, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface SpinUpMode {
  readonly name: string
  /** With the rotor standing [Hz]: for instance `frequency` of `mass.boom`. */
  readonly frequency: Frequency
  /** Rise of the squared frequency with the squared rotor speed: about 1.2 for the first flapping of a hinged-free blade, 0 (when left out) for booms. */
  readonly stiffening?: Ratio
}

export interface SpinUpOptions {
  readonly blades: Ratio
  /** Least and greatest speed at which the rotor works [rad/s]. */
  readonly operating: readonly [AngularSpeed, AngularSpeed]
  readonly modes: readonly SpinUpMode[]
  /** Multiples of the rotor speed that excite; once per turn and the blade passage when left out. */
  readonly orders?: readonly Ratio[]
  /** Least distance from an excitation over it while working; 0.15 when left out. */
  readonly wanted?: Ratio
}

export interface Crossing {
  readonly mode: string
  /** Multiple of the rotor speed. */
  readonly order: Ratio
  /** Rotor speed at which they meet [rad/s]. */
  readonly speed: AngularSpeed
  /** [Hz] */
  readonly frequency: Frequency
  /** `'working'`: within the range of work; `'spin-up'`: passed on the way to it. */
  readonly where: 'working' | 'spin-up'
}

export interface SpinUp {
  readonly blades: Ratio
  readonly operating: readonly [AngularSpeed, AngularSpeed]
  readonly modes: readonly Required<SpinUpMode>[]
  readonly orders: readonly Ratio[]
  readonly crossings: readonly Crossing[]
  /** For each mode and order the least distance while working, |f_mode/f_order - 1|: 0 where they meet. */
  readonly margins: readonly {
    readonly mode: string
    readonly order: Ratio
    readonly margin: Ratio
    readonly met: boolean
    readonly text: string
  }[]
  readonly met: boolean
}

const method = 'layout.spinUp'
const known = new Set(['blades', 'operating', 'modes', 'orders', 'wanted'])
const knownMode = new Set(['name', 'frequency', 'stiffening'])

/**
 * Where natural frequencies of boom and blade meet the rotor's excitations on the way from standstill to full speed.
 *
 * @equation mode: f^2 = f_0^2 + k (Omega/(2 pi))^2; excitation: f = p Omega/(2 pi), p = 1 and the number of blades; they meet at Omega = 2 pi f_0/sqrt(p^2 - k)
 * @param options - `blades`, `operating`: [least, greatest] [rad/s], `modes`: list of `{ name, frequency f_0 [Hz], stiffening k (0) }`; optional `orders` p ([1, blades]), `wanted` distance while working (0.15)
 * @returns `crossings`: list of `{ mode, order, speed [rad/s], frequency [Hz], where }`, `margins`: list of `{ mode, order, margin, met, text }`, `met`, and what was asked, for `figure.spinUp`
 * @throws InvalidInput for no modes, speeds that are not positive or do not rise, no blades, a name that is no text, and an unknown option
 * @method Closed form. Lift rotors start and stop in every flight, so that all that lies below the working range is passed twice.
 * @validity One mode at a time: coupling of a whirling rotor with its boom, and ground resonance of blades soft in their plane, need their own analysis. Each meeting in the working range carries an advisory.
 * @source The diagram: Campbell, W., Protection of Steam-Turbine Disk Wheels, Transactions of the ASME 46, 1924. Stiffening: Southwell's theorem (both from memory). The distance: common practice, no source.
 * @example
 * const seen = layout.spinUp({ blades: 2, operating: [1000 * u.rpm, 1300 * u.rpm], modes: [{ name: 'boom, bending', frequency: 14 * u.Hz }] })
 * seen.crossings[0].speed / u.rpm // 420
 */
export function spinUp(options: SpinUpOptions): SpinUp {
  const { blades, operating, modes, orders, wanted } = readSpinUp(options)
  const [low, high] = operating
  const pairs = modes.flatMap((mode) => orders.map((order) => ({ mode, order })))
  const crossings = pairs.flatMap(({ mode, order }): Crossing[] => {
    const speed = meeting(mode, order)
    if (speed === null || speed > high * (1 + 1e-12)) return []
    const where = speed >= low * (1 - 1e-12) ? 'working' : 'spin-up'
    return [{ mode: mode.name, order, speed, frequency: (order * speed) / (2 * Math.PI), where }]
  })
  const margins = pairs.map(({ mode, order }) => marginOf(mode, order, operating, wanted))
  requireRepresentable(
    method,
    margins.reduce((sum, one) => sum + one.margin, 0) + crossings.reduce((sum, one) => sum + one.speed, 0),
  )
  if (isListening())
    for (const { met, margin, text } of margins)
      if (!met)
        advise({
          code: 'RESONANCE',
          method,
          quantity: 'margin',
          value: margin,
          range: [wanted, null],
          message: text,
        })
  crossings.sort((a, b) => a.speed - b.speed)
  return { blades, operating, modes, orders, crossings, margins, met: margins.every((one) => one.met) }
}

function readSpinUp(options: SpinUpOptions) {
  checkOptions(method, options, known)
  const { blades, operating, modes, wanted = 0.15 } = options
  requireCount(method, 'blades', blades)
  requireWithin(method, 'blades', blades, '1', 1, 100)
  if (!Array.isArray(operating) || operating.length !== 2)
    throw new InvalidInput({
      method,
      argument: 'operating',
      value: describeValue(operating),
      accepted: '[least, greatest] speed of work',
    })
  const [low, high] = operating as readonly [number, number]
  requirePositive(method, 'operating[0]', low, 'rad/s')
  requireWithin(method, 'operating[1]', high, 'rad/s', low, 1e6)
  if (!Array.isArray(modes) || modes.length === 0 || modes.length > 20)
    throw new InvalidInput({
      method,
      argument: 'modes',
      value: describeValue(modes),
      accepted: 'a list of 1 to 20 { name, frequency, stiffening }',
    })
  const orders = options.orders ?? (blades === 1 ? [1] : [1, blades])
  if (!Array.isArray(orders) || orders.length === 0 || orders.length > 12)
    throw new InvalidInput({
      method,
      argument: 'orders',
      value: describeValue(orders),
      accepted: 'a list of 1 to 12 multiples of the rotor speed',
    })
  orders.forEach((order, index) => {
    requireWithin(method, `orders[${index}]`, order, '1', 0.1, 1000)
  })
  requireNonNegative(method, 'wanted', wanted, '1')
  return { blades, operating: [low, high] as const, modes: modes.map(readMode), orders, wanted }
}

function readMode(mode: SpinUpMode, index: number): Required<SpinUpMode> {
  const at = `modes[${index}]`
  checkOptions(`${method} ${at}`, mode, knownMode)
  const { name, frequency, stiffening = 0 } = mode
  requireText(method, `${at}.name`, name)
  requirePositive(method, `${at}.frequency`, frequency, 'Hz')
  requireWithin(method, `${at}.frequency`, frequency, 'Hz', 0, 1e6)
  requireWithin(method, `${at}.stiffening`, stiffening, '1', 0, 1000)
  return { name, frequency, stiffening }
}

/** Frequency of a mode at a rotor speed [Hz]. */
export function frequencyAt({ frequency, stiffening }: Required<SpinUpMode>, speed: number): number {
  return Math.sqrt(frequency * frequency + stiffening * (speed / (2 * Math.PI)) ** 2)
}

/** Null where a mode rises faster than the excitation and they never meet. */
function meeting({ frequency, stiffening }: Required<SpinUpMode>, order: number): number | null {
  const square = order * order - stiffening
  return square > 1e-12 ? (2 * Math.PI * frequency) / Math.sqrt(square) : null
}

/** The mode over the excitation falls with speed, so the least distance is at an end of the range of work, or none within it. */
function marginOf(
  mode: Required<SpinUpMode>,
  order: number,
  [low, high]: readonly [number, number],
  wanted: number,
): SpinUp['margins'][number] {
  const over = (speed: number) => frequencyAt(mode, speed) / ((order * speed) / (2 * Math.PI)) - 1
  const [atLow, atHigh] = [over(low), over(high)]
  const margin = atLow * atHigh <= 0 ? 0 : Math.min(Math.abs(atLow), Math.abs(atHigh))
  const met = margin >= wanted - 1e-12
  const line = order === 1 ? 'once per turn' : `${writeNumber(order)} per turn`
  const text =
    margin === 0
      ? `${mode.name} meets ${line} while the rotor works.`
      : `${mode.name} stays ${Number((100 * margin).toFixed(1))} % away from ${line} while the rotor works.`
  return { mode: mode.name, order, margin, met, text }
}
