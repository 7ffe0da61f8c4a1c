import { requireFinite, requireNonNegative, requireRepresentable, requireText } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Length, Mass, MomentOfInertia, Ratio } from '../quantity.js'

export interface PlacedItem {
  readonly name: string
  /** [kg] */
  readonly mass: Mass
  /** Of its own centre: forward [m]. */
  readonly x: Length
  /** Right [m]. */
  readonly y: Length
  /** Down [m]; 0 when left out. */
  readonly z?: Length
  /** Edges along x, y and z of the box that it fills evenly [m]; a point when left out. */
  readonly size?: readonly [Length, Length, Length]
}

export interface MassProperties {
  /** [kg] */
  readonly mass: Mass
  /** Centre of gravity [m]. */
  readonly x: Length
  readonly y: Length
  readonly z: Length
  /** About axes through the centre of gravity [kg m^2]. */
  readonly Ixx: MomentOfInertia
  readonly Iyy: MomentOfInertia
  readonly Izz: MomentOfInertia
  /** Products, the sums of m x y and so on [kg m^2]. */
  readonly Ixy: MomentOfInertia
  readonly Ixz: MomentOfInertia
  readonly Iyz: MomentOfInertia
  /** Each item's share of the mass. */
  readonly items: readonly { readonly name: string; readonly mass: Mass; readonly share: Ratio }[]
}

const method = 'mass.properties'
const known = new Set(['name', 'mass', 'x', 'y', 'z', 'size'])

/**
 * Mass, centre of gravity and moments of inertia of placed items.
 *
 * @equation x_cg = sum m x/sum m; I_xx = sum m ((y - y_cg)^2 + (z - z_cg)^2 + (b^2 + c^2)/12), the others alike; I_xy = sum m (x - x_cg)(y - y_cg)
 * @param items - list of `{ name, mass [kg], x, y, z [m], size }`: x forward, y right, z down (0 when left out), `size` the edges [m] of an even box (a point when left out)
 * @returns `mass` [kg], centre of gravity `x`, `y`, `z` [m], `Ixx`, `Iyy`, `Izz`, `Ixy`, `Ixz`, `Iyz` about it [kg m^2], `items` with their `share`
 * @throws InvalidInput for an empty list, no mass in all, a negative mass, a place that is not finite, a negative size, and an unknown option
 * @method Exact for points and even boxes whose edges lie along the axes. Two passes, so that nothing cancels far from the origin.
 * @validity Any.
 * @source Mechanics: textbook (parallel axes).
 * @example
 * const rig = mass.properties([
 *   { name: 'left', mass: 10 * u.kg, x: 1 * u.m, y: -2 * u.m }, { name: 'right', mass: 10 * u.kg, x: 1 * u.m, y: 2 * u.m },
 * ])
 * rig.Ixx // 80
 */
export function properties(items: readonly PlacedItem[]): MassProperties {
  const list = readItems(items)
  let mass = 0
  let mx = 0
  let my = 0
  let mz = 0
  for (const item of list) {
    mass += item.mass
    mx += item.mass * item.x
    my += item.mass * item.y
    mz += item.mass * (item.z ?? 0)
  }
  if (!(mass > 0))
    throw new InvalidInput({
      method,
      argument: 'items',
      value: 'no mass in all',
      accepted: 'a list with at least one mass above 0',
    })
  const x = mx / mass
  const y = my / mass
  const z = mz / mass
  const sums = { Ixx: 0, Iyy: 0, Izz: 0, Ixy: 0, Ixz: 0, Iyz: 0 }
  for (const item of list) addInertia(sums, item, item.x - x, item.y - y, (item.z ?? 0) - z)
  const { Ixx, Iyy, Izz, Ixy, Ixz, Iyz } = sums
  requireRepresentable(method, mass + x + y + z + Ixx + Iyy + Izz + Ixy + Ixz + Iyz)
  return {
    mass,
    x,
    y,
    z,
    ...sums,
    items: list.map((item) => ({ name: item.name, mass: item.mass, share: item.mass / mass })),
  }
}

function addInertia(
  sums: Record<'Ixx' | 'Iyy' | 'Izz' | 'Ixy' | 'Ixz' | 'Iyz', number>,
  item: PlacedItem,
  dx: number,
  dy: number,
  dz: number,
): void {
  const { mass, size } = item
  const [a, b, c] = size ?? [0, 0, 0]
  sums.Ixx += mass * (dy * dy + dz * dz + (b * b + c * c) / 12)
  sums.Iyy += mass * (dx * dx + dz * dz + (a * a + c * c) / 12)
  sums.Izz += mass * (dx * dx + dy * dy + (a * a + b * b) / 12)
  sums.Ixy += mass * dx * dy
  sums.Ixz += mass * dx * dz
  sums.Iyz += mass * dy * dz
}

function readItems(items: readonly PlacedItem[]): readonly PlacedItem[] {
  if (!Array.isArray(items) || items.length === 0)
    throw new InvalidInput({
      method,
      argument: 'items',
      value: describeValue(items),
      accepted: 'a list of at least one { name, mass, x, y, z }',
    })
  for (const [index, item] of items.entries()) {
    const at = `items[${index}]`
    checkOptions(`${method} ${at}`, item, known)
    requireText(method, `${at}.name`, item.name)
    requireNonNegative(method, `${at}.mass`, item.mass, 'kg')
    requireFinite(method, `${at}.x`, item.x, 'm')
    requireFinite(method, `${at}.y`, item.y, 'm')
    if (item.z !== undefined) requireFinite(method, `${at}.z`, item.z, 'm')
    if (item.size !== undefined) requireSize(`${at}.size`, item.size)
  }
  return items
}

function requireSize(argument: string, size: readonly number[]): void {
  if (!Array.isArray(size) || size.length !== 3)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(size),
      accepted: '[length, width, height], three lengths',
    })
  size.forEach((edge, index) => {
    requireNonNegative(method, `${argument}[${index}]`, edge, 'm')
  })
}
