/** How rotors, booms, wing, tail and body are placed on aircraft with a wing; lift plus cruise, vectored thrust and the mixed kind share it. */
import { requireNonNegative, requirePositive, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Angle, Area, Length, Ratio } from '../quantity.js'
import { silently } from '../recorder.js'
import { planform } from '../wing/planform.js'
import type { Cant, Layout, LayoutBoom, LayoutPropeller, LayoutRotor, RotorRole, Surface } from './parts.js'
import { farthest, record, thinnest } from './record.js'
import { type SpinPattern, spinsOf } from './spins.js'

export interface LayoutWing {
  /** [m^2] */
  readonly area: Area
  readonly aspectRatio: Ratio
  /** Tip over root chord; 0.6 when left out. */
  readonly taper?: Ratio
  /** Of the quarter-chord line [rad]; 0 when left out. */
  readonly sweep?: Angle
  /** [rad]; 0 when left out. */
  readonly dihedral?: Angle
  /** 0.16 when left out. */
  readonly thicknessRatio?: Ratio
  /** Of the root above the body's middle line [m]; half of the body's height when left out. */
  readonly above?: Length
}

export interface LayoutTail {
  /** [m^2] */
  readonly area: Area
  /** From the quarter point of the wing's mean chord to that of the tail's [m]. */
  readonly arm: Length
  /** `'booms'` when left out: between the inner booms, a fin on each; `'body'`: on its end, with one fin. */
  readonly on?: 'booms' | 'body'
  /** 4.5 when left out; between booms it follows from their distance. */
  readonly aspectRatio?: Ratio
  /** All fins together [m^2]; 0.7 of `area` when left out. */
  readonly finArea?: Area
}

export interface WingedOptions {
  /** [m] */
  readonly rotorRadius: Length
  /** Rotors of a column ahead of the wing; 2 when left out. */
  readonly rowsAhead?: Ratio
  /** Rotors of a column behind it; 2 when left out. */
  readonly rowsBehind?: Ratio
  /** Columns of each side, each on its own boom; 1 when left out: twin booms with the rotors in line. */
  readonly columns?: Ratio
  /** Between the disks of neighbours [m]; a tenth of the radius when left out. */
  readonly rotorGap?: Length
  /** In plan between the wing's leading edge and the disks [m]; 0.15 radii when left out. */
  readonly gapAhead?: Length
  /** In plan between the wing's trailing edge and the disks [m]; 0.15 radii when left out. */
  readonly gapBehind?: Length
  /** From the middle to the inner column [m]; where disks pass the body with `bodyGap` when left out. */
  readonly boomOffset?: Length
  /** Between body and inner disks in plan [m]; 0.2 radii when left out. */
  readonly bodyGap?: Length
  /** Of the hubs above the booms' middle lines [m]; 0.3 radii when left out. */
  readonly rotorHeight?: Length
  /** [m]; 0.12 radii when left out. */
  readonly boomDiameter?: Length
  /** `'alternating'` when left out; a list is of the right side: row by row from the front, in each from the middle outwards. */
  readonly spin?: SpinPattern
  /** Of the right side, the left being its image [rad]: `lateral` outwards, `longitudinal` forward; none when left out. */
  readonly cant?: Partial<Cant>
  readonly wing: LayoutWing
  readonly tail?: LayoutTail
  readonly body: {
    /** [m] */
    readonly length: Length
    /** [m] */
    readonly width: Length
    /** [m] */
    readonly height: Length
    /** Nose ahead of the origin [m]; 0.45 of the length when left out. */
    readonly noseAhead?: Length
  }
  /** Cruise propellers: by radius and place; the body's end on its middle line when the place is left out. */
  readonly propellers?: readonly (Pick<LayoutPropeller, 'radius'> & Partial<LayoutPropeller>)[]
  /** Of the body's underside above the ground [m]; 0.5 m when left out. */
  readonly groundClearance?: Length
}

const known = new Set([
  'rotorRadius',
  'rowsAhead',
  'rowsBehind',
  'columns',
  'rotorGap',
  'gapAhead',
  'gapBehind',
  'boomOffset',
  'bodyGap',
  'rotorHeight',
  'boomDiameter',
  'spin',
  'cant',
  'wing',
  'tail',
  'body',
  'propellers',
  'groundClearance',
])
const knownWing = new Set(['area', 'aspectRatio', 'taper', 'sweep', 'dihedral', 'thicknessRatio', 'above'])
const knownTail = new Set(['area', 'arm', 'on', 'aspectRatio', 'finArea'])
const knownBody = new Set(['length', 'width', 'height', 'noseAhead'])
const knownCant = new Set(['lateral', 'longitudinal'])
const knownPropeller = new Set(['x', 'y', 'z', 'radius', 'spin'])

/** Which rotors tilt, beside the options that all aircraft with a wing share. */
export interface WingedKind {
  readonly method: string
  readonly kind: string
  readonly tilts: (ahead: boolean) => boolean
}

/** Places everything; the origin is the quarter point of the wing's mean chord, on the body's middle line. */
export function placeWinged(options: WingedOptions, { method, kind, tilts }: WingedKind): Layout {
  const filled = readWinged(method, options)
  const { body, bodyX, radius, height } = filled
  const wing = placeWing(method, filled)
  const columns = columnsOf(filled)
  // Booms sit on the wing, which may rise outwards.
  const boomZ = (y: number) => wing.z - Math.min(y, wing.span / 2) * Math.tan(wing.dihedral)
  const rows = rowsOf(filled, wing, columns)
  const places = rows.flatMap(({ x, ahead }, row) => columns.map((y, column) => ({ x, y, row, column, ahead })))
  const spins = spinsOf(method, filled.spin, places)
  const rotors = places.flatMap((place, index): LayoutRotor[] => {
    const role: RotorRole = tilts(place.ahead) ? 'tilt' : 'lift'
    const right = {
      x: place.x,
      y: place.y,
      // Behind the wing a rotor that tilts hangs under its boom: turned forward, its disk then points back, clear of the boom.
      z: boomZ(place.y) + (role === 'tilt' && !place.ahead ? height : -height),
      radius,
      spin: spins[index] as number,
      cant: filled.cant,
      role,
    }
    const cant = { ...filled.cant, lateral: -filled.cant.lateral }
    return [{ ...right, y: -right.y, spin: -right.spin, cant }, right]
  })
  const { tail, fins, boomsTo } = placeTail(method, filled, boomZ(columns[0] as number), columns)
  return record({
    kind,
    rotors,
    booms: columns.flatMap((y, column) =>
      boomPair(filled, rows, wing, { y, z: boomZ(y), to: column === 0 ? boomsTo : undefined }),
    ),
    wing,
    ...(tail === undefined ? {} : { tail }),
    fins,
    body: { x: bodyX, z: 0, length: body.length, width: body.width, height: body.height },
    propellers: filled.propellers.map((one) => ({ x: bodyX - body.length, y: 0, z: 0, ...one })),
    ground: body.height / 2 + filled.groundClearance,
  })
}

function readWinged(method: string, options: WingedOptions) {
  checkOptions(method, options, known)
  const { rotorRadius: radius, rowsAhead = 2, rowsBehind = 2, columns = 1, cant = {}, propellers = [] } = options
  requireWithin(method, 'rotorRadius', radius, 'm', thinnest, 100)
  const { rotorGap = 0.1 * radius, gapAhead = 0.15 * radius, gapBehind = 0.15 * radius } = options
  const { bodyGap = 0.2 * radius, rotorHeight: height = 0.3 * radius, boomDiameter = 0.12 * radius } = options
  const { spin = 'alternating', groundClearance = 0.5, boomOffset } = options
  for (const [name, count] of [
    ['rowsAhead', rowsAhead],
    ['rowsBehind', rowsBehind],
  ] as const)
    requireWhole(method, name, count, 0)
  requireWhole(method, 'columns', columns, 1)
  if (rowsAhead + rowsBehind === 0)
    throw new InvalidInput({
      method,
      argument: 'rowsAhead and rowsBehind',
      value: 'both 0',
      accepted: 'at least one row of rotors together',
    })
  for (const [name, length] of Object.entries({ rotorGap, gapAhead, gapBehind, bodyGap, height, groundClearance }))
    requireWithin(method, name === 'height' ? 'rotorHeight' : name, length, 'm', -100, 100)
  requirePositive(method, 'boomDiameter', boomDiameter, 'm')
  if (boomOffset !== undefined) requireWithin(method, 'boomOffset', boomOffset, 'm', thinnest, farthest)
  checkOptions(`${method} cant`, cant, knownCant)
  const { body, bodyX } = readBody(method, options.body)
  checkOptions(`${method} wing`, options.wing, knownWing)
  if (options.tail !== undefined) checkOptions(`${method} tail`, options.tail, knownTail)
  if (!Array.isArray(propellers))
    throw new InvalidInput({ method, argument: 'propellers', value: 'no list', accepted: 'a list of { radius }' })
  propellers.forEach((one, index) => {
    checkOptions(`${method} propellers[${index}]`, one, knownPropeller)
  })
  const { lateral = 0, longitudinal = 0 } = cant
  return {
    ...{ radius, rowsAhead, rowsBehind, columns, rotorGap, gapAhead, gapBehind, height, boomDiameter, spin },
    ...{ groundClearance, propellers, body, bodyX, wing: options.wing, tail: options.tail },
    cant: { lateral, longitudinal },
    inner: boomOffset ?? body.width / 2 + bodyGap + radius,
  }
}

function readBody(method: string, body: WingedOptions['body']) {
  checkOptions(`${method} body`, body, knownBody)
  for (const key of ['length', 'width', 'height'] as const)
    requireWithin(method, `body.${key}`, body[key], 'm', thinnest, farthest / 2)
  const { noseAhead = 0.45 * body.length } = body
  requireWithin(method, 'body.noseAhead', noseAhead, 'm', -farthest / 2, farthest / 2)
  return { body, bodyX: noseAhead }
}

type Filled = ReturnType<typeof readWinged>

function requireWhole(method: string, argument: string, count: number, least: number): void {
  requireWithin(method, argument, count, '1', least, 16)
  if (!Number.isInteger(count))
    throw new InvalidInput({ method, argument, value: count, accepted: `a whole number from ${least} to 16` })
}

function placeWing(method: string, { wing, body }: Filled): Surface {
  const { area, aspectRatio, taper = 0.6, sweep = 0, dihedral = 0, thicknessRatio = 0.16, above } = wing
  const shape = silently(() => planform({ area, aspectRatio, taper, sweep }))
  if (above !== undefined) requireWithin(method, 'wing.above', above, 'm', -100, 100)
  return {
    x: shape.quarterChordBehind,
    y: 0,
    z: -(above ?? body.height / 2),
    span: shape.span,
    rootChord: shape.rootChord,
    tipChord: Math.max(shape.tipChord, thinnest),
    sweep: shape.sweepLeadingEdge,
    dihedral,
    thicknessRatio,
  }
}

/** Distances of the columns from the middle, from the inner one outwards. */
function columnsOf({ columns, inner, radius, rotorGap }: Filled): readonly number[] {
  return Array.from({ length: columns }, (_, index) => inner + index * (2 * radius + rotorGap))
}

/** Where the wing's edge lies at a distance from the middle; beyond the tip there is none. */
function edgeAt(wing: Surface, y: number, edge: 'leading' | 'trailing'): number {
  const share = Math.min(1, Math.abs(y) / (wing.span / 2))
  const leading = wing.x - share * (wing.span / 2) * Math.tan(wing.sweep)
  return edge === 'leading' ? leading : leading - wing.rootChord + share * (wing.rootChord - wing.tipChord)
}

/** Rows from the front: straight across, so the column where the wing reaches farthest decides. */
function rowsOf(filled: Filled, wing: Surface, columns: readonly number[]) {
  const { radius, rotorGap, gapAhead, gapBehind, rowsAhead, rowsBehind } = filled
  // Edges are straight on each side, so they reach farthest at the ends of a disk or in the middle.
  const sides = columns.flatMap((y) => (y > radius ? [y - radius, y + radius] : [0, y + radius]))
  const front = Math.max(...sides.map((y) => edgeAt(wing, y, 'leading'))) + gapAhead + radius
  const back = Math.min(...sides.map((y) => edgeAt(wing, y, 'trailing'))) - gapBehind - radius
  const pitch = 2 * radius + rotorGap
  return [
    ...Array.from({ length: rowsAhead }, (_, row) => ({ x: front + (rowsAhead - 1 - row) * pitch, ahead: true })),
    ...Array.from({ length: rowsBehind }, (_, row) => ({ x: back - row * pitch, ahead: false })),
  ]
}

/** A boom and its image, from the first hub or the wing to the last hub, the wing or the tail. */
function boomPair(
  { boomDiameter, radius }: Filled,
  rows: readonly { readonly x: number }[],
  wing: Surface,
  { y, z, to }: { readonly y: number; readonly z: number; readonly to: number | undefined },
): readonly LayoutBoom[] {
  const over = 0.1 * radius
  const front = Math.max(edgeAt(wing, y, 'leading'), (rows[0]?.x ?? 0) + over)
  const back = Math.min(edgeAt(wing, y, 'trailing'), (rows.at(-1)?.x ?? 0) - over, to ?? farthest)
  return [-y, y].map((side) => ({
    from: { x: front, y: side, z },
    to: { x: back, y: side, z },
    diameter: boomDiameter,
  }))
}

function placeTail(
  method: string,
  { tail, body, bodyX }: Filled,
  boomZ: number,
  columns: readonly number[],
): { readonly tail?: Surface; readonly fins: readonly Surface[]; readonly boomsTo?: number } {
  if (tail === undefined) return { fins: [] }
  const { area, arm, on = 'booms', aspectRatio = 4.5, finArea = 0.7 * area } = tail
  requireWithin(method, 'tail.area', area, 'm^2', thinnest, farthest)
  requireWithin(method, 'tail.arm', arm, 'm', thinnest, farthest / 2)
  requireWithin(method, 'tail.aspectRatio', aspectRatio, '1', 0.1, 100)
  requireNonNegative(method, 'tail.finArea', finArea, 'm^2')
  if (on !== 'booms' && on !== 'body')
    throw new InvalidInput({ method, argument: 'tail.on', value: String(on), accepted: '"booms" or "body"' })
  const inner = columns[0] as number
  const span = on === 'booms' ? 2 * inner : Math.sqrt(area * aspectRatio)
  const chord = area / span
  const z = on === 'booms' ? boomZ : 0
  const x = -arm + chord / 4
  const plain = { sweep: 0, dihedral: 0, thicknessRatio: 0.1 }
  const surface = { x, y: 0, z, span, rootChord: chord, tipChord: chord, ...plain }
  const sides = on === 'booms' ? [-inner, inner] : [0]
  const each = finArea / sides.length
  const tall = Math.sqrt(1.3 * each)
  const finX = on === 'booms' ? x : Math.max(x, bodyX - body.length + tall / 1.3)
  const fin = { x: finX, z, span: tall, rootChord: tall / 1.3, tipChord: tall / 1.3, ...plain }
  const fins = finArea === 0 ? [] : sides.map((y) => ({ ...fin, y, z: on === 'booms' ? z : -body.height / 4 }))
  return { tail: surface, fins, ...(on === 'booms' ? { boomsTo: x - chord } : {}) }
}
