/** The parts of the number view, loaded at the first question: the engines behind them are large. */
import type { Point } from '../../shared/contracts/index.js'
import { AskedNumbers, type AskedNumbersSources } from './asked-numbers.js'
import type { AskedPart, Asking } from './asking.js'
import { DriversPart } from './drivers-part.js'
import type { Ask } from './number-memory.js'
import { SpreadPart } from './spread-part.js'
import { TracePart } from './trace-part.js'

export interface PartsSources extends AskedNumbersSources {
  /** Aloud, to people who do not see the page. */
  say(sentence: string): void
  /** Puts values in force as trial values. */
  tryPoint(point: Point): void
}

export function askedParts(sources: PartsSources): Readonly<Record<Ask, AskedPart>> {
  const numbers = new AskedNumbers(sources)
  const asking: Asking = {
    view: sources.view,
    reading: sources.reading,
    open: (wanted, options) => numbers.open(wanted, options),
    evaluateMany: (target, points, signal) => numbers.evaluateMany(target, points, signal),
    reaching: (target) => numbers.reaching(target),
    tryPoint: sources.tryPoint,
    say: sources.say,
    now: () => performance.now(),
  }
  return {
    trace: new TracePart({ ...asking, host: sources.host }),
    drivers: new DriversPart(asking),
    spread: new SpreadPart(asking),
  }
}
