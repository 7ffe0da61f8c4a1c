/** The evaluation host of any platform: a queue of calls in front of one isolate at a time. */
import {
  type Evaluation,
  type EvaluationHost,
  type EvaluationOptions,
  type Overrides,
  PipelineTrouble,
  type Program,
  type StopSignal,
  type Wanted,
} from '../../program/index.js'
import { Isolates } from './isolates.js'
import type { Platform } from './platform.js'
import { type Run, runProgram } from './run-program.js'

export function createEvaluationHost(platform: Platform): EvaluationHost {
  const isolates = new Isolates(platform)
  const queue = new Queue()

  async function runOne(program: Program, overrides: Overrides, wanted: Wanted, options: EvaluationOptions) {
    const run = await runProgram(platform, isolates, { program, overrides, wanted, options })
    isolates.prepareSpare()
    return run
  }

  return {
    async evaluate(program, overrides, wanted, options = {}) {
      checkCall(platform, program, [overrides])
      const { results, ran } = await queue.inTurn(options.signal, () => runOne(program, overrides, wanted, options))
      return { results, ran }
    },

    async evaluateBatch(program, overridesList, wanted, options = {}) {
      checkCall(platform, program, overridesList)
      return queue.inTurn(options.signal, async () => {
        const evaluations: Evaluation[] = []
        for (const overrides of overridesList) {
          const run: Run = await runOne(program, overrides, wanted, options)
          if (run.stopped) break
          evaluations.push({ results: run.results, ran: run.ran })
        }
        return evaluations
      })
    },

    async close() {
      isolates.close()
    },
  }
}

function checkCall(platform: Platform, program: Program, overridesList: readonly Overrides[]): void {
  const { kernelHash } = platform
  if (kernelHash !== undefined && program.kernelHash !== kernelHash)
    throw new PipelineTrouble('KERNEL_DIFFERS', { wanted: program.kernelHash, present: kernelHash })
  for (const overrides of overridesList)
    for (const [name, value] of Object.entries(overrides))
      if (!Number.isFinite(value)) throw new PipelineTrouble('OVERRIDE_INVALID', { name, value: String(value) })
}

/** Runs tasks one after another. A call that is stopped while it waits does not wait on: its task, seeing the stop, runs nothing. */
class Queue {
  #last: Promise<unknown> = Promise.resolve()

  inTurn<T>(signal: StopSignal | undefined, task: () => Promise<T>): Promise<T> {
    const before = this.#last
    const turn = signal === undefined ? before : Promise.race([before, aborted(signal)])
    const outcome = turn.then(task)
    this.#last = Promise.allSettled([before, outcome])
    return outcome
  }
}

function aborted(signal: StopSignal): Promise<void> {
  if (signal.aborted) return Promise.resolve()
  return new Promise((resolve) => signal.addEventListener('abort', () => resolve(), { once: true }))
}
