/** Rotor: what it takes to hover. */
export { type Hover, type HoverByBlades, type HoverByBladesOptions, type HoverByMeritOptions, hover } from './hover.js'
