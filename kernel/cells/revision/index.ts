/** What a revision freezes, how it is fingerprinted, and how two of them are compared. */
export { type ComparedSide, compareSides, numbersOf } from './compare/index.js'
export { contentFingerprint, hashOf, sealOf, textFingerprint } from './fingerprint.js'
export { freezeText, type TextToFreeze } from './freeze-text.js'
export { methodsOf } from './methods.js'
