/** What the lift rotors are asked to hold: forces and moments in hover, by their names. */
import { describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'

/** `lift` up, `side` to the right, `forward`; `roll` right side down, `pitch` nose up, `yaw` nose right. */
export type Axis = 'lift' | 'roll' | 'pitch' | 'yaw' | 'side' | 'forward'

export const axes: readonly Axis[] = ['lift', 'roll', 'pitch', 'yaw', 'side', 'forward']
/** Lift and attitude: what a hovering aircraft flown by a person has to keep. */
export const usualHold: readonly Axis[] = ['lift', 'roll', 'pitch', 'yaw']
/** Forces are measured by the weight, moments by weight times an arm. */
export const isForce = (axis: Axis): boolean => axis === 'lift' || axis === 'side' || axis === 'forward'

/** The axes to be held, in the house's order, each once. */
export function readHold(method: string, hold: readonly Axis[]): readonly Axis[] {
  if (!Array.isArray(hold) || hold.length === 0)
    throw new InvalidInput({
      method,
      argument: 'hold',
      value: describeValue(hold),
      accepted: `a list of one or more of ${axes.map((axis) => `"${axis}"`).join(', ')}`,
    })
  hold.forEach((axis, index) => {
    requireChoice(method, `hold[${index}]`, axis, axes)
  })
  return axes.filter((axis) => hold.includes(axis))
}
