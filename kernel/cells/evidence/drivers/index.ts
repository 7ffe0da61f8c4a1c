/** Drivers: what moves a number, and how much. Results are `shared/contracts/drivers.ts`. */
export { type DriversRequest, runDrivers } from './drivers.js'
export { type DriversCode, DriversTrouble } from './trouble.js'
