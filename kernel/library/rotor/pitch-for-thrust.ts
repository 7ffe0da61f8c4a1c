/** The pitch at which blades give a thrust: shared by rotors and propellers. */
import { InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { BladeFlow } from './blade-element.js'
import { bladeLoads } from './blade-loads.js'

/** Steps of pitch in which the thrust is bracketed [rad]. */
const step = 0.03
const greatestSteps = 40

/** Pitch added to the twist [rad] at which a thrust [N] is given, the lowest one; InvalidInput names the most that is given. */
export function pitchForThrust(method: string, flow: BladeFlow, thrust: number, axialSpeed: number): number {
  const excess = (pitch: number): number => bladeLoads({ ...flow, pitch, axialSpeed }).thrust / thrust - 1
  let low = Math.atan2(axialSpeed, 0.75 * flow.tipSpeed) - flow.blade.twistAtThreeQuarters
  let valueLow = excess(low)
  // A cambered blade may lift more than is asked for at this pitch.
  for (let i = 0; i < greatestSteps && valueLow > 0; i += 1) {
    low -= step
    valueLow = excess(low)
  }
  let most = valueLow
  for (let i = 0; i < greatestSteps; i += 1) {
    const high = low + step
    const valueHigh = excess(high)
    if (valueHigh >= 0 && valueLow <= 0) return brentRoot(excess, low, high, valueLow, valueHigh, 1e-12).x
    most = Math.max(most, valueHigh)
    low = high
    valueLow = valueHigh
  }
  throw new InvalidInput({
    method,
    argument: 'thrust',
    value: thrust,
    unit: 'N',
    accepted: `at most about ${(thrust * (1 + most)).toPrecision(3)} N, which is all these blades give at this tip speed`,
  })
}
