/** Running programs in isolation: what both hosts share. The inside (`sandbox.ts`) is bundled apart and never imported here. */
export { createEvaluationHost } from './outside/host.js'
export { createNumbersHost } from './outside/numbers-host.js'
export type { Isolate, IsolateListener, Loss, Platform } from './outside/platform.js'
export { longestLine } from './outside/replies.js'
export {
  bounds,
  type MessageIn,
  type NumbersMessage,
  type ProgramMessage,
  type RunMessage,
  type Step,
} from './protocol.js'
