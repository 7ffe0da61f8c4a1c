/**
 * Everything a cell sees without asking: the names of the kernel, each a frozen namespace or function.
 *
 * The namespaces keep the type of their folder's index, so that hovering over `rotor.hover` in a cell shows its doc comment from
 * the plain declarations. They are copies, because a bundler's stand-in for a module namespace is neither frozen nor plain.
 */
import * as air from './air/index.js'
import * as battery from './battery/index.js'
import * as drag from './drag/index.js'
import { assumption, requirement, result } from './evidence/index.js'
import * as figure from './figure/index.js'
import * as rotor from './rotor/index.js'
import * as sizing from './sizing/index.js'
import { u } from './units.js'
import * as wing from './wing/index.js'

/** The type of `preloaded`, name by name; the cell checker declares these as globals. */
export interface Preloaded {
  readonly u: typeof u
  readonly air: typeof air
  readonly rotor: typeof rotor
  readonly wing: typeof wing
  readonly drag: typeof drag
  readonly battery: typeof battery
  readonly sizing: typeof sizing
  readonly figure: typeof figure
  readonly assumption: typeof assumption
  readonly requirement: typeof requirement
  readonly result: typeof result
}

export const preloaded: Preloaded = Object.freeze({
  u,
  air: Object.freeze({ ...air }),
  rotor: Object.freeze({ ...rotor }),
  wing: Object.freeze({ ...wing }),
  drag: Object.freeze({ ...drag }),
  battery: Object.freeze({ ...battery }),
  sizing: Object.freeze({ ...sizing }),
  figure: Object.freeze({ ...figure }),
  assumption: Object.freeze(assumption),
  requirement: Object.freeze(requirement),
  result: Object.freeze(result),
})
