/** Pieces of drawings to scale, as marks: dimension lines with their lengths, arrows that tell which way a rotor turns, clearances. */
import type { Ink, Mark } from '../../../shared/contracts/figure.js'
import type { LayoutFinding } from '../layout/checks.js'

export type DrawnPoint = readonly [across: number, up: number]

export function outline(
  points: readonly DrawnPoint[],
  more: { filled?: boolean; ink?: Ink; label?: string } = {},
): Mark {
  return { mark: 'polygon', x: points.map(([x]) => x), y: points.map(([, y]) => y), ink: 'ink', ...more }
}

/** A path that is not closed: a polygon that runs back the way it came, since lines would take dashes in turn. */
export function stroke(points: readonly DrawnPoint[], ink: Ink): Mark {
  return outline([...points, ...points.slice(1, -1).reverse()], { ink })
}

/** A length [m] as it is written in a drawing: centimetres tell enough. */
export function lengthText(length: number): string {
  return `${Number(length.toFixed(2))} m`
}

/** A dimension line between two levels or two sides, with a tick at each end and the length beside it. */
export function dimension(from: DrawnPoint, to: DrawnPoint, tick: number, text: string): readonly Mark[] {
  const level = from[1] === to[1]
  const end = ([x, y]: DrawnPoint, side: 1 | -1): DrawnPoint => (level ? [x, y + side * tick] : [x + side * tick, y])
  const middle: DrawnPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  return [
    stroke([end(from, 1), end(from, -1), from, to, end(to, 1), end(to, -1)], 'faint'),
    { mark: 'text', x: middle[0], y: middle[1], text, ink: 'ink' },
  ]
}

/**
 * An arc inside the rim with a head at its end. `turn` is +1 anticlockwise as drawn. It leaves the middle free for the rotor's number.
 */
export function turningArrow([x, y]: DrawnPoint, radius: number, turn: number, ink: Ink): Mark {
  const arc = 0.62 * radius
  const at = (angle: number, size = arc): DrawnPoint => [x + size * Math.cos(angle), y + size * Math.sin(angle)]
  const [begin, end, steps] = [Math.PI * 0.15, Math.PI * 0.85, 10]
  const angles = Array.from({ length: steps + 1 }, (_, step) => begin + ((end - begin) * step) / steps)
  const way = turn > 0 ? angles : [...angles].reverse()
  const last = way.at(-1) as number
  const back = last - turn * 0.42
  const head = [at(back, 1.25 * arc), at(last), at(back, 0.75 * arc), at(last)]
  return stroke([...way.map((angle) => at(angle)), ...head], ink)
}

/** Clearances as named points where the parts are nearest: those kept, and those not kept in the ink of warnings. */
export function clearanceMarks(
  findings: readonly LayoutFinding[],
  shown: (finding: LayoutFinding) => boolean,
  project: (place: NonNullable<LayoutFinding['at']>) => DrawnPoint,
): readonly Mark[] {
  const wanted = findings.filter((finding) => finding.at !== undefined && shown(finding))
  return [true, false].flatMap((met): Mark[] => {
    const some = wanted.filter((finding) => finding.met === met)
    if (some.length === 0) return []
    const points = some.map((finding) => project(finding.at as NonNullable<LayoutFinding['at']>))
    return [
      {
        mark: 'dot',
        x: points.map(([x]) => x),
        y: points.map(([, y]) => y),
        names: some.map((finding) => lengthText(finding.clearance)),
        ink: met ? 'second' : 'warning',
        label: met ? 'least clearance' : 'too close',
      },
    ]
  })
}
