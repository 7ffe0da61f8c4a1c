/** Every route of the server, grouped by what it serves. */
export { type AssetParts, assetRoutes } from './asset-routes.js'
export { liveRoute } from './live-route.js'
export { methodRoutes } from './method-routes.js'
export { notebookRoutes } from './notebook-routes.js'
export { pageRoutes } from './page-routes.js'
export type { App, RouteParts } from './parts.js'
export { resultRoutes } from './result-routes.js'
export { revisionRoutes } from './revision-routes.js'
