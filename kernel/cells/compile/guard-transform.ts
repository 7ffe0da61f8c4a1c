/**
 * A compiler that survives its sources. esbuild is quick and recursive: a source nested thousands deep overflows its stack, and
 * then every later answer fails or never comes (seen with parentheses 6400 deep, arrow functions 800 deep). So sources are
 * given one at a time (4 ms a cell instead of 2 ms for a hundred at once); one that ends it or overstays is refused, and the
 * next finds a new compiler.
 */
import type { EraseOptions, Transform } from './erase.js'
import { readTransformFailure } from './transform-failure.js'

export interface TransformGuard {
  /** Ends the compiler, so that the next transform starts a new one: esbuild's `stop`. */
  readonly restart: () => Promise<void>
  /** Calls back after a time [ms]; the function returned takes it back. */
  readonly after: (milliseconds: number, call: () => void) => () => void
  /** What one source may take [ms]. */
  readonly timeLimit?: number
  /** What the start of the compiler may take [ms]. */
  readonly startLimit?: number
}

/** In the form of esbuild's own failures, so that an eraser reads it like one. */
const refusal = {
  errors: [
    {
      text: 'The cell is nested too deeply, or too long, to be read.',
      location: { line: 1, column: 0, lineText: '' },
    },
  ],
}

/**
 * The transform, guarded.
 *
 * @throws what `transform` throws for an unreadable source; the same kind of failure for a source that ends the compiler twice;
 *   and the compiler's own failure when it does not start.
 */
export function guardTransform(transform: Transform, guard: TransformGuard): Transform {
  const { restart, timeLimit = 10_000, startLimit = 60_000 } = guard
  let line: Promise<unknown> = Promise.resolve()
  let started = false

  async function attempt(source: string, options: EraseOptions) {
    for (let trial = 0; trial < 2; trial += 1) {
      if (!started) await within(startLimit, transform('', options))
      started = true
      try {
        return await within(timeLimit, transform(source, options))
      } catch (reason) {
        if (readTransformFailure(reason) !== undefined) throw reason
        started = false
        await restart()
      }
    }
    throw refusal
  }

  function within<T>(milliseconds: number, running: Promise<T>): Promise<T> {
    return new Promise((resolve, reject) => {
      const late = () => reject(new Error(`the compiler gave no answer within ${milliseconds / 1000} s`))
      const cancel = guard.after(milliseconds, late)
      running.then(resolve, reject).finally(cancel)
    })
  }

  return (source, options) => {
    const turn = line.then(() => attempt(source, options))
    line = turn.catch(() => undefined)
    return turn
  }
}
