/** The order in which cells run, and the fingerprints of their results. */
export { fingerprints } from './fingerprint.js'
export { order } from './order.js'
