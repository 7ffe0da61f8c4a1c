/** How rotors, booms, wing, tail and body are placed on aircraft with a wing; lift plus cruise, vectored thrust and the mixed kind share it. */
import { requireNonNegative, requireWithin } from '../check.js'
import { InvalidInput } from '../errors.js'
import { silently } from '../recorder.js'
import { planform } from '../wing/planform.js'
import type { Layout, LayoutBoom, LayoutRotor, RotorRole, Surface } from './parts.js'
import { farthest, record, thinnest } from './record.js'
import { spinsOf } from './spins.js'
import { type FilledWinged, readWinged, type WingedOptions } from './winged-options.js'

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

function placeWing(method: string, { wing, body }: FilledWinged): Surface {
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
function columnsOf({ columns, inner, radius, rotorGap }: FilledWinged): readonly number[] {
  return Array.from({ length: columns }, (_, index) => inner + index * (2 * radius + rotorGap))
}

/** Where the wing's edge lies at a distance from the middle; beyond the tip there is none. */
function edgeAt(wing: Surface, y: number, edge: 'leading' | 'trailing'): number {
  const share = Math.min(1, Math.abs(y) / (wing.span / 2))
  const leading = wing.x - share * (wing.span / 2) * Math.tan(wing.sweep)
  return edge === 'leading' ? leading : leading - wing.rootChord + share * (wing.rootChord - wing.tipChord)
}

/** Rows from the front: straight across, so the column where the wing reaches farthest decides. */
function rowsOf(filled: FilledWinged, wing: Surface, columns: readonly number[]) {
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
  { boomDiameter, radius }: FilledWinged,
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
  { tail, body, bodyX }: FilledWinged,
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
