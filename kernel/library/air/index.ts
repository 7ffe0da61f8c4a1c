/** Air: the standard atmosphere and what follows from it. */
export { densityAltitude, geopotentialAltitude } from './altitude.js'
export { type Air, standard } from './standard.js'
export { dynamicViscosity } from './viscosity.js'
