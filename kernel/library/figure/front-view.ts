import type { Figure, Mark } from '../../../shared/contracts/figure.js'
import { type Disk, hoverDisk } from '../layout/disk-clearance.js'
import type { Layout, LayoutRotor, Surface } from '../layout/parts.js'
import { clearanceMarks, type DrawnPoint, dimension, lengthText, outline, stroke } from './drawing.js'
import { freezeFigure } from './freeze.js'
import { gravityMark, readView, type ViewOptions } from './plan-view.js'

const method = 'figure.frontView'

/**
 * A layout seen from ahead, to scale, standing on the ground: disks with their cant, masts, booms, wing, tail, body, propellers, heights and span.
 *
 * @equation across = -y (seen from ahead the aircraft's right lies to the left), height = ground - z
 * @param options - `layout`; optional `centreOfGravity`: `{ x, y, z }` [m], `checks`: what `layout.checks` returns, `lost`: list of rotors counted from 0, `caption`, `description`
 * @returns a figure to scale; rotors behind each other share a label
 * @throws InvalidInput as `figure.planView`
 * @method Disks are drawn as the ellipses that they are from ahead.
 * @validity As the layout's.
 * @source House convention, no publication.
 * @example
 * const plan = layout.multirotor({ count: 6, rotorRadius: 1 * u.m })
 * const drawn = figure.frontView({ layout: plan })
 */
export function frontView(options: ViewOptions): Figure {
  const { layout, centreOfGravity, checks, lost } = readView(method, options)
  const { ground, rotors } = layout
  const project = (y: number, z: number): DrawnPoint => [-y, ground - z]
  const { caption = `Front view, ${layout.kind}, to scale.`, description = inWords(layout) } = options
  return freezeFigure({
    figure: 'plot',
    caption,
    description,
    x: { label: 'seen from ahead', dimension: 'm' },
    y: { label: 'above the ground', dimension: 'm', from: -0.09 * widthOf(layout) },
    toScale: true,
    marks: [
      { mark: 'rule', axis: 'y', at: 0, ink: 'ink' },
      ...partMarks(layout, project),
      ...rotors.map((rotor, index) => rotorMark(rotor, lost.has(index), project)),
      ...numberMarks(rotors, project),
      ...dimensionMarks(layout, project),
      ...clearanceMarks(
        checks?.findings ?? [],
        ({ check, met }) =>
          check === 'rotor to boom' || check === 'rotor to body' || (!met && check !== 'rotor to rotor'),
        ({ y, z }) => project(y, z),
      ),
      ...gravityMark(centreOfGravity === undefined ? undefined : project(centreOfGravity.y, centreOfGravity.z ?? 0)),
    ],
  })
}

type Project = (y: number, z: number) => DrawnPoint

function inWords({ rotors, ground }: Layout): string {
  const heights = rotors.map(({ z }) => ground - z)
  return `Seen from ahead, the aircraft's right lies to the left: ${rotors.length} rotors with hubs ${lengthText(Math.min(...heights))} to ${lengthText(Math.max(...heights))} above the ground.`
}

function widthOf({ rotors, wing }: Layout): number {
  return 2 * Math.max((wing?.span ?? 0) / 2, ...rotors.map(({ y, radius }) => Math.abs(y) + radius))
}

function partMarks({ wing, tail, body, booms, fins, propellers, rotors }: Layout, project: Project): readonly Mark[] {
  return [
    ...[tail, wing].flatMap((surface) =>
      surface === undefined ? [] : [outline(levelOutline(surface, project), { filled: true })],
    ),
    ...fins.map(({ y, z, span, rootChord, thicknessRatio }) => {
      const half = (thicknessRatio * rootChord) / 2
      const corners = [
        project(y - half, z),
        project(y + half, z),
        project(y + half, z - span),
        project(y - half, z - span),
      ]
      return outline(corners)
    }),
    ...(body === undefined
      ? []
      : [outline(ellipse(project(0, body.z), body.width / 2, body.height / 2), { filled: true })]),
    ...booms.flatMap(({ from, to, diameter }) =>
      [from, to].map(({ y, z }) => outline(ellipse(project(y, z), diameter / 2, diameter / 2), { filled: true })),
    ),
    ...distinct(rotors).map(({ y, z }) => stroke([project(y, z), project(y, foot(booms, y, z))], 'ink')),
    ...propellers.map(
      ({ y, z, radius }): Mark => ({
        mark: 'circle',
        ...{ x: project(y, z)[0], y: project(y, z)[1], radius, ink: 'third' as const },
        label: 'propeller',
      }),
    ),
  ]
}

/** Where the mast of a rotor stands: on the boom nearest across, or at the hub itself. */
function foot(booms: Layout['booms'], y: number, z: number): number {
  const under = booms.flatMap(({ from, to }) => [from, to]).filter((end) => Math.abs(end.y - y) < 1e-6)
  return under.length === 0 ? z : Math.min(...under.map((end) => end.z))
}

function levelOutline({ y, z, span, rootChord, tipChord, dihedral, thicknessRatio }: Surface, project: Project) {
  const half = (span / 2) * Math.cos(dihedral)
  const rise = (span / 2) * Math.sin(dihedral)
  const root = (thicknessRatio * rootChord) / 2
  const tip = (thicknessRatio * tipChord) / 2
  return [
    project(y - half, z - rise - tip),
    project(y, z - root),
    project(y + half, z - rise - tip),
    project(y + half, z - rise + tip),
    project(y, z + root),
    project(y - half, z - rise + tip),
  ]
}

function ellipse([x, y]: DrawnPoint, wide: number, tall: number): readonly DrawnPoint[] {
  return Array.from({ length: 32 }, (_, step) => {
    const angle = (2 * Math.PI * step) / 32
    return [x + wide * Math.cos(angle), y + tall * Math.sin(angle)] as const
  })
}

function rotorMark(rotor: LayoutRotor, lost: boolean, project: Project): Mark {
  const rim = rimOf(hoverDisk(rotor))
  const ink = lost ? 'warning' : rotor.role === 'tilt' ? 'third' : 'accent'
  return outline(
    rim.map(([y, z]) => project(y, z)),
    { ink },
  )
}

function rimOf({ middle, radius, along, across }: Disk): readonly (readonly [number, number])[] {
  return Array.from({ length: 32 }, (_, step) => {
    const [p, q] = [radius * Math.cos((step * Math.PI) / 16), radius * Math.sin((step * Math.PI) / 16)]
    return [middle[1] + p * along[1] + q * across[1], middle[2] + p * along[2] + q * across[2]] as const
  })
}

/** One of the rotors that stand behind each other. */
function distinct(rotors: readonly LayoutRotor[]): readonly LayoutRotor[] {
  const seen = new Set<string>()
  return rotors.filter(({ y, z }) => {
    const key = `${y.toFixed(3)} ${z.toFixed(3)}`
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}

function numberMarks(rotors: readonly LayoutRotor[], project: Project): readonly Mark[] {
  return distinct(rotors).map(({ y, z, radius }): Mark => {
    const same = rotors.flatMap((one, index) =>
      Math.abs(one.y - y) < 1e-3 && Math.abs(one.z - z) < 1e-3 ? [String(index + 1)] : [],
    )
    const [x, up] = project(y, z)
    // Towards the tip, clear of what stands on the boom.
    const outwards = (y < 0 ? 0.55 : -0.55) * radius
    return { mark: 'text', x: x + outwards, y: up + 0.25 * radius, text: same.join(' ') }
  })
}

/** Width below the ground line, and the heights of hubs and whole aircraft beside it. */
function dimensionMarks(layout: Layout, project: Project): readonly Mark[] {
  const { rotors, wing, fins, ground, body } = layout
  const width = widthOf(layout)
  const tick = 0.012 * width
  const hub = ground - Math.min(...rotors.map(({ z }) => z))
  const top = Math.max(
    hub,
    ...[wing].flatMap((one) => (one === undefined ? [] : [ground - one.z])),
    ...fins.map(({ z, span }) => ground - z + span),
  )
  const under = body === undefined ? 0 : ground - body.z - body.height / 2
  return [
    ...dimension([-width / 2, -5 * tick], [width / 2, -5 * tick], tick, lengthText(width)),
    ...dimension([width / 2 + 5 * tick, 0], [width / 2 + 5 * tick, hub], tick, lengthText(hub)),
    ...(top > hub + tick
      ? dimension([-width / 2 - 5 * tick, 0], [-width / 2 - 5 * tick, top], tick, lengthText(top))
      : []),
    ...(under > 2 * tick ? dimension([project(0, 0)[0], 0], [project(0, 0)[0], under], tick, lengthText(under)) : []),
  ]
}
