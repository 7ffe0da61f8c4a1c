import type { Figure, Ink, Mark } from '../../../shared/contracts/figure.js'
import { requireFinite } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Checks } from '../layout/checks.js'
import { bodyOutline, boomOutline, surfaceOutline } from '../layout/outlines.js'
import { pad } from '../layout/pad.js'
import type { Layout, LayoutRotor, Surface } from '../layout/parts.js'
import { requireLayout } from '../layout/record.js'
import type { Length } from '../quantity.js'
import { requireCaption } from './axis.js'
import { clearanceMarks, type DrawnPoint, dimension, lengthText, outline, turningArrow } from './drawing.js'
import { freezeFigure } from './freeze.js'

export interface ViewOptions {
  /** What a builder of layouts returns. */
  readonly layout: Layout
  /** [m] */
  readonly centreOfGravity?: { readonly x: Length; readonly y: Length; readonly z?: Length }
  /** What `layout.checks` returns: its clearances are drawn where parts are nearest. */
  readonly checks?: Checks
  /** Rotors drawn as lost, counted from 0. */
  readonly lost?: readonly number[]
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.planView'
const known = new Set(['layout', 'centreOfGravity', 'checks', 'lost', 'caption', 'description'])
/** Arrows and numbers of more rotors than this would fill the figure's list of marks. */
const mostArrows = 24
/** Checks whose clearance is one of height. */
const unseen: ReadonlySet<string> = new Set(['rotor to ground', 'rotor to boom'])

/**
 * A layout seen from above, to scale: rotors with numbers and the way they turn, booms, wing, tail, body, propellers, the circle around the turning rotors, and dimensions.
 *
 * @equation across = y, ahead = x; a full rim turns anticlockwise seen from above, a broken one clockwise
 * @param options - `layout`; optional `centreOfGravity`: `{ x, y }` [m], `checks`: what `layout.checks` returns, `lost`: list of rotors counted from 0, `caption`, `description`
 * @returns a figure to scale; up is ahead, and rotors are numbered from 1 in their order
 * @throws InvalidInput for what is no layout, places that are not finite, a lost rotor that is none, and an unknown option
 * @method Outlines as `layout.blockedArea` has them. Arrows are drawn for up to 24 rotors.
 * @validity As the layout's.
 * @source House convention, no publication.
 * @example
 * const plan = layout.multirotor({ count: 6, rotorRadius: 1 * u.m })
 * const drawn = figure.planView({ layout: plan, centreOfGravity: { x: 0 * u.m, y: 0 * u.m }, checks: layout.checks(plan) })
 */
export function planView(options: ViewOptions): Figure {
  const { layout, centreOfGravity, checks, lost } = readView(method, options)
  const around = pad(layout)
  const { caption = `Plan view, ${layout.kind}, to scale.`, description = inWords(layout, around.diameter) } = options
  const circle: Mark = {
    mark: 'circle',
    ...{ x: around.y, y: around.x, radius: around.diameter / 2, broken: true, ink: 'faint' as const },
    label: `circle around turning rotors, ${lengthText(around.diameter)}`,
  }
  return freezeFigure({
    figure: 'plot',
    caption,
    description,
    x: { label: 'right', dimension: 'm' },
    y: { label: 'ahead', dimension: 'm' },
    toScale: true,
    marks: [
      circle,
      ...partMarks(layout),
      ...rotorMarks(layout.rotors, lost),
      ...dimensionMarks(layout, around),
      ...clearanceMarks(
        checks?.findings ?? [],
        // Seen from above, heights do not show: what lies under a disk is for the front view.
        ({ check, met }) => (check.startsWith('rotor to ') ? !unseen.has(check) : !met),
        ({ x, y }) => [y, x],
      ),
      ...gravityMark(centreOfGravity === undefined ? undefined : [centreOfGravity.y, centreOfGravity.x]),
    ],
  })
}

/** Checks what both views take. */
export function readView(caller: string, options: ViewOptions) {
  checkOptions(caller, options, known)
  const { layout, centreOfGravity, checks, lost = [], caption, description } = options
  requireLayout(caller, layout)
  if (caption !== undefined) requireCaption(caller, 'caption', caption)
  if (description !== undefined) requireCaption(caller, 'description', description)
  if (centreOfGravity !== undefined) {
    checkOptions(`${caller} centreOfGravity`, centreOfGravity, new Set(['x', 'y', 'z']))
    for (const axis of ['x', 'y'] as const) requireFinite(caller, `centreOfGravity.${axis}`, centreOfGravity[axis], 'm')
    if (centreOfGravity.z !== undefined) requireFinite(caller, 'centreOfGravity.z', centreOfGravity.z, 'm')
  }
  if (checks !== undefined && !Array.isArray(checks?.findings))
    throw new InvalidInput({
      method: caller,
      argument: 'checks',
      value: describeValue(checks),
      accepted: 'what layout.checks returns',
    })
  const isRotor = (index: number) => Number.isInteger(index) && index >= 0 && index < layout.rotors.length
  if (!Array.isArray(lost) || !lost.every(isRotor))
    throw new InvalidInput({
      method: caller,
      argument: 'lost',
      value: Array.isArray(lost) ? `[${lost.join(', ')}]` : describeValue(lost),
      accepted: `a list of rotors counted from 0 to ${layout.rotors.length - 1}`,
    })
  return { layout, centreOfGravity, checks, lost: new Set(lost) }
}

function inWords(layout: Layout, diameter: number): string {
  const { rotors, booms, propellers } = layout
  const right = rotors.filter(({ spin }) => spin > 0).length
  return `Seen from above, ahead is up: ${rotors.length} rotors, ${right} of them anticlockwise and ${rotors.length - right} clockwise, ${booms.length} booms, ${propellers.length} propellers; the circle around the turning rotors is ${lengthText(diameter)} across.`
}

/** Turned so that ahead is up. */
const drawn = (points: readonly (readonly [number, number])[]): readonly DrawnPoint[] => points.map(([x, y]) => [y, x])

function partMarks({ wing, tail, body, booms, fins, propellers }: Layout): readonly Mark[] {
  return [
    ...[wing, tail].flatMap((surface) =>
      surface === undefined ? [] : [outline(drawn(surfaceOutline(surface)), { filled: true })],
    ),
    ...(body === undefined ? [] : [outline(drawn(bodyOutline(body)), { filled: true })]),
    ...booms.map((boom) => outline(drawn(boomOutline(boom)), { filled: true })),
    ...fins.map((fin) => outline(drawn(finOutline(fin)))),
    ...propellers.map(({ x, y, radius }) => outline(drawn(slab(x, y, 0.04 * radius, radius)), { ink: 'third' })),
  ]
}

function finOutline({ x, y, rootChord, thicknessRatio }: Surface): readonly (readonly [number, number])[] {
  return slab(x - rootChord / 2, y, rootChord / 2, (thicknessRatio * rootChord) / 2)
}

function slab(x: number, y: number, along: number, across: number): readonly (readonly [number, number])[] {
  return [
    [x + along, y - across],
    [x + along, y + across],
    [x - along, y + across],
    [x - along, y - across],
  ]
}

function rotorMarks(rotors: readonly LayoutRotor[], lost: ReadonlySet<number>): readonly Mark[] {
  const said = new Set<string>()
  const rims = rotors.map(({ x, y, radius, spin, role }, index): Mark => {
    const name = lost.has(index) ? 'lost' : `${role === 'tilt' ? 'tilts' : 'lifts'}, ${turnOf(spin)}`
    const label = said.has(name) ? {} : { label: name }
    said.add(name)
    const ink = rimInk(lost.has(index), role)
    return { mark: 'circle', x: y, y: x, radius, ink, ...(spin < 0 ? { broken: true } : {}), ...label }
  })
  const arrows = rotors.map(({ x, y, radius, spin, role }, index) =>
    // Seen from above with ahead up, right lies to the right: anticlockwise stays anticlockwise.
    turningArrow([y, x], radius, spin, rimInk(lost.has(index), role)),
  )
  // Beside the hub, away from the middle: booms and arms pass through it.
  const numbers = rotors.map(
    ({ x, y, radius }, index): Mark => ({
      mark: 'text',
      ...{ x: y + (y < 0 ? -0.3 : 0.3) * radius, y: x - 0.12 * radius, text: String(index + 1) },
    }),
  )
  return [...rims, ...(rotors.length > mostArrows ? [] : arrows), ...numbers]
}

function turnOf(spin: number): string {
  return spin > 0 ? 'anticlockwise' : 'clockwise'
}

function rimInk(lost: boolean, role: LayoutRotor['role']): Ink {
  return lost ? 'warning' : role === 'tilt' ? 'third' : 'accent'
}

/** Width below, length to the right, and the diameter of the first rotor above it. */
function dimensionMarks(layout: Layout, around: ReturnType<typeof pad>): readonly Mark[] {
  const { rotors } = layout
  const tick = 0.012 * Math.max(around.length, around.width)
  const reach = (side: 1 | -1, axis: 'x' | 'y') => side * extreme(layout, side, axis)
  const [left, right, top, bottom] = [reach(-1, 'y'), reach(1, 'y'), reach(1, 'x'), reach(-1, 'x')]
  const outer = Math.max(right, around.y + around.diameter / 2)
  const under = Math.min(bottom, around.x - around.diameter / 2)
  const first = rotors[0] as LayoutRotor
  const over = Math.max(top, around.x + around.diameter / 2) + 4 * tick
  return [
    ...dimension([left, under - 4 * tick], [right, under - 4 * tick], tick, lengthText(right - left)),
    ...dimension([outer + 5 * tick, bottom], [outer + 5 * tick, top], tick, lengthText(top - bottom)),
    ...dimension([first.y - first.radius, over], [first.y + first.radius, over], tick, lengthText(2 * first.radius)),
  ]
}

/** How far rotors and parts reach to one side. */
function extreme(layout: Layout, side: 1 | -1, axis: 'x' | 'y'): number {
  const parts = partMarks(layout).flatMap((mark) => (mark.mark === 'polygon' ? (axis === 'y' ? mark.x : mark.y) : []))
  return Math.max(...layout.rotors.map((rotor) => side * rotor[axis] + rotor.radius), ...parts.map((at) => side * at))
}

export function gravityMark(at: DrawnPoint | undefined): readonly Mark[] {
  if (at === undefined) return []
  return [{ mark: 'dot', x: [at[0]], y: [at[1]], names: ['CG'], ink: 'ink', label: 'centre of gravity' }]
}
