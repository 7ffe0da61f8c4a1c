/** How each kind of segment is flown: it fills in legs of constant power and hands them to the mission under way. */
import { InvalidInput } from '../errors.js'
import type { Orders } from './orders.js'
import type { Progress } from './progress.js'
import { hover, land, rise } from './rotor-segments.js'
import type { Segment, TransitionSegment } from './segment.js'
import { levelOnRotors, slopeOnRotors } from './tilted-segments.js'
import { convert } from './transition-segment.js'
import { requireStopped } from './trim.js'
import { level, slope } from './wing-segments.js'

export function flySegment(progress: Progress, segment: Segment, index: number, orders: Orders): void {
  progress.begin(segment, index)
  progress.look(progress.altitude)
  switch (segment.kind) {
    case 'hover':
      hover(progress, segment.time)
      break
    case 'vertical climb':
      rise(progress, segment.height, segment.rate)
      break
    case 'balked landing':
      hover(progress, segment.time ?? 10)
      rise(progress, segment.height ?? 30, segment.rate ?? 2.5)
      break
    case 'landing':
      land(
        progress,
        segment.height ?? 0,
        segment.rate ?? 2,
        segment.time ?? 0,
        stoppedOf(progress, segment, index, orders),
      )
      break
    case 'transition':
    case 'return transition':
      if (progress.craft.onRotors) refuseTransition(segment, index, orders)
      convert(progress, segment, stoppedOf(progress, segment, index, orders), orders)
      break
    case 'climb':
    case 'descent':
      if (progress.craft.onRotors) slopeOnRotors(progress, segment, index, orders)
      else slope(progress, segment, index, orders)
      break
    default:
      if (progress.craft.onRotors) levelOnRotors(progress, segment, index, orders)
      else level(progress, segment, index, orders)
  }
  progress.end(segment)
}

function refuseTransition({ kind }: TransitionSegment, index: number, { method }: Orders): never {
  throw new InvalidInput({
    method,
    argument: `segments[${index}].kind`,
    value: `the text "${kind}"`,
    accepted: 'a segment without a wing: a multirotor has none to pass to and cruises on its tilted rotors',
  })
}

function stoppedOf(
  progress: Progress,
  segment: { readonly stoppedRotors?: number },
  index: number,
  { method }: Orders,
): number {
  const { stoppedRotors = 0 } = segment
  if (stoppedRotors > 0)
    requireStopped(method, `segments[${index}].stoppedRotors`, progress.craft.lift.count, stoppedRotors)
  return stoppedRotors
}
