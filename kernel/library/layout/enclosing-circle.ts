import { requireNonNegative, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Length } from '../quantity.js'

export interface Circle {
  /** [m] */
  readonly x: Length
  /** [m] */
  readonly y: Length
  /** [m] */
  readonly radius: Length
}

const method = 'layout.enclosingCircle'
const known = new Set(['x', 'y', 'radius'])
/** Far beyond any aircraft [m]; squares and their sums stay within the range of numbers. */
const farthest = 1e6

/**
 * The smallest circle that encloses given circles; points where their radius is 0.
 *
 * @equation min over (x, y) of max_i (sqrt((x - x_i)^2 + (y - y_i)^2) + r_i)
 * @param circles - list of `{ x, y, radius [m] (0) }`, 1 to 2000
 * @returns `x`, `y`, `radius` [m]
 * @throws InvalidInput for an empty list, a place that is not finite or farther than 1000 km, a negative radius, and an unknown option
 * @method Exact up to rounding: at most three circles touch the answer from inside. The one that sticks out farthest joins them, and the smallest circle around those four is found among all pairs and triples; its
 * radius grows each time, so the search ends. The circle that touches three from inside is Apollonius' problem, in closed form.
 * @validity Any; triples of centres in a line (within 1e-12 of their spread) are left to their pairs.
 * @source Problem: Sylvester, 1857. Bases of at most three and growing radius: Matousek, Sharir and Welzl, A Subexponential Bound for Linear Programming, Algorithmica 16, 1996 (from memory).
 * @example
 * const around = layout.enclosingCircle([{ x: 3 * u.m, y: 0 * u.m, radius: 1 * u.m }, { x: -3 * u.m, y: 0 * u.m, radius: 1 * u.m }])
 * around.radius // 4
 */
export function enclosingCircle(circles: readonly (Omit<Circle, 'radius'> & Partial<Circle>)[]): Circle {
  return smallestAround(readCircles(circles))
}

function readCircles(circles: readonly (Omit<Circle, 'radius'> & Partial<Circle>)[]): readonly Circle[] {
  if (!Array.isArray(circles) || circles.length === 0 || circles.length > 2000)
    throw new InvalidInput({
      method,
      argument: 'circles',
      value: describeValue(circles),
      accepted: 'a list of 1 to 2000 { x, y, radius }',
    })
  return circles.map((circle, index) => {
    const at = `circles[${index}]`
    checkOptions(`${method} ${at}`, circle, known)
    const { x, y, radius = 0 } = circle
    requireWithin(method, `${at}.x`, x, 'm', -farthest, farthest)
    requireWithin(method, `${at}.y`, y, 'm', -farthest, farthest)
    requireNonNegative(method, `${at}.radius`, radius, 'm')
    requireWithin(method, `${at}.radius`, radius, 'm', 0, farthest)
    return { x, y, radius }
  })
}

/** For circles known to be sound. */
export function smallestAround(circles: readonly Circle[]): Circle {
  let basis: readonly Circle[] = [largestOf(circles)]
  let answer = basis[0] as Circle
  // Each round enlarges the answer; the count only guards against rounding.
  for (let round = 0; round < 10 * circles.length + 100; round += 1) {
    const out = farthestOut(circles, answer)
    if (excessOf(out, answer) <= 1e-12 * answer.radius) return answer
    const next = smallestOfFew([...basis, out])
    if (!(next.circle.radius > answer.radius)) return widened(answer, circles)
    answer = next.circle
    basis = next.basis
  }
  return widened(answer, circles)
}

function largestOf(circles: readonly Circle[]): Circle {
  return circles.reduce((best, one) => (one.radius > best.radius ? one : best))
}

/** How far `inner` sticks out of `outer`; below 0 it lies inside. */
function excessOf(inner: Circle, outer: Circle): number {
  return Math.hypot(inner.x - outer.x, inner.y - outer.y) + inner.radius - outer.radius
}

function farthestOut(circles: readonly Circle[], around: Circle): Circle {
  return circles.reduce((worst, one) => (excessOf(one, around) > excessOf(worst, around) ? one : worst))
}

/** Where rounding stops the search, the last answer is grown by what is left: it encloses all. */
function widened(answer: Circle, circles: readonly Circle[]): Circle {
  const excess = excessOf(farthestOut(circles, answer), answer)
  return { ...answer, radius: answer.radius + Math.max(0, excess) }
}

/** The smallest circle around at most four, with those that touch it. */
function smallestOfFew(few: readonly Circle[]): { readonly circle: Circle; readonly basis: readonly Circle[] } {
  let best: { circle: Circle; basis: readonly Circle[] } | undefined
  const consider = (circle: Circle | null, basis: readonly Circle[]) => {
    if (circle === null || (best !== undefined && circle.radius >= best.circle.radius)) return
    if (few.every((one) => excessOf(one, circle) <= 1e-10 * circle.radius)) best = { circle, basis }
  }
  few.forEach((a, i) => {
    consider(a, [a])
    few.slice(0, i).forEach((b, j) => {
      consider(aroundTwo(a, b), [a, b])
      for (const c of few.slice(0, j)) for (const circle of aroundThree(a, b, c)) consider(circle, [a, b, c])
    })
  })
  return best ?? { circle: widened(few[0] as Circle, few), basis: few.slice(-3) }
}

/** Null where one lies inside the other: the larger alone is then the answer. */
function aroundTwo(a: Circle, b: Circle): Circle | null {
  const distance = Math.hypot(b.x - a.x, b.y - a.y)
  if (distance <= Math.abs(a.radius - b.radius)) return null
  const radius = (distance + a.radius + b.radius) / 2
  const share = (radius - a.radius) / distance
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, radius }
}

/** Circles that the three touch from inside: the distance to each centre is r - r_i, whose squares differ linearly in x, y and r. */
function aroundThree(a: Circle, b: Circle, c: Circle): readonly Circle[] {
  const [bx, by, br] = [b.x - a.x, b.y - a.y, b.radius - a.radius]
  const [cx, cy, cr] = [c.x - a.x, c.y - a.y, c.radius - a.radius]
  const determinant = bx * cy - by * cx
  if (Math.abs(determinant) <= 1e-12 * (bx * bx + by * by + cx * cx + cy * cy)) return []
  // With s = r - r_a: x bx + y by = (|b|^2 - br^2)/2 + s br, and the same for c; so (x, y) = p + s q.
  const eb = (bx * bx + by * by - br * br) / 2
  const ec = (cx * cx + cy * cy - cr * cr) / 2
  const px = (eb * cy - ec * by) / determinant
  const py = (bx * ec - cx * eb) / determinant
  const qx = (br * cy - cr * by) / determinant
  const qy = (bx * cr - cx * br) / determinant
  return rootsOf(qx * qx + qy * qy - 1, px * qx + py * qy, px * px + py * py).map((s) => ({
    x: a.x + px + s * qx,
    y: a.y + py + s * qy,
    radius: s + a.radius,
  }))
}

/** Non-negative roots of k s^2 + 2 h s + l = 0, without cancellation. */
function rootsOf(k: number, h: number, l: number): readonly number[] {
  const square = h * h - k * l
  if (square < 0) return []
  const q = -(h + (h < 0 ? -1 : 1) * Math.sqrt(square))
  return [q / k, l / q].filter((root) => Number.isFinite(root) && root >= 0)
}
