/** Evaluation on the command line and in the server: cells run in a child process that may do nothing but compute. */
import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { limits } from '../../../shared/contracts/index.js'
import { createEvaluationHost, createNumbersHost, type Platform } from '../evaluate/index.js'
import type { EvaluationHost, NumbersHost } from '../program/index.js'
import { openChildIsolate } from './child-isolate.js'

export interface NodeHostOptions {
  /** The bundle of kernel and harness (`bundle.mjs`); the hash of this text is the kernel's hash. */
  readonly sandboxText: string
  /** Compiled `child.ts`; found by itself when absent. */
  readonly childPath?: string
  /** Memory for cells [MB]; `limits.evaluationMegabytes` when absent. */
  readonly megabytes?: number
  /** Keep a second child ready for after a stop: for servers, not for one call of the command. */
  readonly spare?: boolean
}

/**
 * A host whose isolates are child processes. The first one starts with the first call; `close` ends them.
 *
 * @throws Error when the compiled child is missing, naming where it was looked for.
 */
export function createNodeHost(options: NodeHostOptions): EvaluationHost {
  return createEvaluationHost(nodePlatform(options))
}

/**
 * A numbers host on child processes of its own, two when `isolates` is absent.
 *
 * @throws as `createNodeHost`
 */
export function createNodeNumbersHost(options: NodeHostOptions & { readonly isolates?: number }): NumbersHost {
  return createNumbersHost(nodePlatform(options), options.isolates ?? 2)
}

function nodePlatform(options: NodeHostOptions): Platform {
  const { sandboxText, childPath = findChild(), megabytes = limits.evaluationMegabytes, spare = false } = options
  const childText = readFileSync(childPath, 'utf8')
  return {
    openIsolate: () => openChildIsolate({ sandboxText, childText, megabytes }),
    startTimer(milliseconds, action) {
      const timer = setTimeout(action, milliseconds)
      return () => clearTimeout(timer)
    },
    spare,
    kernelHash: createHash('sha256').update(sandboxText).digest('hex'),
  }
}

/** Beside this file once built; in the build folder when this file runs as TypeScript (tests). */
function findChild(): string {
  const places = ['./child.js', '../../../.build/kernel/cells/host-node/child.js']
  const paths = places.map((place) => fileURLToPath(new URL(place, import.meta.url)))
  const found = paths.find((path) => existsSync(path))
  if (found === undefined)
    throw new Error(
      `The evaluator's child program is not built (looked for ${paths.join(' and ')}). Run "npm run build".`,
    )
  return found
}
