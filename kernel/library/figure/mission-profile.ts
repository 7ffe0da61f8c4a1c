import type { Figure, Mark } from '../../../shared/contracts/figure.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { FlownMission, MissionHistory } from '../mission/index.js'
import { requireChoice } from '../outside.js'
import { freezeFigure } from './freeze.js'
import { line } from './line.js'

export interface MissionProfileOptions {
  /** What `mission.fly` gave with fine steps. */
  readonly flown: FlownMission
  /** What goes up: `'altitude'` (when left out), `'power'` or `'charge'`. */
  readonly show?: 'altitude' | 'power' | 'charge'
  /** What lies across: `'time'` (when left out) or `'distance'` over ground. */
  readonly against?: 'time' | 'distance'
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.missionProfile'
const known = new Set(['flown', 'show', 'against', 'caption', 'description'])
const up = {
  altitude: { label: 'altitude', unit: 'm' },
  power: { label: 'power at the terminals', unit: 'kW' },
  charge: { label: 'state of charge', unit: '%' },
} as const
const captions = {
  altitude: 'Mission: altitude',
  power: 'Mission: power asked of the battery',
  charge: 'Mission: state of charge',
} as const
/** Names of segments stand on this many lines above the curve, so that short ones stay apart. */
const lines = 4

/**
 * A mission as flown: altitude, power or charge over time or distance, with its segments named.
 *
 * @equation as `mission.fly` integrated it
 * @param options - `flown` from `mission.fly` with fine steps; optional `show` (`'altitude'`, `'power'` or `'charge'`), `against` (`'time'` or `'distance'`), `caption`, `description`
 * @returns a figure: the curve, a rule where each segment begins, its name above
 * @throws InvalidInput for something that is no mission, one flown with coarse steps, a choice that is none, and an unknown option
 * @method Draws what it is given; the limit that was met first is marked.
 * @validity As the mission's.
 * @source House convention, no publication.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9 },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 *   battery: { cell: battery.cells.power18650, series: 200, parallel: 60, rating: 'peak' },
 * })
 * const flown = mission.fly({ aircraft: craft, segments: [{ kind: 'hover', time: 60 * u.s }, { kind: 'transition' }, { kind: 'cruise', distance: 40 * u.km }] })
 * const drawn = figure.missionProfile({ flown, show: 'power' })
 */
export function missionProfile(options: MissionProfileOptions): Figure {
  checkOptions(method, options, known)
  const { flown, show = 'altitude', against = 'time' } = options
  requireChoice(method, 'show', show, ['altitude', 'power', 'charge'])
  requireChoice(method, 'against', against, ['time', 'distance'])
  const history = requireHistory(flown)
  const { caption = captions[show], description } = options
  const x = against === 'time' ? history.time : history.distance
  const y = show === 'charge' ? history.stateOfCharge : history[show]
  const [low, high] = [Math.min(0, ...y), Math.max(...y, 1e-9)]
  const drawn = line({
    caption,
    ...(description === undefined ? {} : { description }),
    x: { ...(against === 'time' ? { label: 'time', unit: 'min' } : { label: 'distance', unit: 'km' }), values: x },
    y: { ...up[show], values: y, from: low, to: low + 1.35 * (high - low) },
  })
  return freezeFigure({
    ...drawn,
    marks: [...drawn.marks, ...nameSegments(history, x, low, high), ...markLimit(flown)],
  })

  function markLimit({ feasible, message, segment, second }: FlownMission): Mark[] {
    const begin = history.begins.find((one) => one.name === segment)
    if (feasible || begin === undefined) return []
    const time = (history.time[Math.min(begin.at, history.time.length - 1)] ?? 0) + second
    const place = history.time.findIndex((one) => one >= time)
    const at = place < 0 ? history.time.length - 1 : place
    return [
      { mark: 'dot', x: [x[at] ?? 0], y: [y[at] ?? 0], names: [message.slice(0, 400)], ink: 'warning', label: 'limit' },
    ]
  }
}

function nameSegments(history: MissionHistory, x: readonly number[], low: number, high: number): Mark[] {
  const last = x.length - 1
  const marks: Mark[] = []
  history.begins.forEach(({ name, at }, index) => {
    const from = x[Math.min(at, last)] ?? 0
    const to = x[Math.min(history.begins[index + 1]?.at ?? last, last)] ?? 0
    if (index > 0) marks.push({ mark: 'rule', axis: 'x', at: from, ink: 'faint' })
    const y = low + (high - low) * (1.06 + (0.25 * (index % lines)) / (lines - 1))
    const middle = 0.5 * (from + to)
    // Names near the ends begin or end there, so that they stay off the axis.
    const share = (middle - (x[0] ?? 0)) / ((x[last] ?? 0) - (x[0] ?? 0))
    const anchor = share < 0.08 ? 'start' : share > 0.92 ? 'end' : 'middle'
    const place = anchor === 'start' ? from : anchor === 'end' ? to : middle
    marks.push({ mark: 'text', x: place, y, text: name.slice(0, 400), anchor, ink: 'faint' })
  })
  // A figure holds 200 marks; the names of the first segments are worth more than rules of the last.
  return marks.slice(0, 190)
}

function requireHistory(flown: FlownMission): MissionHistory {
  const history: MissionHistory | undefined = typeof flown === 'object' && flown !== null ? flown.history : undefined
  if (history !== undefined && Array.isArray(history.time) && history.time.length > 0) return history
  throw new InvalidInput({
    method,
    argument: 'flown',
    value: history === undefined ? describeValue(flown) : 'a mission without its path',
    accepted: 'what mission.fly gives with fine steps',
  })
}
