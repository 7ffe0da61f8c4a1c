/** What labels must keep clear of: points, lines along their way, upright rules. */
import type { Figure } from '../../contracts/index.js'
import { type Frame, pixelX, pixelY } from './frame.js'
import type { Box } from './place-labels.js'
import { pointsOf } from './series.js'

/** Lines are felt every so many pixels. */
const pace = 6

export function obstacles(figure: Figure, frame: Frame): Box[] {
  const boxes: Box[] = []
  const at = (x: number, y: number) => [pixelX(frame, x / frame.x.factor), pixelY(frame, y / frame.y.factor)] as const
  for (const mark of figure.marks) {
    if (mark.mark === 'dot') for (const [x, y] of pointsOf(mark.x, mark.y)) boxes.push(around(...at(x, y), 5))
    if (mark.mark === 'line') boxes.push(...alongLine(pointsOf(mark.x, mark.y).map(([x, y]) => at(x, y))))
    if (mark.mark === 'rule' && mark.axis === 'x') {
      const x = pixelX(frame, mark.at / frame.x.factor)
      boxes.push({ left: x - 1, right: x + 1, top: frame.top, bottom: frame.height - frame.bottom })
    }
    if (mark.mark === 'rule' && mark.axis === 'y') {
      const y = pixelY(frame, mark.at / frame.y.factor)
      boxes.push({ left: frame.left, right: frame.width - frame.right, top: y - 1, bottom: y + 1 })
    }
  }
  return boxes
}

function alongLine(points: readonly (readonly [number, number])[]): Box[] {
  const boxes: Box[] = []
  let last: readonly [number, number] | undefined
  for (const point of points) {
    if (!Number.isFinite(point[0]) || !Number.isFinite(point[1])) continue
    if (last === undefined) boxes.push(around(...point, 1))
    else {
      const length = Math.hypot(point[0] - last[0], point[1] - last[1])
      // Points closer than a pace are passed over; a long line of many points then costs no more than its length.
      if (length < pace) continue
      const steps = Math.min(400, Math.ceil(length / pace))
      for (let step = 1; step <= steps; step++)
        boxes.push(
          around(last[0] + ((point[0] - last[0]) * step) / steps, last[1] + ((point[1] - last[1]) * step) / steps, 1),
        )
    }
    last = point
  }
  return boxes
}

function around(x: number, y: number, half: number): Box {
  return { left: x - half, right: x + half, top: y - half, bottom: y + half }
}
