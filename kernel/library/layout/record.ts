import { requireText, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Length } from '../quantity.js'
import type {
  Cant,
  Layout,
  LayoutBody,
  LayoutBoom,
  LayoutPropeller,
  LayoutRotor,
  Place,
  RotorRole,
  Surface,
} from './parts.js'

/** A part as its author gives it: what is left out takes its plain value. */
type Loose<Part, Needed extends keyof Part> = Pick<Part, Needed> & Partial<Part>

export interface RecordOptions {
  /** `'lift plus cruise'` when left out. */
  readonly kind?: string
  /** 1 to 64; height, cant and role are 0, none and `'lift'` when left out. */
  readonly rotors: readonly (Omit<Loose<LayoutRotor, 'x' | 'y' | 'radius' | 'spin'>, 'cant'> & {
    readonly cant?: Partial<Cant>
  })[]
  readonly booms?: readonly LayoutBoom[]
  readonly wing?: Loose<Surface, 'x' | 'span' | 'rootChord' | 'tipChord'>
  readonly tail?: Loose<Surface, 'x' | 'span' | 'rootChord' | 'tipChord'>
  readonly fins?: readonly Loose<Surface, 'x' | 'span' | 'rootChord' | 'tipChord'>[]
  readonly body?: Loose<LayoutBody, 'x' | 'length' | 'width' | 'height'>
  readonly propellers?: readonly Loose<LayoutPropeller, 'x' | 'radius'>[]
  /** The ground below the origin when the aircraft stands on it [m]; 1.5 m when left out. */
  readonly ground?: Length
}

const method = 'layout.record'
const known = new Set(['kind', 'rotors', 'booms', 'wing', 'tail', 'fins', 'body', 'propellers', 'ground'])
const knownRotor = new Set(['x', 'y', 'z', 'radius', 'spin', 'cant', 'role'])
const knownCant = new Set(['lateral', 'longitudinal'])
const knownBoom = new Set(['from', 'to', 'diameter'])
const knownPlace = new Set(['x', 'y', 'z'])
const knownSurface = new Set(['x', 'y', 'z', 'span', 'rootChord', 'tipChord', 'sweep', 'dihedral', 'thicknessRatio'])
const knownBody = new Set(['x', 'z', 'length', 'width', 'height'])
const knownPropeller = new Set(['x', 'y', 'z', 'radius', 'spin'])
/** No aircraft reaches farther [m]; it also keeps every product of lengths within the range of numbers. */
export const farthest = 1000
/** No rotor, chord or boom is thinner [m]. */
export const thinnest = 1e-4

/**
 * A layout of one's own: rotors, booms, wing, tail, body and propellers, as one checked record.
 *
 * @equation spin s = +1 anticlockwise seen from above; thrust along (sin c_x, sin c_y cos c_x, -cos c_y cos c_x) for a longitudinal cant c_x and a lateral one c_y
 * @param options - `rotors`: list of `{ x, y, radius [m], spin (+1 or -1), z [m] (0), cant: { lateral, longitudinal } [rad] (0), role ('lift' or 'tilt') }`; optional `kind` in words, `booms`: list of
 * `{ from: { x, y, z }, to, diameter }`, `wing`, `tail` and `fins`: `{ x, y, z (leading edge of the root), span, rootChord, tipChord [m], sweep, dihedral [rad], thicknessRatio (0.12) }`, `body`: `{ x (nose), z, length, width,
 * height }`, `propellers`: list of `{ x, y, z, radius, spin }`, `ground` below the origin [m] (1.5)
 * @returns the layout, frozen: the same record that the builders give
 * @throws InvalidInput for no rotors or more than 64, a place farther than 1000 m, a size that is not positive, a spin that is neither 1 nor -1, a cant or sweep beyond 1.2 rad, an unknown role, and an
 * unknown option
 * @method x forward, y right, z down from an origin of one's own choice.
 * @validity Geometry only.
 * @source House convention, no publication; axes as in ISO 1151-1 (body axes, from memory).
 * @example
 * const plan = layout.record({ rotors: [{ x: 1.5 * u.m, y: 1.5 * u.m, radius: 1 * u.m, spin: 1 }, { x: -1.5 * u.m, y: -1.5 * u.m, radius: 1 * u.m, spin: -1 }] })
 * plan.rotors.length // 2
 */
export function record(options: RecordOptions): Layout {
  checkOptions(method, options, known)
  const { kind = 'lift plus cruise', booms = [], wing, tail, fins = [], body, propellers = [], ground = 1.5 } = options
  requireText(method, 'kind', kind)
  requireWithin(method, 'ground', ground, 'm', -farthest, farthest)
  return Object.freeze({
    kind,
    rotors: readList('rotors', options.rotors, 1, readRotor),
    booms: readList('booms', booms, 0, readBoom),
    ...(wing === undefined ? {} : { wing: readSurface('wing', wing) }),
    ...(tail === undefined ? {} : { tail: readSurface('tail', tail) }),
    fins: readList('fins', fins, 0, (at, fin) => readSurface(at, fin)),
    ...(body === undefined ? {} : { body: readBody(body) }),
    propellers: readList('propellers', propellers, 0, readPropeller),
    ground,
  })
}

/** Throws unless `value` is a layout. It is read through each time: a cell may have spread one and changed a part of it. */
export function requireLayout(caller: string, value: Layout): void {
  if (typeof value !== 'object' || value === null || !Array.isArray(value.rotors))
    throw new InvalidInput({
      method: caller,
      argument: 'layout',
      value: describeValue(value),
      accepted: 'a layout: what layout.liftPlusCruise, layout.multirotor, layout.record and their like return',
    })
  record(value)
}

function readList<Given, Part>(
  argument: string,
  list: readonly Given[],
  fewest: number,
  read: (at: string, part: Given) => Part,
): readonly Part[] {
  if (!Array.isArray(list) || list.length < fewest || list.length > 64)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(list),
      accepted: `a list of ${fewest} to 64 parts`,
    })
  return Object.freeze(list.map((part, index) => read(`${argument}[${index}]`, part)))
}

function readRotor(at: string, rotor: RecordOptions['rotors'][number]): LayoutRotor {
  checkOptions(`${method} ${at}`, rotor, knownRotor)
  const { radius, spin, cant = {}, role = 'lift' } = rotor
  checkOptions(`${method} ${at}.cant`, cant, knownCant)
  const { lateral = 0, longitudinal = 0 } = cant
  requireSize(`${at}.radius`, radius)
  requireAngle(`${at}.cant.lateral`, lateral)
  requireAngle(`${at}.cant.longitudinal`, longitudinal)
  return Object.freeze({
    ...readPlace(at, rotor),
    radius,
    spin: requireSpin(`${at}.spin`, spin),
    cant: Object.freeze({ lateral, longitudinal }),
    role: requireChoice<RotorRole>(method, `${at}.role`, role, ['lift', 'tilt']),
  })
}

function readBoom(at: string, boom: LayoutBoom): LayoutBoom {
  checkOptions(`${method} ${at}`, boom, knownBoom)
  checkOptions(`${method} ${at}.from`, boom.from, knownPlace)
  checkOptions(`${method} ${at}.to`, boom.to, knownPlace)
  requireSize(`${at}.diameter`, boom.diameter)
  return Object.freeze({
    from: Object.freeze(readPlace(`${at}.from`, boom.from)),
    to: Object.freeze(readPlace(`${at}.to`, boom.to)),
    diameter: boom.diameter,
  })
}

function readSurface(at: string, surface: Loose<Surface, 'x' | 'span' | 'rootChord' | 'tipChord'>): Surface {
  checkOptions(`${method} ${at}`, surface, knownSurface)
  const { span, rootChord, tipChord, sweep = 0, dihedral = 0, thicknessRatio = 0.12 } = surface
  requireSize(`${at}.span`, span)
  requireSize(`${at}.rootChord`, rootChord)
  requireSize(`${at}.tipChord`, tipChord)
  requireAngle(`${at}.sweep`, sweep)
  requireAngle(`${at}.dihedral`, dihedral)
  requireWithin(method, `${at}.thicknessRatio`, thicknessRatio, '1', 0, 0.5)
  return Object.freeze({ ...readPlace(at, surface), span, rootChord, tipChord, sweep, dihedral, thicknessRatio })
}

function readBody(body: Loose<LayoutBody, 'x' | 'length' | 'width' | 'height'>): LayoutBody {
  checkOptions(`${method} body`, body, knownBody)
  const { x, z = 0, length, width, height } = body
  requireWithin(method, 'body.x', x, 'm', -farthest, farthest)
  requireWithin(method, 'body.z', z, 'm', -farthest, farthest)
  requireSize('body.length', length)
  requireSize('body.width', width)
  requireSize('body.height', height)
  return Object.freeze({ x, z, length, width, height })
}

function readPropeller(at: string, propeller: Loose<LayoutPropeller, 'x' | 'radius'>): LayoutPropeller {
  checkOptions(`${method} ${at}`, propeller, knownPropeller)
  const { radius, spin = 1 } = propeller
  requireSize(`${at}.radius`, radius)
  return Object.freeze({ ...readPlace(at, propeller), radius, spin: requireSpin(`${at}.spin`, spin) })
}

function readPlace(at: string, { x, y = 0, z = 0 }: Partial<Place>): Place {
  for (const [axis, value] of [
    ['x', x],
    ['y', y],
    ['z', z],
  ] as const)
    requireWithin(method, `${at}.${axis}`, value as number, 'm', -farthest, farthest)
  return { x: x as number, y, z }
}

function requireSize(argument: string, value: number): void {
  requireWithin(method, argument, value, 'm', thinnest, farthest)
}

function requireAngle(argument: string, value: number): void {
  requireWithin(method, argument, value, 'rad', -1.2, 1.2)
}

function requireSpin(argument: string, spin: number): number {
  if (spin === 1 || spin === -1) return spin
  throw new InvalidInput({
    method,
    argument,
    value: describeValue(spin),
    accepted: '1 (anticlockwise seen from above; of a propeller, from ahead) or -1',
  })
}
