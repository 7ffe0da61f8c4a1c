/** One attempt to run cells in one isolate: ends when the sandbox is done, or when time, a stop or a loss ends it. */
import type { CellId, CellResult } from '../../../../shared/contracts/index.js'
import type { Overrides, RunnableCell, StopSignal } from '../../program/index.js'
import type { RunMessage } from '../protocol.js'
import type { Isolate, Loss, Platform } from './platform.js'
import { readReply } from './replies.js'

export interface AttemptRequest {
  /** In evaluation order. */
  readonly cells: readonly RunnableCell[]
  readonly blocked: readonly CellId[]
  /** Ids that may hold a cell back. */
  readonly known: ReadonlySet<CellId>
  readonly overrides: Overrides
  /** [ms] */
  readonly timeLimit: number
  readonly signal?: StopSignal | undefined
  onBegin(cell: CellId): void
  onFinished(result: CellResult, ran: boolean): void
}

export type AttemptEnd =
  | { readonly how: 'complete' }
  | { readonly how: 'stopped' }
  /** `running` is the cell to blame, if one was running. */
  | { readonly how: 'overtime'; readonly running: RunnableCell | undefined }
  | { readonly how: 'lost'; readonly running: RunnableCell | undefined; readonly loss: Loss }

export function attempt(platform: Platform, isolate: Isolate, request: AttemptRequest): Promise<AttemptEnd> {
  return new Promise((resolve) => {
    let turn = 0
    let running: RunnableCell | undefined
    const cancelTimer = platform.startTimer(request.timeLimit, () => finish({ how: 'overtime', running }))
    const onAbort = () => finish({ how: 'stopped' })
    request.signal?.addEventListener('abort', onAbort, { once: true })
    let over = false

    function finish(end: AttemptEnd): void {
      if (over) return
      over = true
      cancelTimer()
      request.signal?.removeEventListener('abort', onAbort)
      isolate.watch(false)
      resolve(end)
    }

    function onLine(line: string): void {
      if (over || line === 'loaded') return
      const reply = readReply(line, request.cells[turn], request.known)
      if (reply.kind === 'end') finish({ how: 'complete' })
      else if (reply.kind === 'breach') onLost({ code: 'EVALUATOR_LOST', reason: reply.reason })
      else if (reply.kind === 'begin') {
        running = request.cells[turn]
        if (running !== undefined) request.onBegin(running.id)
      } else {
        turn += 1
        running = undefined
        request.onFinished(reply.result, reply.ran)
      }
    }

    const onLost = (loss: Loss) => finish({ how: 'lost', running, loss })
    isolate.listen({ onLine, onLost })
    // An isolate may have been lost while it waited; it says so as soon as someone listens.
    if (over) return
    isolate.watch(true)
    const message: RunMessage = {
      type: 'run',
      needed: request.cells.map(({ id }) => id),
      blocked: request.blocked,
      overrides: request.overrides,
    }
    isolate.send(JSON.stringify(message))
  })
}
