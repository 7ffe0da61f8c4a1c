import { requirePositive } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Force, Length } from '../quantity.js'
import type { Layout, LayoutRotor } from './parts.js'
import { requireLayout } from './record.js'

export interface UnitsOptions {
  /** Greatest thrust of each rotor, or one for all [N]. */
  readonly maxThrust: Force | readonly Force[]
  /** Torque over thrust of each rotor, or one for all [m]. */
  readonly torqueRatio: Length | readonly Length[]
}

/** A rotor of a layout with what it can give. */
export interface LayoutUnit extends LayoutRotor {
  /** [N] */
  readonly maxThrust: Force
  /** Torque over thrust [m]. */
  readonly torqueRatio: Length
}

const method = 'layout.units'
const known = new Set(['maxThrust', 'torqueRatio'])

/**
 * The rotors of a layout with the thrust and torque that each can give: what trim and hover limits take.
 *
 * @equation torque ratio = Q/T = P/(T Omega)
 * @param layout - what a builder of layouts returns
 * @param options - `maxThrust` [N] and `torqueRatio` [m], each one number for all rotors or a list, one per rotor in their order
 * @returns the rotors in their order, each with `maxThrust` [N] and `torqueRatio` [m] beside its place, spin, cant and role
 * @throws InvalidInput for what is no layout, lists of another length than the rotors, values that are not positive, and an unknown option
 * @method Joins the two.
 * @validity Any.
 * @source House convention, no publication.
 * @example
 * const plan = layout.multirotor({ count: 6, rotorRadius: 1 * u.m })
 * const lifting = layout.units(plan, { maxThrust: 4 * u.kN, torqueRatio: 0.08 * u.m })
 * lifting.length // 6
 */
export function units(layout: Layout, options: UnitsOptions): readonly LayoutUnit[] {
  requireLayout(method, layout)
  checkOptions(method, options, known)
  const count = layout.rotors.length
  const thrusts = eachOf('maxThrust', options.maxThrust, count, 'N')
  const ratios = eachOf('torqueRatio', options.torqueRatio, count, 'm')
  return Object.freeze(
    layout.rotors.map((rotor, index) =>
      Object.freeze({ ...rotor, maxThrust: thrusts[index] as number, torqueRatio: ratios[index] as number }),
    ),
  )
}

function eachOf(argument: string, given: number | readonly number[], count: number, unit: string): readonly number[] {
  if (!Array.isArray(given)) {
    requirePositive(method, argument, given as number, unit)
    return new Array<number>(count).fill(given as number)
  }
  if (given.length !== count)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(given),
      accepted: `one number, or a list of ${count}, one per rotor`,
    })
  given.forEach((value, index) => {
    requirePositive(method, `${argument}[${index}]`, value, unit)
  })
  return given
}
