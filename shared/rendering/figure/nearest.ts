/** What a person points at in a figure: the nearest thing, or the values of every series at the nearest x. */
import type { KeyCommand } from '../../contracts/index.js'
import type { FigureReading, ReadPoint } from './reading.js'

export interface Spot {
  /** What all lines below have in common; absent when they say all themselves. */
  readonly heading?: string
  readonly lines: readonly string[]
  /** Where rings are drawn [px]. */
  readonly places: readonly { readonly x: number; readonly y: number }[]
  /** Where an upright line is drawn [px]. */
  readonly upright?: number
}

/** A point or line is pointed at within this distance [px] even where a series has a value. */
const closeBy = 14
/** A line is met everywhere along its length, so it is meant only by pointing right at it. */
const lineShyness = 3.5

/** `x` and `y` are pixels of the drawing; null outside its field or when there is nothing to read. */
export function spotAt(reading: FigureReading, x: number, y: number): Spot | null {
  if (x < 0 || y < 0 || x > reading.width || y > reading.height) return null
  const single = nearestPoint(
    reading.series.flatMap((series) => (series.at === undefined ? series.points : [])),
    x,
    y,
  )
  const along = reading.series.filter((series) => series.at !== undefined)
  if (single !== null && (along.length === 0 || single.distance <= closeBy))
    return { lines: [single.point.words], places: [single.point] }
  return alongSpot(reading, x)
}

/** Every series at the x of the nearest point of any. */
function alongSpot(reading: FigureReading, x: number): Spot | null {
  let nearest: ReadPoint | undefined
  for (const series of reading.series)
    if (series.at !== undefined)
      for (const point of series.points)
        if (nearest === undefined || Math.abs(point.x - x) < Math.abs(nearest.x - x)) nearest = point
  const at = nearest?.along
  if (nearest === undefined || at === undefined) return null
  const values = reading.series.flatMap((series) => {
    const value = series.at?.(at) ?? null
    return value === null ? [] : [{ name: series.name, ...value }]
  })
  return {
    heading: reading.alongWords(at),
    lines: values.map(({ name, words }) => `${name}: ${words}`),
    places: values.map((value) => ({ x: nearest.x, y: value.y })),
    upright: nearest.x,
  }
}

function nearestPoint(
  points: readonly ReadPoint[],
  x: number,
  y: number,
): { readonly point: ReadPoint; readonly distance: number } | null {
  let best: { point: ReadPoint; distance: number; reach: number } | null = null
  for (const point of points) {
    const reach = point.reach ?? 0
    const distance = distanceTo(point, x, y, reach)
    // Of things that lie inside one another the smaller is meant.
    if (best === null || distance < best.distance || (distance === best.distance && reach < best.reach))
      best = { point, distance, reach }
  }
  return best
}

function distanceTo(point: ReadPoint, x: number, y: number, reach: number): number {
  if (point.across === 'x') return Math.abs(point.x - x) * lineShyness
  if (point.across === 'y') return Math.abs(point.y - y) * lineShyness
  return Math.max(0, Math.hypot(point.x - x, point.y - y) - reach)
}

/** A place in the reading order: which series, which of its points. */
export interface Step {
  readonly series: number
  readonly point: number
}

/** The next place for a command of the keyboard, or undefined when it moves nothing: through the points of a series, or to another one. */
export function stepFor(
  reading: FigureReading,
  from: Step | undefined,
  command: KeyCommand | undefined,
): Step | undefined {
  const to = command === undefined ? undefined : moves[command]
  if (to === undefined || reading.series.length === 0) return undefined
  return from === undefined ? { series: 0, point: 0 } : to(reading, from)
}

const lastPoint = (reading: FigureReading, { series }: Step) => (reading.series[series]?.points.length ?? 0) - 1

const moves: Readonly<Partial<Record<KeyCommand, (reading: FigureReading, from: Step) => Step>>> = {
  'previous value': (_, from) => ({ ...from, point: Math.max(0, from.point - 1) }),
  'next value': (reading, from) => ({ ...from, point: Math.min(lastPoint(reading, from), from.point + 1) }),
  'first value': (_, from) => ({ ...from, point: 0 }),
  'last value': (reading, from) => ({ ...from, point: lastPoint(reading, from) }),
  'next series': (reading, from) => otherSeries(reading, from, 1),
  'previous series': (reading, from) => otherSeries(reading, from, -1),
}

/** The point of the next series that stands nearest across. */
function otherSeries(reading: FigureReading, from: Step, by: 1 | -1): Step {
  const series = Math.min(reading.series.length - 1, Math.max(0, from.series + by))
  if (series === from.series) return from
  const across = reading.series[from.series]?.points[from.point]?.x ?? 0
  const points = reading.series[series]?.points ?? []
  let point = 0
  points.forEach((each, index) => {
    if (Math.abs(each.x - across) < Math.abs((points[point]?.x ?? 0) - across)) point = index
  })
  return { series, point }
}

/** `power required, 3 of 41: true airspeed 41 m/s, power 80.2 kW`. */
export function stepWords(reading: FigureReading, { series, point }: Step): string {
  const read = reading.series[series]
  const words = read?.points[point]?.words ?? ''
  return `${read?.name ?? ''}, ${point + 1} of ${read?.points.length ?? 0}: ${words}`
}

export function stepSpot(reading: FigureReading, { series, point }: Step): Spot | null {
  const read = reading.series[series]
  const at = read?.points[point]
  if (read === undefined || at === undefined) return null
  return {
    heading: read.name,
    lines: [at.words],
    places: [at],
    ...(read.at === undefined ? {} : { upright: at.x }),
  }
}
