/** How each kind of segment is flown: it fills in legs of constant power and hands them to the mission under way. */
import type { Orders } from './orders.js'
import type { Progress } from './progress.js'
import { hover, land, rise } from './rotor-segments.js'
import type { Segment } from './segment.js'
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
      convert(progress, segment, stoppedOf(progress, segment, index, orders), orders)
      break
    case 'climb':
    case 'descent':
      slope(progress, segment, index, orders)
      break
    default:
      level(progress, segment, index, orders)
  }
  progress.end(segment)
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
