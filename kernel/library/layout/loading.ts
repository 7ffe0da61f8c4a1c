import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { type MassProperties, type PlacedItem, properties } from '../mass/properties.js'
import type { Length, Mass, Ratio } from '../quantity.js'

export interface LoadingOptions {
  /** What is always aboard: the empty aircraft, pilot, battery. */
  readonly fixed: readonly PlacedItem[]
  /** What may be aboard or not, in any order. */
  readonly loads: readonly PlacedItem[]
}

/** One state on the way from what is always aboard to everything. */
export interface LoadingState {
  /** The load added last; `''` for none yet. */
  readonly added: string
  /** [kg] */
  readonly mass: Mass
  /** Centre of gravity [m]. */
  readonly x: Length
  readonly y: Length
}

export interface Loading {
  /** Foremost centre of gravity at each mass: loads added from the front. */
  readonly forward: readonly LoadingState[]
  /** Aftmost: loads added from the back. */
  readonly aft: readonly LoadingState[]
  /** Leftmost: loads added from the left. */
  readonly left: readonly LoadingState[]
  /** Rightmost. */
  readonly right: readonly LoadingState[]
  /** Extremes over every loading order [m]. */
  readonly foremost: Length
  readonly aftmost: Length
  readonly leftmost: Length
  readonly rightmost: Length
  /** Nothing loaded, and everything: mass, centre of gravity and inertia. */
  readonly empty: MassProperties
  readonly full: MassProperties
  /** Orders in which the loads can come aboard; all of them lie within the envelope. */
  readonly orders: Ratio
}

const method = 'layout.loading'
const known = new Set(['fixed', 'loads'])

/**
 * Loading envelope: where the centre of gravity can be, whatever is aboard and in whichever order it came.
 *
 * @equation x = (sum m_fixed x + sum over loads aboard m x)/(sum of the same masses)
 * @param options - `fixed`: list of what is always aboard, `loads`: list of what may be, both of `{ name, mass [kg], x, y, z [m], size }` as `mass.properties` takes them
 * @returns `forward` and `aft`: the outermost paths from empty to full as lists of `{ added, mass [kg], x, y [m] }`, `left` and `right` alike, `foremost`, `aftmost`, `leftmost`, `rightmost` [m], `empty` and `full` as
 * `mass.properties`, `orders`: how many orders there are
 * @throws InvalidInput for no fixed mass, more than 100 loads, items as `mass.properties`, and an unknown option
 * @method Exact: masses and moments of all subsets, parts of loads included, fill a zonotope, whose border is the loads in the order of their places. So two paths bound all n! orders without trying them.
 * @validity Any; loads do not move in flight.
 * @source Geometry of sums of vectors (zonotopes): textbook. The envelope: Torenbeek, E., Synthesis of Subsonic Airplane Design, 1982, section 8.5 (loading diagrams, from memory).
 * @example
 * const aboard = layout.loading({
 *   fixed: [{ name: 'empty aircraft with pilot', mass: 1300 * u.kg, x: 0 * u.m, y: 0 * u.m }],
 *   loads: [{ name: 'front seat', mass: 100 * u.kg, x: 1 * u.m, y: 0.4 * u.m }, { name: 'rear seat', mass: 100 * u.kg, x: -0.5 * u.m, y: 0 * u.m }],
 * })
 * aboard.foremost // 0.071429
 */
export function loading(options: LoadingOptions): Loading {
  checkOptions(method, options, known)
  const { fixed, loads } = options
  if (!Array.isArray(loads) || loads.length > 100)
    throw new InvalidInput({
      method,
      argument: 'loads',
      value: describeValue(loads),
      accepted: 'a list of at most 100 { name, mass, x, y, z }',
    })
  const empty = properties(fixed)
  const full = properties([...fixed, ...loads])
  const path = (compare: (a: PlacedItem, b: PlacedItem) => number) => pathOf(empty, [...loads].sort(compare))
  const forward = path((a, b) => b.x - a.x)
  const aft = path((a, b) => a.x - b.x)
  const left = path((a, b) => a.y - b.y)
  const right = path((a, b) => b.y - a.y)
  return {
    forward,
    aft,
    left,
    right,
    foremost: Math.max(...forward.map((state) => state.x)),
    aftmost: Math.min(...aft.map((state) => state.x)),
    leftmost: Math.min(...left.map((state) => state.y)),
    rightmost: Math.max(...right.map((state) => state.y)),
    empty,
    full,
    orders: loads.reduce((product, _, index) => product * (index + 1), 1),
  }
}

function pathOf(empty: MassProperties, order: readonly PlacedItem[]): readonly LoadingState[] {
  let { mass } = empty
  let [mx, my] = [mass * empty.x, mass * empty.y]
  const states: LoadingState[] = [{ added: '', mass, x: empty.x, y: empty.y }]
  for (const load of order) {
    mass += load.mass
    mx += load.mass * load.x
    my += load.mass * load.y
    states.push({ added: load.name, mass, x: mx / mass, y: my / mass })
  }
  return states
}
