/** Who may talk to the server, and what its answers allow a browser to do. */
export { type Arrival, checkArrival, loopbackNames } from './guard.js'
export {
  assetPolicy,
  commonHeaders,
  comparePolicy,
  dataPolicy,
  plainPagePolicy,
  readingPolicy,
  sheetPolicy,
} from './policies.js'
