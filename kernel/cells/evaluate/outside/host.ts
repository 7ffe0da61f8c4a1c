/** The evaluation host of any platform: a queue of calls in front of one isolate at a time. */
import type { Evaluation, EvaluationHost, EvaluationOptions, Overrides, Program, Wanted } from '../../program/index.js'
import { checkCall } from './check-call.js'
import { Isolates } from './isolates.js'
import type { Platform } from './platform.js'
import { Queue } from './queue.js'
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
