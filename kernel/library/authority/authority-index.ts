/** Available control authority index: how far the demand lies inside the set of what the rotors can give, with its sign. */

import type { Problem } from './allocate.js'
import type { Axis } from './axes.js'

/**
 * Least, over the planes that may bound the attainable set, of half its extent along the plane's normal less the demand's distance from
 * the middle. Each plane is spanned by one column fewer than there are axes. In SI, as published: N for forces, N m for moments.
 */
export function authorityIndex(problem: Problem, hold: readonly Axis[]): number {
  const size = hold.length
  const { alive, unit, arm } = problem
  const count = alive.length
  // In SI again: the index is a distance in a space of forces and moments and depends on their units.
  const columns = Array.from({ length: count }, (_, at) =>
    Float64Array.from(hold, (axis) => (problem.rows[axis][at] as number) * arm[axis]),
  )
  const limits = Float64Array.from(problem.upper, (limit) => limit * unit)
  const offset = Float64Array.from(hold, (axis, row) => {
    let middle = 0
    for (let at = 0; at < count; at += 1) middle += 0.5 * (columns[at]?.[row] as number) * (limits[at] as number)
    return middle - problem.demand[axis] * unit * arm[axis]
  })
  if (size === 1) return depth(Float64Array.of(1), columns, limits, offset)
  let least = Number.POSITIVE_INFINITY
  const normal = new Float64Array(size)
  const units = columns.map(unitOf)
  const normalOf = size === 4 ? normalOfThree : normalOfAny
  const chosen = Array.from({ length: size - 1 }, (_, at) => at)
  for (let more = count >= size - 1; more; more = nextChoice(chosen, count))
    if (normalOf(chosen, units, normal)) least = Math.min(least, depth(normal, columns, limits, offset))
  return least < Number.POSITIVE_INFINITY ? least : outsideDepth(columns, limits, offset)
}

/** The index is a difference of numbers of the size of all thrusts times their arms; below this share of it there is only rounding. */
const rounding = 1e-10

/** Whether an index is above zero by more than rounding. */
export function isAboveZero(problem: Problem, index: number): boolean {
  const thrusts = problem.upper.reduce((total, limit) => total + limit, problem.count) * problem.unit
  return index > rounding * thrusts * Math.max(1, ...Object.values(problem.arm))
}

/** Whether the demand lies inside the attainable set, so that every held axis can be pushed either way. */
export function isInside(problem: Problem, hold: readonly Axis[]): boolean {
  return isAboveZero(problem, authorityIndex(problem, hold))
}

/** How far inside the two planes with this normal the demand lies. */
function depth(
  normal: Float64Array,
  columns: readonly Float64Array[],
  limits: Float64Array,
  offset: Float64Array,
): number {
  let extent = 0
  for (let at = 0; at < columns.length; at += 1)
    extent += Math.abs(dot(normal, columns[at] as Float64Array)) * (limits[at] as number)
  return 0.5 * extent - Math.abs(dot(normal, offset))
}

/** With too few rotors to bound anything, nothing can be moved freely: the demand lies off what they span, or on its edge. */
function outsideDepth(columns: readonly Float64Array[], limits: Float64Array, offset: Float64Array): number {
  const basis: Float64Array[] = []
  const rest = Float64Array.from(offset)
  for (const column of columns) takeOut(column, basis, true)
  takeOut(rest, basis, false)
  const away = Math.sqrt(dot(rest, rest))
  const along = columns.map((column) => depth(unitOf(column), columns, limits, offset))
  return Math.min(0, -away, ...along)
}

function takeOut(vector: Float64Array, basis: Float64Array[], keep: boolean): void {
  const rest = keep ? Float64Array.from(vector) : vector
  for (const unit of basis) {
    const along = dot(rest, unit)
    for (let at = 0; at < rest.length; at += 1) rest[at] = (rest[at] as number) - along * (unit[at] as number)
  }
  if (keep && dot(rest, rest) > 1e-18 * dot(vector, vector)) basis.push(unitOf(rest))
}

function unitOf(vector: Float64Array): Float64Array {
  const length = Math.sqrt(dot(vector, vector)) || 1
  return vector.map((value) => value / length)
}

/** A normal shorter than this means that the columns, each of length 1, lie nearly in a smaller plane. */
const flat = 1e-9

/** Unit normal of the plane through three columns of four rows, by cofactors: the usual case, with nothing allocated. */
function normalOfThree(chosen: readonly number[], columns: readonly Float64Array[], normal: Float64Array): boolean {
  const [a0, a1, a2, a3] = columns[chosen[0] as number] as unknown as readonly [number, number, number, number]
  const [b0, b1, b2, b3] = columns[chosen[1] as number] as unknown as readonly [number, number, number, number]
  const [c0, c1, c2, c3] = columns[chosen[2] as number] as unknown as readonly [number, number, number, number]
  const bc01 = b0 * c1 - b1 * c0
  const bc02 = b0 * c2 - b2 * c0
  const bc03 = b0 * c3 - b3 * c0
  const bc12 = b1 * c2 - b2 * c1
  const bc13 = b1 * c3 - b3 * c1
  const bc23 = b2 * c3 - b3 * c2
  normal[0] = a1 * bc23 - a2 * bc13 + a3 * bc12
  normal[1] = -(a0 * bc23 - a2 * bc03 + a3 * bc02)
  normal[2] = a0 * bc13 - a1 * bc03 + a3 * bc01
  normal[3] = -(a0 * bc12 - a1 * bc02 + a2 * bc01)
  const length = Math.sqrt(dot(normal, normal))
  if (!(length > flat)) return false
  for (let at = 0; at < 4; at += 1) normal[at] = (normal[at] as number) / length
  return true
}

/** Unit normal of the plane through the chosen columns; false where they span less. By elimination with full exchange. */
function normalOfAny(chosen: readonly number[], columns: readonly Float64Array[], normal: Float64Array): boolean {
  const size = normal.length
  const rows = chosen.map((at) => Float64Array.from(columns[at] as Float64Array))
  const free = Array.from({ length: size }, (_, at) => at)
  for (let step = 0; step < rows.length; step += 1) {
    if (!exchangeLargest(rows, free, step)) return false
    const pivotRow = rows[step] as Float64Array
    const pivot = pivotRow[free[step] as number] as number
    for (let row = 0; row < rows.length; row += 1) {
      if (row === step) continue
      const other = rows[row] as Float64Array
      const factor = (other[free[step] as number] as number) / pivot
      if (factor === 0) continue
      for (let at = 0; at < size; at += 1) other[at] = (other[at] as number) - factor * (pivotRow[at] as number)
    }
  }
  const last = free[size - 1] as number
  normal.fill(0)
  normal[last] = 1
  for (let step = 0; step < rows.length; step += 1) {
    const row = rows[step] as Float64Array
    normal[free[step] as number] = -(row[last] as number) / (row[free[step] as number] as number)
  }
  const length = Math.sqrt(dot(normal, normal))
  for (let at = 0; at < size; at += 1) normal[at] = (normal[at] as number) / length
  return true
}

function exchangeLargest(rows: Float64Array[], free: number[], step: number): boolean {
  let most = flat
  let [bestRow, bestColumn] = [-1, -1]
  for (let row = step; row < rows.length; row += 1)
    for (let column = step; column < free.length; column += 1) {
      const value = Math.abs(rows[row]?.[free[column] as number] as number)
      if (value > most) [most, bestRow, bestColumn] = [value, row, column]
    }
  if (bestRow < 0) return false
  ;[rows[step], rows[bestRow]] = [rows[bestRow] as Float64Array, rows[step] as Float64Array]
  ;[free[step], free[bestColumn]] = [free[bestColumn] as number, free[step] as number]
  return true
}

/** The next choice of columns in order; false after the last. */
function nextChoice(chosen: number[], count: number): boolean {
  const size = chosen.length
  for (let place = size - 1; place >= 0; place -= 1) {
    if ((chosen[place] as number) >= count - size + place) continue
    chosen[place] = (chosen[place] as number) + 1
    for (let after = place + 1; after < size; after += 1) chosen[after] = (chosen[after - 1] as number) + 1
    return true
  }
  return false
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0
  for (let at = 0; at < one.length; at += 1) sum += (one[at] as number) * (other[at] as number)
  return sum
}
