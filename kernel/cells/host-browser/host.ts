/** Evaluation in the browser: cells run in a worker inside a frame that has no network, no storage and no parent. */
import { limits } from '../../../shared/contracts/index.js'
import { createEvaluationHost, createNumbersHost, type Platform } from '../evaluate/index.js'
import type { EvaluationHost, NumbersHost } from '../program/index.js'
import { openFrameIsolate } from './frame-isolate.js'
import { workerText } from './worker-text.js'

export interface BrowserHostOptions {
  /** Address of the page of `evaluatorFrame()`, served with its headers. */
  readonly frameUrl: string
  /** The bundle of kernel and harness (`bundle.mjs`). */
  readonly sandboxText: string
  /** SHA-256 of `sandboxText` in hexadecimal; programs compiled for another kernel are then refused. */
  readonly kernelHash?: string
  /** Where the hidden frame is put; the body when absent. */
  readonly container?: HTMLElement
  /** Keep a second worker ready for after a stop; true when absent. */
  readonly spare?: boolean
}

/** A host whose isolates are workers in frames. The first one is built with the first call; `close` removes them. */
export function createBrowserHost(options: BrowserHostOptions): EvaluationHost {
  return createEvaluationHost(browserPlatform(options))
}

/** A numbers host on workers of its own, two when `isolates` is absent. */
export function createBrowserNumbersHost(options: BrowserHostOptions & { readonly isolates?: number }): NumbersHost {
  return createNumbersHost(browserPlatform(options), options.isolates ?? 2)
}

function browserPlatform(options: BrowserHostOptions): Platform {
  const { frameUrl, sandboxText, kernelHash, container = document.body, spare = true } = options
  const settings = {
    frameUrl,
    container,
    workerText: workerText(sandboxText),
    megabytes: limits.evaluationMegabytes,
  }
  return {
    openIsolate: () => openFrameIsolate(settings),
    startTimer(milliseconds, action) {
      const timer = setTimeout(action, milliseconds)
      return () => clearTimeout(timer)
    },
    spare,
    ...(kernelHash === undefined ? {} : { kernelHash }),
  }
}
