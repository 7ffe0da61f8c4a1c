/** What an author gives for an aircraft with a wing: lift plus cruise, vectored thrust and the mixed kind take the same. */
import { requirePositive, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Angle, Area, Length, Ratio } from '../quantity.js'
import type { Cant, LayoutPropeller } from './parts.js'
import { farthest, thinnest } from './record.js'
import type { SpinPattern } from './spins.js'

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

/** The options checked, with what was left out filled in. */
export function readWinged(method: string, options: WingedOptions) {
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

export type FilledWinged = ReturnType<typeof readWinged>

function requireWhole(method: string, argument: string, count: number, least: number): void {
  requireWithin(method, argument, count, '1', least, 16)
  if (!Number.isInteger(count))
    throw new InvalidInput({ method, argument, value: count, accepted: `a whole number from ${least} to 16` })
}
