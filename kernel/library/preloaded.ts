/**
 * Everything a cell sees without asking: the names of the kernel, each a frozen namespace or function.
 *
 * The namespaces keep the type of their folder's index, so that hovering over `rotor.hover` in a cell shows its doc comment from
 * the plain declarations. They are copies, because a bundler's stand-in for a module namespace is neither frozen nor plain.
 */
import * as air from './air/index.js'
import * as authority from './authority/index.js'
import * as battery from './battery/index.js'
import * as drag from './drag/index.js'
import { assumption, requirement, result, table } from './evidence/index.js'
import * as figure from './figure/index.js'
import * as layout from './layout/index.js'
import * as limits from './limits/index.js'
import * as mass from './mass/index.js'
import * as mission from './mission/index.js'
import * as powertrain from './powertrain/index.js'
import * as propeller from './propeller/index.js'
import * as reliability from './reliability/index.js'
import * as rotor from './rotor/index.js'
import * as section from './section/index.js'
import * as sizing from './sizing/index.js'
import { u } from './units.js'
import * as wing from './wing/index.js'

/** The type of `preloaded`, name by name; the cell checker declares these as globals. */
export interface Preloaded {
  readonly u: typeof u
  readonly air: typeof air
  readonly section: typeof section
  readonly rotor: typeof rotor
  readonly propeller: typeof propeller
  readonly wing: typeof wing
  readonly drag: typeof drag
  readonly battery: typeof battery
  readonly powertrain: typeof powertrain
  readonly layout: typeof layout
  readonly limits: typeof limits
  readonly mass: typeof mass
  readonly mission: typeof mission
  readonly authority: typeof authority
  readonly reliability: typeof reliability
  readonly sizing: typeof sizing
  readonly figure: typeof figure
  readonly assumption: typeof assumption
  readonly requirement: typeof requirement
  readonly result: typeof result
  readonly table: typeof table
}

/** A namespace as a plain frozen copy whose functions are frozen too: no cell can leave anything behind for the next. */
function freezeNamespace<N extends object>(namespace: N): N {
  for (const member of Object.values(namespace)) Object.freeze(member)
  return Object.freeze({ ...namespace })
}

export const preloaded: Preloaded = Object.freeze({
  u,
  air: freezeNamespace(air),
  section: freezeNamespace(section),
  rotor: freezeNamespace(rotor),
  propeller: freezeNamespace(propeller),
  wing: freezeNamespace(wing),
  drag: freezeNamespace(drag),
  battery: freezeNamespace(battery),
  powertrain: freezeNamespace(powertrain),
  layout: freezeNamespace(layout),
  limits: freezeNamespace(limits),
  mass: freezeNamespace(mass),
  mission: freezeNamespace(mission),
  authority: freezeNamespace(authority),
  reliability: freezeNamespace(reliability),
  sizing: freezeNamespace(sizing),
  figure: freezeNamespace(figure),
  assumption: Object.freeze(assumption),
  requirement: Object.freeze(requirement),
  result: Object.freeze(result),
  table: Object.freeze(table),
})
