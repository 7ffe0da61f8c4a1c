import { gravity } from '../air/constants.js'
import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Force, Length, Mass, Ratio, Torque } from '../quantity.js'

export interface BoomRotor {
  /** From the wing to the hub: ahead positive, behind negative [m]. */
  readonly arm: Length
  /** Rotor, hub and motor [kg]. */
  readonly mass: Mass
  /** After the loss of another rotor, control included [N]. */
  readonly maxThrust: Force
  /** In transition; 0 when left out [N]. */
  readonly transitionThrust?: Force
  /** What `layout.hubMoment` returns for transition; none when left out. */
  readonly hubMoment?: { readonly roll: Torque; readonly pitch: Torque }
  /** Lift or drag across the boom of the stopped blades at dive speed; 0 when left out [N]. */
  readonly stoppedForce?: Force
}

export interface BoomLoadsOptions {
  /** Of one side of the wing: all ahead or all behind. */
  readonly rotors: readonly BoomRotor[]
  /** Limit load factor of manoeuvre or gust, rotors stopped; 3.8 when left out. */
  readonly manoeuvreFactor?: Ratio
  /** Limit load factor at touch-down; 3 when left out. */
  readonly landingFactor?: Ratio
}

export type BoomCase = 'greatest thrust' | 'transition' | 'manoeuvre' | 'stopped blades in a dive' | 'landing'

export interface BoomLoads {
  readonly cases: readonly {
    readonly name: BoomCase
    /** Across the boom at the wing, up positive [N]. */
    readonly shear: Force
    /** At the wing, nose up positive [N m]. */
    readonly bending: Torque
    /** About the boom [N m]. */
    readonly torsion: Torque
  }[]
  /** Case of the greatest bending. */
  readonly binds: BoomCase
  /** The longest arm, and the force at its end that bends as the worst case does: for `mass.boom` [m], [N]. */
  readonly length: Length
  readonly tipForce: Force
  /** Greatest torsion of any case, for `mass.boom` [N m]. */
  readonly tipTorque: Torque
  /** Mass at the tip that swings as the rotors do: sum of m (arm/length)^3 [kg]. */
  readonly tipMass: Mass
}

const method = 'layout.boomLoads'
const known = new Set(['rotors', 'manoeuvreFactor', 'landingFactor'])
const knownRotor = new Set(['arm', 'mass', 'maxThrust', 'transitionThrust', 'hubMoment', 'stoppedForce'])

/**
 * Limit loads of a boom that carries lift rotors, case by case, and the one that sizes it.
 *
 * @equation bending at the wing: sum (T - m g) a (greatest thrust); sum ((T - m g) a + M_pitch), torsion sum M_roll (transition); -n sum m g a (manoeuvre, landing); -sum (F + m g) a (dive); tip force = largest/longest arm
 * @param options - `rotors`: list of `{ arm a [m], mass [kg], maxThrust [N], transitionThrust [N] (0), hubMoment: { roll, pitch } [N m], stoppedForce F [N] (0) }`; optional `manoeuvreFactor` (3.8), `landingFactor` (3)
 * @returns `cases`: list of `{ name, shear [N], bending, torsion [N m] }`, `binds`, and for `mass.boom`: `length` [m], `tipForce` [N], `tipTorque` [N m], `tipMass` [kg]
 * @throws InvalidInput for no rotors or more than 16, rotors on both sides of the wing, values that are not positive, and an unknown option
 * @method Statics of a cantilever; its own mass is left to `mass.boom`. Masses inboard of the tip count with the cube of their share of the length: a load there moves the tip less (a house simplification; exact are 0 and 1).
 * @validity Limit loads; `mass.boom` applies the ultimate factor. Torque of the rotors about their shafts bends the boom sideways by a few percent of the thrust's moment and is left out.
 * @source Statics. Factors: CS 23.337 for normal aircraft (3.8 at low mass, from memory); landing: common practice, no source.
 * @example
 * const loads = layout.boomLoads({ rotors: [{ arm: 1.6 * u.m, mass: 22 * u.kg, maxThrust: 3.5 * u.kN }] })
 * loads.tipForce // 3284
 */
export function boomLoads(options: BoomLoadsOptions): BoomLoads {
  const { rotors, manoeuvreFactor, landingFactor } = readLoads(options)
  const sum = (of: (rotor: Filled) => number) => rotors.reduce((total, rotor) => total + of(rotor), 0)
  const made = (name: BoomCase, force: (rotor: Filled) => number, hubs: 0 | 1) => ({
    name,
    shear: sum(force),
    bending: sum((rotor) => force(rotor) * rotor.arm + hubs * rotor.pitch),
    torsion: hubs * sum((rotor) => rotor.roll),
  })
  const cases = [
    made('greatest thrust', ({ maxThrust, mass }) => maxThrust - mass * gravity, 0),
    made('transition', ({ transitionThrust, mass }) => transitionThrust - mass * gravity, 1),
    made('manoeuvre', ({ mass }) => -manoeuvreFactor * mass * gravity, 0),
    made('stopped blades in a dive', ({ stoppedForce, mass }) => -stoppedForce - mass * gravity, 0),
    made('landing', ({ mass }) => -landingFactor * mass * gravity, 0),
  ]
  const worst = cases.reduce((most, one) => (Math.abs(one.bending) > Math.abs(most.bending) ? one : most))
  const length = Math.max(...rotors.map(({ arm }) => Math.abs(arm)))
  const answer = {
    cases,
    binds: worst.name,
    length,
    tipForce: Math.abs(worst.bending) / length,
    tipTorque: Math.max(...cases.map((one) => Math.abs(one.torsion))),
    tipMass: sum(({ mass, arm }) => mass * (Math.abs(arm) / length) ** 3),
  }
  const { tipForce, tipTorque, tipMass } = answer
  requireRepresentable(
    method,
    cases.reduce((total, one) => total + one.shear + one.bending + one.torsion, 0),
  )
  requireRepresentable(method, tipForce + tipTorque + tipMass)
  return answer
}

interface Filled {
  readonly arm: number
  readonly mass: number
  readonly maxThrust: number
  readonly transitionThrust: number
  readonly stoppedForce: number
  readonly roll: number
  readonly pitch: number
}

function readLoads(options: BoomLoadsOptions) {
  checkOptions(method, options, known)
  const { rotors, manoeuvreFactor = 3.8, landingFactor = 3 } = options
  if (!Array.isArray(rotors) || rotors.length === 0 || rotors.length > 16)
    throw new InvalidInput({
      method,
      argument: 'rotors',
      value: describeValue(rotors),
      accepted: 'a list of 1 to 16 { arm, mass, maxThrust }',
    })
  requirePositive(method, 'manoeuvreFactor', manoeuvreFactor, '1')
  requirePositive(method, 'landingFactor', landingFactor, '1')
  const filled = rotors.map((rotor, index) => readRotor(`rotors[${index}]`, rotor))
  if (filled.some(({ arm }) => arm > 0 !== (filled[0] as Filled).arm > 0))
    throw new InvalidInput({
      method,
      argument: 'rotors',
      value: 'on both sides of the wing',
      accepted: 'those ahead of the wing, or those behind it: each side is a cantilever of its own',
    })
  return { rotors: filled, manoeuvreFactor, landingFactor }
}

function readRotor(at: string, rotor: BoomRotor): Filled {
  checkOptions(`${method} ${at}`, rotor, knownRotor)
  const { arm, mass, maxThrust, transitionThrust = 0, stoppedForce = 0, hubMoment } = rotor
  requireWithin(method, `${at}.arm`, arm, 'm', -1000, 1000)
  requirePositive(method, `|${at}.arm|`, Math.abs(arm), 'm')
  requireNonNegative(method, `${at}.mass`, mass, 'kg')
  requireNonNegative(method, `${at}.maxThrust`, maxThrust, 'N')
  requireNonNegative(method, `${at}.transitionThrust`, transitionThrust, 'N')
  requireNonNegative(method, `${at}.stoppedForce`, stoppedForce, 'N')
  const { roll = 0, pitch = 0 } = hubMoment ?? {}
  requireWithin(method, `${at}.hubMoment.roll`, roll, 'N m', -1e12, 1e12)
  requireWithin(method, `${at}.hubMoment.pitch`, pitch, 'N m', -1e12, 1e12)
  return { arm, mass, maxThrust, transitionThrust, stoppedForce, roll, pitch }
}
