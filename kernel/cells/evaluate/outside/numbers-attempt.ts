/** One message of points to one isolate: ends when all are answered, or when time, a stop or a loss ends it. */
import { limits, type NumbersOutcome } from '../../../../shared/contracts/index.js'
import { type NumbersOptions, pipelineMessage } from '../../program/index.js'
import type { NumbersMessage } from '../protocol.js'
import { readNumbers } from './numbers-reply.js'
import type { Isolate, Loss, Platform } from './platform.js'

export interface NumbersEnd {
  /** In the order of the points, as far as they go; a point that ended the isolate has its failure. */
  readonly outcomes: readonly NumbersOutcome[]
  /** The isolate can be used no more. */
  readonly spent: boolean
}

/** How long a stop waits for the points under way, so that what the isolate remembers is not lost with it. [ms] */
const grace = 150

export function attemptNumbers(
  platform: Platform,
  isolate: Isolate,
  message: NumbersMessage,
  { signal, timeLimit = limits.evaluationMilliseconds }: NumbersOptions,
): Promise<NumbersEnd> {
  return new Promise((resolve) => {
    const outcomes: NumbersOutcome[] = []
    let cancelTimer = () => {}
    let cancelGrace = () => {}
    let over = false

    function finish(spent: boolean): void {
      if (over) return
      over = true
      cancelTimer()
      cancelGrace()
      signal?.removeEventListener('abort', onAbort)
      isolate.watch(false)
      resolve({ outcomes, spent })
    }

    /** The point under way is to blame; behind the last, nobody is. */
    function fail(code: string, sentence: string): void {
      if (over) return
      if (outcomes.length < message.points.length)
        outcomes.push({ ok: false, code, message: sentence, numbers: {}, requirements: {} })
      finish(true)
    }

    function waitForNext(): void {
      cancelTimer()
      cancelTimer = platform.startTimer(timeLimit, () =>
        fail('TIME_LIMIT', pipelineMessage('TIME_LIMIT', { milliseconds: timeLimit })),
      )
    }

    function onLine(line: string): void {
      if (over || line === 'loaded') return
      if (line === 'end' && outcomes.length === message.points.length) {
        finish(false)
        return
      }
      const read =
        outcomes.length < message.points.length ? readNumbers(line, message) : 'it went on after the last point'
      if (typeof read === 'string') onLost({ code: 'EVALUATOR_LOST', reason: read })
      else {
        outcomes.push(read)
        waitForNext()
      }
    }

    const onAbort = () => {
      cancelGrace = platform.startTimer(grace, () => finish(true))
    }
    const onLost = (loss: Loss) =>
      fail(
        loss.code,
        loss.code === 'MEMORY_LIMIT'
          ? pipelineMessage('MEMORY_LIMIT', { megabytes: loss.megabytes })
          : pipelineMessage('EVALUATOR_LOST', { reason: loss.reason }),
      )
    signal?.addEventListener('abort', onAbort, { once: true })
    waitForNext()
    isolate.listen({ onLine, onLost })
    if (over) return
    isolate.watch(true)
    isolate.send(JSON.stringify(message))
  })
}
