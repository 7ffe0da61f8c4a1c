/** Long work on the page's own thread goes by turns of some milliseconds, so that the page paints and answers between them. */
import type { Pause } from '../../kernel/cells/program/index.js'

/** Half a frame [ms]: what remains has to scroll and answer. */
const longestTurn = 8

export interface TurnClockwork {
  now(): number
  /** Calls back once the browser has had its turn. */
  rest(call: () => void): void
}

/** Asked again after a longer while, the work is taken to have begun anew: one cell that was edited waits for nobody. */
export function turnsBy({ now, rest }: TurnClockwork): Pause {
  let begun = Number.NEGATIVE_INFINITY
  let asked = Number.NEGATIVE_INFINITY
  return () => {
    const time = now()
    if (time - asked > longestTurn * 4) begun = time
    asked = time
    if (time - begun < longestTurn) return undefined
    return new Promise((resolve) =>
      rest(() => {
        begun = now()
        asked = begun
        resolve()
      }),
    )
  }
}

/** Turns by the browser's clock; a message to oneself comes after what already waits, and is not held back like a timer. */
export function pageTurns(): Pause {
  const { port1, port2 } = new MessageChannel()
  const waiting: (() => void)[] = []
  port1.onmessage = () => waiting.shift()?.()
  return turnsBy({
    now: () => performance.now(),
    rest: (call) => {
      waiting.push(call)
      port2.postMessage(null)
    },
  })
}
