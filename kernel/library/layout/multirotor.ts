import { requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Length, Ratio } from '../quantity.js'
import type { Layout, LayoutBoom, LayoutRotor } from './parts.js'
import { record, thinnest } from './record.js'
import { listedSpins } from './spins.js'

export interface MultirotorOptions {
  /** [m] */
  readonly rotorRadius: Length
  /** `'ring'` when left out. */
  readonly plan?: 'ring' | 'grid'
  /** Rotors of a ring. */
  readonly count?: Ratio
  /** Of a grid, from front to back. */
  readonly rows?: Ratio
  /** Of a grid, from left to right. */
  readonly columns?: Ratio
  /** Between the disks of neighbours [m]; a tenth of the radius when left out. */
  readonly rotorGap?: Length
  /** Of the hubs above the arms [m]; 0.3 radii when left out. */
  readonly rotorHeight?: Length
  /** `'alternating'` when left out; or a list of +1 and -1, one per rotor. */
  readonly spin?: 'alternating' | readonly Ratio[]
  /** In the middle; none when left out. */
  readonly body?: { readonly length: Length; readonly width: Length; readonly height: Length }
  /** Of the arms' middle lines above the ground [m]; 1.5 m when left out. */
  readonly groundClearance?: Length
}

const method = 'layout.multirotor'
const known = new Set([
  'rotorRadius',
  'plan',
  'count',
  'rows',
  'columns',
  'rotorGap',
  'rotorHeight',
  'spin',
  'body',
  'groundClearance',
])
const knownBody = new Set(['length', 'width', 'height'])

/**
 * A multirotor: rotors in a ring around the middle, or in a grid of rows and columns.
 *
 * @equation ring: hubs at radius (R + gap/2)/sin(pi/n), the first pair astride the nose; grid: spacing 2 R + gap
 * @param options - `rotorRadius` R [m]; `plan`: `'ring'` (when left out) with `count` n of at least 3, or `'grid'` with `rows` and `columns`; optional `rotorGap` (0.1 R), `rotorHeight` above the arms (0.3 R) [m], `spin`
 * ('alternating' or a list), `body`: `{ length, width, height }` [m] in the middle, `groundClearance` of the arms (1.5 m)
 * @returns a layout with its origin in the middle of the rotors; a ring is numbered clockwise from the right of the nose, a grid row by row from the front left
 * @throws InvalidInput for a ring of fewer than 3, more than 64 rotors, what belongs to the other plan, sizes below 0.1 mm, and an unknown option
 * @method Alternating spins leave a net torque where their number is odd; `layout.checks` says so.
 * @validity Geometry. To fly it: `mission.multirotor` with the disk area of `layout.pad`.
 * @source Geometry: equal circles around a centre touch where the hubs' circle has the radius R/sin(pi/n).
 * @example
 * const six = layout.multirotor({ count: 6, rotorRadius: 1 * u.m, rotorGap: 0 * u.m })
 * Math.hypot(six.rotors[0].x, six.rotors[0].y) // 2.000
 */
export function multirotor(options: MultirotorOptions): Layout {
  checkOptions(method, options, known)
  const { rotorRadius: radius, plan = 'ring', spin = 'alternating', body, groundClearance = 1.5 } = options
  requireWithin(method, 'rotorRadius', radius, 'm', thinnest, 100)
  const { rotorGap = 0.1 * radius, rotorHeight = 0.3 * radius } = options
  requireWithin(method, 'rotorGap', rotorGap, 'm', -2 * radius, 100)
  requireWithin(method, 'rotorHeight', rotorHeight, 'm', -100, 100)
  requireWithin(method, 'groundClearance', groundClearance, 'm', 0, 100)
  requireChoice(method, 'plan', plan, ['ring', 'grid'])
  const hubs = plan === 'ring' ? ringOf(options, radius, rotorGap) : gridOf(options, radius, rotorGap)
  const spins =
    spin === 'alternating' ? hubs.map((hub) => hub.spin) : listedSpins(method, spin, hubs.length, 'in order')
  const rotors = hubs.map(
    ({ x, y }, index): LayoutRotor => ({
      ...{ x, y, z: -rotorHeight, radius, spin: spins[index] as number },
      ...{ cant: { lateral: 0, longitudinal: 0 }, role: 'lift' },
    }),
  )
  if (body !== undefined) checkOptions(`${method} body`, body, knownBody)
  return record({
    kind: 'multirotor',
    rotors,
    booms: plan === 'ring' ? armsOf(hubs, radius) : beamsOf(hubs, radius),
    ...(body === undefined ? {} : { body: { x: body.length / 2, z: body.height / 2, ...body } }),
    ground: groundClearance,
  })
}

interface Hub {
  readonly x: number
  readonly y: number
  readonly spin: number
}

function ringOf({ count, rows, columns }: MultirotorOptions, radius: number, gap: number): readonly Hub[] {
  refuseOther('a ring', { rows, columns })
  const n = requireWhole('count', count, 3, 64)
  const around = (radius + gap / 2) / Math.sin(Math.PI / n)
  return Array.from({ length: n }, (_, index) => {
    const angle = ((2 * index + 1) * Math.PI) / n
    return { x: around * Math.cos(angle), y: around * Math.sin(angle), spin: index % 2 === 0 ? 1 : -1 }
  })
}

function gridOf({ count, rows, columns }: MultirotorOptions, radius: number, gap: number): readonly Hub[] {
  refuseOther('a grid', { count })
  const deep = requireWhole('rows', rows, 1, 64)
  const wide = requireWhole('columns', columns, 1, 64)
  const pitch = 2 * radius + gap
  return Array.from({ length: deep * wide }, (_, index) => {
    const row = Math.floor(index / wide)
    const column = index % wide
    return {
      x: ((deep - 1) / 2 - row) * pitch,
      y: (column - (wide - 1) / 2) * pitch,
      spin: (row + column) % 2 === 0 ? 1 : -1,
    }
  })
}

/** One arm from the middle to each hub of a ring. */
function armsOf(hubs: readonly Hub[], radius: number): readonly LayoutBoom[] {
  return hubs.map(({ x, y }) => ({ from: { x: 0, y: 0, z: 0 }, to: { x, y, z: 0 }, diameter: 0.12 * radius }))
}

/** One beam along each column of a grid. */
function beamsOf(hubs: readonly Hub[], radius: number): readonly LayoutBoom[] {
  const columns = [...new Set(hubs.map((hub) => hub.y))]
  const reach = Math.max(...hubs.map((hub) => hub.x)) + 0.1 * radius
  return columns.map((y) => ({ from: { x: reach, y, z: 0 }, to: { x: -reach, y, z: 0 }, diameter: 0.12 * radius }))
}

function requireWhole(argument: string, value: number | undefined, least: number, most: number): number {
  if (value !== undefined && Number.isInteger(value) && value >= least && value <= most) return value
  throw new InvalidInput({
    method,
    argument,
    value: value ?? 'missing',
    accepted: `a whole number from ${least} to ${most}`,
  })
}

function refuseOther(plan: string, others: Readonly<Record<string, unknown>>): void {
  for (const [name, value] of Object.entries(others))
    if (value !== undefined)
      throw new InvalidInput({
        method,
        argument: name,
        value: 'given',
        accepted: `left out for ${plan}`,
      })
}
