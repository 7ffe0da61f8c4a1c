/** What can be asked of any number: where it came from, what moves it, how sure it is. Pure; evaluations are handed in. */
export * from './corner/index.js'
export * from './drivers/index.js'
export type { Tools } from './evaluation.js'
export * from './slice/index.js'
export * from './spread/index.js'
export * from './trace/index.js'
export { type EvidenceCode, EvidenceTrouble } from './trouble.js'
