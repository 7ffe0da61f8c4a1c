/** Powertrain: motors, controllers and the chain from shaft to battery. Batteries have a folder of their own. */
export { type Chain, type ChainLosses, type ChainOptions, chain } from './chain.js'
export {
  type Controller,
  type ControllerOptions,
  type ControllerPoint,
  controller,
  controllerAt,
} from './controller.js'
export { type EfficiencyMap, type EfficiencyMapOptions, efficiencyMap } from './efficiency-map.js'
export { type Motor, type MotorAtOptions, type MotorOptions, type MotorPoint, motor, motorAt } from './motor.js'
export { type MotorInAir, type MotorInAirOptions, motorInAir } from './motor-in-air.js'
export { type Overload, type OverloadOptions, overload } from './overload.js'
