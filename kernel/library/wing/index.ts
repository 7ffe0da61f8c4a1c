/** Wing: what it carries and from which speed on. */
export { type StallSpeedOptions, stallSpeed } from './stall-speed.js'
