/** Methods of the kernel: found, drawn, and read from the cells that use them. */
export { findMethods, methodWords, wordsFit } from './find-methods.js'
export { proseNodes } from './prose-nodes.js'
export { readEquation } from './read-equation.js'
export { renderEquation } from './render-equation.js'
export { callWords, type MethodOptions, renderMethod } from './render-method.js'
export { usedMethods } from './used-methods.js'
