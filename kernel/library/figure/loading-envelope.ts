import type { Figure, Ink, Mark } from '../../../shared/contracts/figure.js'
import { requirePositive } from '../check.js'
import { checkOptions } from '../errors.js'
import { endAt, type GravityLimit, type ReadLimit, readGravityLimits } from '../layout/gravity-limit.js'
import { requireLoading } from '../layout/gravity-margins.js'
import type { Loading } from '../layout/loading.js'
import type { Mass } from '../quantity.js'
import { requireCaption } from './axis.js'
import { type DrawnPoint, lengthText } from './drawing.js'
import { freezeFigure } from './freeze.js'

export interface LoadingEnvelopeOptions {
  /** What `layout.loading` returns. */
  readonly loading: Loading
  /** What `layout.hoverLimits`, `layout.cruiseLimits` and trim after a loss return, or limits of one's own; none when left out. */
  readonly limits?: readonly GravityLimit[]
  /** Drawn as a rule [kg]. */
  readonly greatestMass?: Mass
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.loadingEnvelope'
const inks: readonly Ink[] = ['second', 'third', 'warning', 'ink']
const steps = 40
const known = new Set(['loading', 'limits', 'greatestMass', 'caption', 'description'])

/**
 * Mass over the place of the centre of gravity: every loading order between two paths, with the limits of hover, rotor-out and cruise in one picture.
 *
 * @equation across = -x, behind the origin; the filled region holds the states of every loading order
 * @param options - `loading`: what `layout.loading` returns; optional `limits`: list of `{ label, forward, aft [m], mass [kg] }`, `greatestMass` [kg], `caption`, `description`
 * @returns a figure; ahead is to the left; a limit much farther off than the nearest is told in words
 * @throws InvalidInput for what is no loading, limits whose ends do not fit their masses, a mass that is not positive, and an unknown option
 * @method Draws what it is given, with straight lines between the masses of a limit.
 * @validity As the loading's and the limits'.
 * @source The diagram: Torenbeek, E., Synthesis of Subsonic Airplane Design, 1982, section 8.5 (from memory).
 * @example
 * const aboard = layout.loading({
 *   fixed: [{ name: 'empty', mass: 1300 * u.kg, x: 0 * u.m, y: 0 * u.m }], loads: [{ name: 'front seat', mass: 100 * u.kg, x: 1 * u.m, y: 0 * u.m }],
 * })
 * const drawn = figure.loadingEnvelope({ loading: aboard, limits: [{ label: 'hover trim', forward: 0.3 * u.m, aft: -0.3 * u.m }] })
 */
export function loadingEnvelope(options: LoadingEnvelopeOptions): Figure {
  checkOptions(method, options, known)
  const { loading, limits = [], greatestMass, description } = options
  const { caption = 'Centre of gravity for every loading order, and its limits.' } = options
  const { forward, aft } = requireLoading(method, loading)
  requireCaption(method, 'caption', caption)
  if (description !== undefined) requireCaption(method, 'description', description)
  if (greatestMass !== undefined) requirePositive(method, 'greatestMass', greatestMass, 'kg')
  const read = limits.length === 0 ? [] : readGravityLimits(method, limits)
  const states = [...forward, ...aft]
  const reach = reachOf(
    states.map(({ mass }) => mass),
    greatestMass,
  )
  const ends = read.map((limit) => endsOf(limit, states))
  const window = windowOf(states, ends.flat())
  const loop = [...forward, ...[...aft].reverse()]
  return freezeFigure({
    figure: 'plot',
    caption,
    ...(description === undefined ? {} : { description }),
    x: { label: 'centre of gravity behind the origin', dimension: 'm', ...window },
    y: { label: 'mass', dimension: 'kg', unit: 'kg', from: reach[0], to: reach[1] },
    marks: [
      {
        mark: 'polygon',
        x: loop.map(({ x }) => -x),
        y: loop.map(({ mass }) => mass),
        ...{ filled: true, ink: 'accent' as const, label: `every loading order` },
      },
      ...read.flatMap((limit, index) =>
        limitMarks(limit.label, ends[index] as readonly End[], inks[index % inks.length] as Ink, { reach, window }),
      ),
      ...stateMarks(loading),
      ...(greatestMass === undefined
        ? []
        : [
            {
              mark: 'rule' as const,
              axis: 'y' as const,
              at: greatestMass,
              ink: 'faint' as const,
              label: 'greatest mass',
            },
          ]),
    ],
  })
}

/** Lowest and highest mass of the field [kg]. */
function reachOf(masses: readonly number[], greatestMass = 0): readonly [number, number] {
  const [lightest, heaviest] = [Math.min(...masses), Math.max(...masses, greatestMass)]
  const room = 0.06 * Math.max(heaviest - lightest, 0.02 * heaviest)
  return [lightest - room, heaviest + room]
}

/** One end of a limit. */
interface End {
  readonly side: 'forward' | 'aft'
  readonly mass: readonly number[] | undefined
  readonly at: readonly number[]
  /** From the loading state that comes nearest [m]. */
  readonly away: number
}

function endsOf(limit: ReadLimit, states: Loading['forward']): readonly End[] {
  return (['forward', 'aft'] as const).flatMap((side): End[] => {
    const at = limit[side]
    if (at === undefined || at.length === 0) return []
    const away = Math.min(
      ...states.map(({ mass, x }) => Math.abs((endAt(limit, at, mass) ?? (at.at(-1) as number)) - x)),
    )
    return [{ side, mass: limit.mass, at, away }]
  })
}

/** Ends of the field: the loadings, and the limits but for those many times farther off than the nearest. */
function windowOf(states: Loading['forward'], ends: readonly End[]): { readonly from: number; readonly to: number } {
  const places = states.map(({ x }) => -x)
  const wide = Math.max(...places) - Math.min(...places)
  const reach = Math.max(5 * wide, 5 * Math.min(...ends.map((end) => end.away)), 1e-3)
  const near = ends.filter((end) => end.away <= reach).flatMap((end) => end.at.map((x) => -x))
  const [low, high] = [Math.min(...places, ...near), Math.max(...places, ...near)]
  const room = 0.12 * Math.max(high - low, 1e-3)
  return { from: low - room, to: high + room }
}

interface Field {
  readonly reach: readonly [number, number]
  readonly window: { readonly from: number; readonly to: number }
}

/** A limit's ends as broken lines whose points have a shape of their own, so that limits differ by more than their ink; ends beyond the field in words. */
function limitMarks(label: string, ends: readonly End[], ink: Ink, { reach, window }: Field): readonly Mark[] {
  const paths = ends.map((end) => withinReach(end, reach).filter(([x]) => x >= window.from && x <= window.to))
  const drawn = paths.filter((path) => path.length >= 2)
  const points = drawn.flatMap((path) => [path[0] as DrawnPoint, path.at(-1) as DrawnPoint])
  const far = ends.flatMap((end, index) =>
    (paths[index]?.length ?? 0) < 2 ? [`${end.side} ${lengthText(end.away)} away`] : [],
  )
  const name = far.length === 0 ? label : `${label}, ${far.join(', ')}`
  return [
    ...drawn.map(
      (path): Mark => ({ mark: 'line', x: path.map(([x]) => x), y: path.map(([, y]) => y), ink, broken: true }),
    ),
    { mark: 'dot', x: points.map(([x]) => x), y: points.map(([, y]) => y), ink, label: name },
  ]
}

/** The end at the masses of the field, in steps fine enough to be cut at the field's sides. */
function withinReach({ mass, at }: End, [low, high]: readonly [number, number]): readonly DrawnPoint[] {
  if (mass === undefined)
    return [
      [-(at[0] as number), low],
      [-(at[0] as number), high],
    ]
  const whole = { label: '', mass, forward: at, aft: undefined }
  const top = Math.min(high, mass.at(-1) as number)
  const even = Array.from({ length: steps + 1 }, (_, step) => low + ((top - low) * step) / steps)
  const masses = [...even, ...mass.filter((one) => one > low && one < top)].sort((a, b) => a - b)
  return masses.flatMap((one): readonly DrawnPoint[] => {
    const x = endAt(whole, at, one)
    return x === null ? [] : [[-x, one]]
  })
}

/** The corners of the envelope; empty and full are named, and each load where its path turns. */
function stateMarks({ forward, aft }: Loading): readonly Mark[] {
  const last = forward.length - 1
  const name = (added: string, index: number) =>
    index === 0 ? 'none aboard' : index === last ? 'all aboard' : `+ ${added}`
  const rows = [
    ...forward.map((state, index) => ({ ...state, name: name(state.added, index) })),
    ...aft.slice(1, -1).map((state, index) => ({ ...state, name: name(state.added, index + 1) })),
  ]
  return [
    {
      mark: 'dot',
      x: rows.map(({ x }) => -x),
      y: rows.map(({ mass }) => mass),
      names: rows.map((row) => row.name),
      ink: 'accent',
    },
  ]
}
