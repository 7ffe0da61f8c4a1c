/** The compiler in a worker of its own: starts while the reader already reads, then erases types in a few milliseconds a cell. */

import wasmURL from 'esbuild-wasm/esbuild.wasm?url'
import { initialize, transform } from 'esbuild-wasm/esm/browser.js'
import { createEraser } from '../../kernel/cells/compile/index.js'
import type { ErasedSource } from '../../shared/contracts/index.js'
import { answerer } from './questions.js'

// `worker: false`: we are the worker already, under our own policy; esbuild would make one from a blob.
const started = initialize({ wasmURL, worker: false })
const erase = createEraser(transform)

answerer<readonly string[], readonly ErasedSource[]>(self, async (sources) => {
  await started
  return erase(sources)
})
