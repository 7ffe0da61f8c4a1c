/** What a reader should know about a rotor in edgewise flight outside the range of its theory. */
import { advise } from '../recorder.js'
import type { Edgewise } from './edgewise.js'

const greatestAdvanceRatio = 0.3
/** As in hover; less is left as the advance ratio grows (from memory). */
const greatestBladeLoading = 0.12
const greatestAdvancingMach = 0.8
/** A descent steeper than this, in hover induced velocities, with less than that along the disk. */
const steepDescent = -0.3
const littleAlong = 0.7

export function adviseEdgewise(method: string, answer: Edgewise, normalRatio: number, alongRatio: number): void {
  const { advanceRatio, bladeLoading, advancingTipMach } = answer
  if (advanceRatio > greatestAdvanceRatio)
    advise({
      code: 'ADVANCE_RATIO',
      method,
      quantity: 'advanceRatio',
      value: advanceRatio,
      range: [0, greatestAdvanceRatio],
      message: `At an advance ratio of ${advanceRatio.toPrecision(3)} reversed flow and stall of the retreating blade grow; profile power is then too low (fit to 0.3).`,
    })
  if (bladeLoading > greatestBladeLoading)
    advise({
      code: 'BLADE_LOADING',
      method,
      quantity: 'bladeLoading',
      value: bladeLoading,
      range: [0, greatestBladeLoading],
      message: `A blade loading of ${bladeLoading.toPrecision(3)} leaves no margin to stall of the retreating blade (0.12 in hover, less with speed).`,
    })
  if (advancingTipMach !== undefined && advancingTipMach > greatestAdvancingMach)
    advise({
      code: 'TIP_MACH',
      method,
      quantity: 'advancingTipMach',
      value: advancingTipMach,
      range: [0, greatestAdvancingMach],
      message: `An advancing tip Mach number of ${advancingTipMach.toPrecision(3)} is past the drag rise of usual sections (0.8); profile power is then too low.`,
    })
  if (normalRatio < steepDescent && alongRatio < littleAlong)
    advise({
      code: 'VORTEX_RING',
      method,
      quantity: 'diskTilt',
      value: normalRatio,
      range: [steepDescent, null],
      message: `The stream rises through the disk at ${(-normalRatio).toPrecision(3)} hover induced velocities with little along it: near the vortex ring momentum theory fails; see rotor.descent.`,
    })
}
