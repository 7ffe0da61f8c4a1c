/** Drivers: what moves a number, and how much. Results are `shared/contracts/drivers.ts`. */
export { type DriversRequest, type DriversTools, runDrivers } from './drivers.js'
