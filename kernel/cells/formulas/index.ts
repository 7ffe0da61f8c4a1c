/** How the names of a cell are worked out, as data that a sheet can show as a hand calculation. */
export { formulasOf } from './formulas.js'
