import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { Ratio, Speed } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { type ConditionsOptions, knownConditions, readConditions } from './conditions.js'
import type { Moment } from './moment.js'
import { downloadAt, type Edgewise, setEdgewise } from './rotor-borne.js'
import { speedAt } from './transition-slice.js'
import { stopRotors } from './trim.js'

export interface CorridorOptions extends ConditionsOptions {
  /** Last speed [m/s]; 1.4 times the stall speed when left out. */
  readonly to?: Speed
  /** Number of speeds; 61 when left out. */
  readonly points?: Ratio
  /** Lift coefficient of the wing at the least incidence flown; 0 when left out. */
  readonly leastLift?: Ratio
  /** Lift rotors that do not turn; 0 when left out. */
  readonly stoppedRotors?: Ratio
}

export type RotorLimit = 'blade loading' | 'power'

/** Shares of the weight that the rotors may carry, over speed. */
export interface Corridor {
  /** [m/s] */
  readonly speed: readonly Speed[]
  /** Less than this, and the wing stalls. */
  readonly stallShare: readonly Ratio[]
  /** More than this, and the wing would have to push down (below its least incidence). */
  readonly incidenceShare: readonly Ratio[]
  /** More than this the rotors cannot give; may be above 1. */
  readonly rotorLimitShare: readonly Ratio[]
  readonly rotorLimit: readonly RotorLimit[]
  /** As `mission.trim` flies it. */
  readonly flownShare: readonly Ratio[]
  /** True where at every speed something is left between the bounds. */
  readonly open: boolean
  /** Least distance between the rotors' limit and the stall, of the weight; negative where it is closed. */
  readonly leastWidth: Ratio
  /** [m/s] */
  readonly narrowestSpeed: Speed
  readonly stallSpeed: Speed
  readonly conversionSpeed: Speed
}

const method = 'mission.corridor'
const known = new Set([...knownConditions, 'to', 'points', 'leastLift', 'stoppedRotors'])
/** Blade loading at which the retreating blade stalls falls with advance ratio. */
const fallWithAdvance = 0.8

/**
 * The conversion corridor: between the stall of the wing below and the limits of the rotors above, as shares of the weight on the rotors.
 *
 * @equation stall: s >= 1 - q S C_L,max/W; incidence: s <= 1 - q S C_L,least/W; blades: T <= (C_T/sigma)_max (1 - 0.8 mu) sigma rho A V_tip^2; power: P_r(T, V) <= P_limit; s = T (1 - d)/W
 * @param options - `aircraft` with `lift.solidity` or `lift.powerLimit`; optional `altitude` [m], `temperatureOffset` [K], `mass` [kg], `to` [m/s] (1.4 stall speeds), `points` (61), `leastLift` (0), `stoppedRotors` (0)
 * @returns lists of `speed` [m/s], `stallShare`, `incidenceShare`, `rotorLimitShare`, `rotorLimit`, `flownShare`; `open`, `leastWidth`, `narrowestSpeed`, `stallSpeed`, `conversionSpeed` [m/s]
 * @throws InvalidInput for rotors without any limit, a value outside its range, as many stopped rotors as there are, and an unknown option
 * @method Level flight without acceleration; the rotors' power limit by Brent's root.
 * @validity Blades at the tip speed of hover. The fall of blade loading with advance ratio is after a limit of tunnel tests (0.12 in hover, some 0.08 at 0.4; from memory) and a house model in its
 * straightness. Climb and manoeuvre narrow the corridor; they are not in it. A closed corridor carries an advisory.
 * @source House model on `rotor.edgewise`; stall: textbook identity.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9, powerLimit: 480 * u.kW },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 * })
 * mission.corridor({ aircraft: craft }).open // true
 */
export function corridor(options: CorridorOptions): Corridor {
  checkOptions(method, options, known)
  const { points = 61, leastLift = 0, stoppedRotors = 0 } = options
  requireWithin(method, 'points', points, '1', 2, 2000)
  const moment = readConditions(method, options)
  requireRotorLimit(moment)
  stopRotors(method, moment, stoppedRotors)
  requireWithin(method, 'leastLift', leastLift, '1', -moment.craft.maximumLift, moment.sharingLift)
  const { to = 1.4 * moment.stallSpeed } = options
  requirePositive(method, 'to', to, 'm/s')
  const answer = walk(moment, to, Math.round(points) - 1, leastLift)
  if (isListening() && !answer.open) adviseClosed(answer)
  return answer
}

function walk(moment: Moment, to: number, count: number, leastLift: number): Corridor {
  const lists = {
    speed: [] as number[],
    stallShare: [] as number[],
    incidenceShare: [] as number[],
    rotorLimitShare: [] as number[],
    rotorLimit: [] as RotorLimit[],
    flownShare: [] as number[],
  }
  let leastWidth = Number.MAX_VALUE
  let narrowestSpeed = 0
  for (let index = 0; index <= count; index += 1) {
    const speed = speedAt(index, count, moment.conversion, to)
    const perLift = (0.5 * moment.density * speed * speed * moment.craft.wingArea) / moment.weight
    const stall = Math.max(0, 1 - perLift * moment.craft.maximumLift)
    const limit = rotorLimitAt(moment, speed)
    const width = limit.share - stall
    requireRepresentable(method, speed + perLift + limit.share)
    lists.speed.push(speed)
    lists.stallShare.push(stall)
    lists.incidenceShare.push(Math.max(0, Math.min(1 - perLift * leastLift, 2)))
    lists.rotorLimitShare.push(limit.share)
    lists.rotorLimit.push(limit.binds)
    lists.flownShare.push(Math.max(0, 1 - perLift * moment.sharingLift))
    if (width < leastWidth) {
      leastWidth = width
      narrowestSpeed = speed
    }
  }
  const { stallSpeed, conversion: conversionSpeed } = moment
  return { ...lists, open: leastWidth >= 0, leastWidth, narrowestSpeed, stallSpeed, conversionSpeed }
}

function requireRotorLimit({ craft }: Moment): void {
  if (craft.lift.solidity !== undefined || craft.lift.powerLimit !== undefined) return
  throw new InvalidInput({
    method,
    argument: 'aircraft.lift.solidity or .powerLimit',
    value: 'missing',
    accepted: 'at least one of the two: without them the rotors have no limit',
  })
}

function rotorLimitAt(moment: Moment, speed: number): { readonly share: number; readonly binds: RotorLimit } {
  const perThrust = (1 - downloadAt(moment, speed)) / moment.weight
  const byBlades = greatestByBlades(moment, speed)
  const byPower = greatestByPower(moment, speed)
  return byBlades <= byPower
    ? { share: byBlades * perThrust, binds: 'blade loading' }
    : { share: byPower * perThrust, binds: 'power' }
}

function greatestByBlades(moment: Moment, speed: number): number {
  const { density, diskArea, tipSpeed, craft } = moment
  const { solidity, greatestBladeLoading } = craft.lift
  if (solidity === undefined) return Number.MAX_VALUE
  const left = Math.max(0, 1 - (fallWithAdvance * speed) / tipSpeed)
  return greatestBladeLoading * left * solidity * density * diskArea * tipSpeed * tipSpeed
}

const scratch: Edgewise = { thrust: 0, inducedPower: 0, profilePower: 0, hForce: 0 }

/** Beyond ten times the thrust of hover no one asks. */
function greatestByPower(moment: Moment, speed: number): number {
  const { powerLimit } = moment.craft.lift
  if (powerLimit === undefined) return Number.MAX_VALUE
  const most = 10 * moment.hoverThrust
  const keep = 1 - downloadAt(moment, speed)
  const excess = (thrust: number) => {
    setEdgewise(scratch, moment, speed, thrust * keep)
    return (scratch.inducedPower + scratch.profilePower) / powerLimit - 1
  }
  const atMost = excess(most)
  if (!(atMost > 0)) return most
  return brentRoot(excess, 0, most, -1, atMost, 1e-12).x
}

function adviseClosed({ leastWidth, narrowestSpeed }: Corridor): void {
  advise({
    code: 'CORRIDOR_CLOSED',
    method,
    quantity: 'leastWidth',
    value: leastWidth,
    range: [0, null],
    message: `The conversion corridor is closed: at ${narrowestSpeed.toFixed(1)} m/s wing and rotors together lack ${(-100 * leastWidth).toFixed(1)} % of the weight.`,
  })
}
