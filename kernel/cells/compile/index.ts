/** From TypeScript to text that runs. */
export { compile } from './compile.js'
export { createEraser, type EraseOptions, eraseOptions, type Transform } from './erase.js'
export { guardTransform, type TransformGuard } from './guard-transform.js'
export { type RunnableParts, runnableLineOffset, writeRunnable } from './runnable.js'
