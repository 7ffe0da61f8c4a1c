import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import type { Length, Mass } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { endAt, type GravityLimit, type ReadLimit, readGravityLimits } from './gravity-limit.js'
import type { Loading, LoadingState } from './loading.js'

export interface GravityMarginsOptions {
  /** What `layout.loading` returns. */
  readonly loading: Loading
  /** What `layout.hoverLimits`, `layout.cruiseLimits` and trim after a loss return, or limits of one's own. */
  readonly limits: readonly GravityLimit[]
}

export interface GravityMargin {
  readonly limit: string
  readonly side: 'forward' | 'aft'
  /** From the centre of gravity to the limit [m]; below 0 it lies beyond. */
  readonly margin: Length
  /** Of the loading state that comes nearest [kg]. */
  readonly mass: Mass
  /** Its centre of gravity [m]. */
  readonly x: Length
  readonly met: boolean
  /** In words. */
  readonly text: string
}

const method = 'layout.gravityMargins'
const known = new Set(['loading', 'limits'])

/**
 * How near any loading comes to each limit of the centre of gravity, and which limit binds.
 *
 * @equation forward: x_limit(m) - x; aft: x - x_limit(m); the least over the outermost loading states
 * @param options - `loading`: what `layout.loading` returns, `limits`: list of `{ label, forward, aft [m], mass [kg] }`, ends one for all masses or a list over `mass`
 * @returns a list of `{ limit, side, margin [m], mass [kg], x [m], met, text }`, the tightest first
 * @throws InvalidInput for what is no loading, no limits, ends that do not fit their masses, and an unknown option
 * @method Straight lines between the masses of a limit. Below its first mass the first end holds; a state heavier than its last mass is not met, since the limit says nothing there (of hover: it cannot be lifted).
 * @validity The corners of the loading envelope: states between them, with parts of loads, can lie nearer to a limit that bends inwards. Each limit not met carries an advisory.
 * @source Geometry.
 * @example
 * const aboard = layout.loading({ fixed: [{ name: 'all', mass: 1000 * u.kg, x: 0.1 * u.m, y: 0 * u.m }], loads: [] })
 * layout.gravityMargins({ loading: aboard, limits: [{ label: 'trim', forward: 0.3 * u.m, aft: -0.2 * u.m }] })[0].margin // 0.2
 */
export function gravityMargins(options: GravityMarginsOptions): readonly GravityMargin[] {
  checkOptions(method, options, known)
  const { forward, aft } = requireLoading(method, options.loading)
  const limits = readGravityLimits(method, options.limits)
  const states = [...forward, ...aft]
  const heaviest = states.reduce((most, state) => (state.mass > most.mass ? state : most))
  const margins = limits.flatMap((limit) => {
    const ends = limit.forward ?? limit.aft
    if (ends !== undefined && endAt(limit, ends, heaviest.mass) === null) return [beyond(limit, heaviest)]
    return [...tightest(limit, 'forward', limit.forward, states), ...tightest(limit, 'aft', limit.aft, states)]
  })
  margins.sort((a, b) => Number(a.met) - Number(b.met) || a.margin - b.margin)
  if (isListening())
    for (const { met, text, margin } of margins)
      if (!met)
        advise({
          code: 'CENTRE_OF_GRAVITY',
          method,
          quantity: 'margin',
          value: margin,
          range: [0, null],
          message: text,
        })
  return margins
}

/** The loading, if it is one. */
export function requireLoading(caller: string, loading: Loading): Loading {
  const paths = [loading?.forward, loading?.aft]
  const sound = (state: LoadingState) => state?.mass > 0 && Number.isFinite(state.x)
  if (paths.every((path) => Array.isArray(path) && path.length > 0 && path.every(sound))) return loading
  throw new InvalidInput({
    method: caller,
    argument: 'loading',
    value: describeValue(loading),
    accepted: 'what layout.loading returns',
  })
}

function tightest(
  limit: ReadLimit,
  side: 'forward' | 'aft',
  ends: readonly number[] | undefined,
  states: readonly LoadingState[],
): readonly GravityMargin[] {
  if (ends === undefined) return []
  const rows = states.map((state) => {
    const end = endAt(limit, ends, state.mass) as number
    return { state, margin: side === 'forward' ? end - state.x : state.x - end }
  })
  const { state, margin } = rows.reduce((least, row) => (row.margin < least.margin ? row : least))
  const met = margin >= -1e-9
  const where = side === 'forward' ? 'ahead of' : 'behind'
  const text = met
    ? `${limit.label}: the ${side} limit is ${length(margin)} away at ${writeNumber(Math.round(state.mass))} kg.`
    : `${limit.label}: at ${writeNumber(Math.round(state.mass))} kg the centre of gravity can lie ${length(-margin)} ${where} the ${side} limit.`
  return [{ limit: limit.label, side, margin, mass: state.mass, x: state.x, met, text }]
}

/** Heavier than the limit reaches: told once, with how far the centre of gravity lies beyond its last ends, or 0 where it lies between them. */
function beyond(limit: ReadLimit, state: LoadingState): GravityMargin {
  const ahead = (limit.forward?.at(-1) ?? state.x) - state.x
  const behind = state.x - (limit.aft?.at(-1) ?? state.x)
  const most = limit.mass?.at(-1)
  const text = `${limit.label}: ${writeNumber(Math.round(state.mass))} kg is more than ${most === undefined ? 'any mass it holds for' : `the ${writeNumber(most)} kg it reaches to`}.`
  return {
    ...{ limit: limit.label, side: ahead <= behind ? 'forward' : 'aft', margin: Math.min(0, ahead, behind) },
    ...{ mass: state.mass, x: state.x, met: false, text },
  }
}

function length(metres: number): string {
  return `${Number(metres.toFixed(3))} m`
}
