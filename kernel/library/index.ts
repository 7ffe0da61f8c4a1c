/**
 * The sizing kernel. Cells see `preloaded`; the evaluator sets the recorder; the rest is types.
 *
 * Values of the contracts are imported file by file (`shared/contracts/unit-text.js`, not its index), so that the schemas and
 * their library stay out of the code that is loaded into every isolated worker.
 */
export {
  DoesNotClose,
  type DoesNotCloseData,
  type ErrorDetails,
  InvalidInput,
  type InvalidInputData,
  KernelError,
  type KernelErrorCode,
  kernelErrors,
  NoFold,
} from './errors.js'
export { type Preloaded, preloaded } from './preloaded.js'
export type * from './quantity.js'
export {
  type AssumptionStatement,
  advise,
  type Recorder,
  type RequirementStatement,
  type ResultStatement,
  setRecorder,
  silently,
} from './recorder.js'
export type { Units } from './units.js'
