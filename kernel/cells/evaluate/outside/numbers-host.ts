/** The numbers host of any platform: a few isolates that share the points of one call at a time. */
import type { NumbersOutcome } from '../../../../shared/contracts/index.js'
import {
  type NumbersHost,
  type NumbersOptions,
  type Overrides,
  type Program,
  pipelineMessage,
  type WantedNumbers,
} from '../../program/index.js'
import { bounds, type NumbersMessage } from '../protocol.js'
import { checkCall } from './check-call.js'
import { refusedCode } from './code-guard.js'
import { Isolates } from './isolates.js'
import { closure } from './needed.js'
import { attemptNumbers } from './numbers-attempt.js'
import type { Platform } from './platform.js'
import { Queue } from './queue.js'

/** Points of one message: few enough that a stop and a slow point cost little, enough that messages cost nothing. */
const mostPoints = 8

export function createNumbersHost(platform: Platform, isolates: number): NumbersHost {
  const members = Array.from({ length: isolates }, () => new Isolates(platform))
  const queue = new Queue()
  return {
    async evaluateNumbers(program, points, wanted, options = {}) {
      checkCall(platform, program, points)
      const failure = cannotRun(program, wanted)
      if (failure !== undefined) return points.map(() => failure)
      return queue.inTurn(options.signal, async () => {
        const run = new NumbersRun(program, points, wanted, options)
        await Promise.all(members.map((member) => run.work(platform, member, members.length)))
        return run.outcomes()
      })
    },
    async close() {
      for (const member of members) member.close()
    },
  }
}

/** Cells that cannot run because of what they are fail at every point. */
function cannotRun(program: Program, { names, requirements }: WantedNumbers): NumbersOutcome | undefined {
  const ids = new Set([...names.map(({ cell }) => cell), ...requirements])
  const nothing = { numbers: {}, requirements: {} }
  const held = program.heldBack.find(({ id }) => ids.has(id))
  const failed = program.failed.find(({ id }) => ids.has(id) || id === held?.by)
  if (failed !== undefined)
    return { ok: false, code: failed.error.code, message: failed.error.message, cell: failed.id, ...nothing }
  for (const { id, code } of closure(program.cells, ids)) {
    const message = refusedCode(code)
    if (message !== undefined) return { ok: false, code: 'CODE_REFUSED', message, cell: id, ...nothing }
  }
  return undefined
}

/** The points of one call, taken in small portions by whichever isolate is free. */
class NumbersRun {
  readonly #cells: Program['cells']
  readonly #points: readonly Overrides[]
  readonly #wanted: Pick<NumbersMessage, 'type' | 'needed' | 'names' | 'requirements'>
  readonly #options: NumbersOptions
  readonly #outcomes: (NumbersOutcome | undefined)[]
  #next = 0
  #done = 0

  constructor(
    program: Program,
    points: readonly Overrides[],
    { names, requirements }: WantedNumbers,
    options: NumbersOptions,
  ) {
    const ids = new Set([...names.map(({ cell }) => cell), ...requirements])
    this.#cells = program.cells
    this.#points = points
    this.#wanted = {
      type: 'numbers',
      needed: closure(program.cells, ids).map(({ id }) => id),
      names: names.map(({ name, cell }) => ({ name, cell })),
      // In evaluation order, whatever the order they were asked for in.
      requirements: program.cells.map(({ id }) => id).filter((id) => requirements.includes(id)),
    }
    this.#options = options
    this.#outcomes = new Array<NumbersOutcome | undefined>(points.length).fill(undefined)
  }

  async work(platform: Platform, isolates: Isolates, workers: number): Promise<void> {
    const portion = Math.min(mostPoints, bounds.points, Math.ceil(this.#points.length / (2 * workers)))
    while (this.#next < this.#points.length && this.#options.signal?.aborted !== true) {
      const from = this.#next
      this.#next = Math.min(from + portion, this.#points.length)
      await this.#evaluate(platform, isolates, from, this.#next)
    }
  }

  /** From the first point on without a gap. */
  outcomes(): readonly NumbersOutcome[] {
    const gap = this.#outcomes.indexOf(undefined)
    return (gap < 0 ? this.#outcomes : this.#outcomes.slice(0, gap)) as NumbersOutcome[]
  }

  async #evaluate(platform: Platform, isolates: Isolates, first: number, end: number): Promise<void> {
    let from = first
    while (from < end && this.#options.signal?.aborted !== true) {
      const message = { ...this.#wanted, points: this.#points.slice(from, end) }
      const { outcomes, spent } = await isolates.take(this.#cells).then(
        (isolate) => attemptNumbers(platform, isolate, message, this.#options),
        (fault: unknown) => ({ outcomes: message.points.map(() => notOpened(fault)), spent: true }),
      )
      if (spent) isolates.discard()
      for (const [at, outcome] of outcomes.entries()) this.#outcomes[from + at] = outcome
      from += outcomes.length
      this.#done += outcomes.length
      this.#options.onProgress?.(this.#done)
    }
  }
}

function notOpened(fault: unknown): NumbersOutcome {
  const reason = fault instanceof Error ? fault.message : 'it cannot be opened'
  const message = pipelineMessage('EVALUATOR_LOST', { reason })
  return { ok: false, code: 'EVALUATOR_LOST', message, numbers: {}, requirements: {} }
}
