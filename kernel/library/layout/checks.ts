import { requireNonNegative, requirePositive } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Length, Ratio } from '../quantity.js'
import { advise, isListening, silently } from '../recorder.js'
import { overlap } from '../rotor/overlap.js'
import { type BlockedArea, blockedArea } from './blocked-area.js'
import { type CheckedPair, type Clear, type LayoutCheck, pairsToCheck } from './check-pairs.js'
import { type Pad, pad } from './pad.js'
import type { Layout, Place } from './parts.js'
import { requireLayout } from './record.js'

export interface ChecksOptions {
  /** Greatest diameter of the circle around the turning rotors [m]. */
  readonly footprint?: Length
  /** Greatest diameter of the circle around the whole aircraft [m]. */
  readonly overall?: Length
  /** What disks must keep clear of [m]; shares of the rotor's radius when left out. */
  readonly wanted?: Partial<Record<Clear, Length>>
}

export interface LayoutFinding {
  readonly check: LayoutCheck | 'footprint' | 'overall'
  /** Who is concerned: `rotor 3 and the wing`. */
  readonly between: string
  /** Signed: below 0 they cut [m]. */
  readonly clearance: Length
  /** [m] */
  readonly required: Length
  /** `clearance` - `required` [m]. */
  readonly margin: Length
  readonly met: boolean
  /** Where they are nearest; the circles have no such place. */
  readonly at?: Place
  /** In words. */
  readonly text: string
}

export interface Checks {
  readonly met: boolean
  /** Everything that is not met, and the tightest of each check; least margin first. */
  readonly findings: readonly LayoutFinding[]
  /** Sum of the spins: 0 where reaction torques cancel at equal thrust. */
  readonly netSpin: Ratio
  /** Induced power over that of rotors apart, where disks overlap in plan; 1 where none do. For `rotor.hover`. */
  readonly interference: Ratio
  /** Under the disks; for `rotor.download`. */
  readonly blocked: BlockedArea
  readonly pad: Pad
  /** What else a reader should know, in words. */
  readonly remarks: readonly string[]
}

const method = 'layout.checks'
const known = new Set(['footprint', 'overall', 'wanted'])
/** Shares of the rotor's radius: house values. */
const usual: Readonly<Record<Clear, number>> = {
  rotor: 0.05,
  boom: 0.1,
  wing: 0.1,
  tail: 0.1,
  fin: 0.1,
  body: 0.1,
  propeller: 0.1,
  ground: 0.25,
}
const knownWanted = new Set(Object.keys(usual))
/** Rounding of lengths of metres. */
const rounding = 1e-9

/**
 * Whether a layout fits together: disks clear of each other, booms, wing, tail, fins, body, propellers and ground, hubs on their booms, booms on the wing, and the circle around the rotors within the footprint.
 *
 * @equation clearance = min over the disk of the signed distance to the part; of two disks that cut, spacing - R_1 - R_2 in plan; margin = clearance - wanted
 * @param layout - what a builder of layouts returns
 * @param options - optional `footprint`: limit of the circle around the turning rotors [m], `overall`: of the circle around the whole aircraft [m], `wanted`: record of the clearances asked for [m] from `rotor` (0.05 R), `boom`,
 * `wing`, `tail`, `fin`, `body`, `propeller` (0.1 R) and `ground` (0.25 R)
 * @returns `met`, `findings`: list of `{ check, between, clearance, required, margin [m], met, at: { x, y, z } where they are nearest, text }`, `netSpin`, `interference` of disks that overlap in plan, `blocked` areas, `pad`, `remarks`
 * @throws InvalidInput for what is no layout, a limit that is not positive, a negative clearance, and an unknown option
 * @method Distances are convex and so are disks: an exact search. Wing and tail are flat plates with the thickness of their root, booms round bars, the body a box with rounded edges (on the safe side of a
 * streamlined one). Rotors that tilt are looked at in cruise as well, turned about the boom under the hub. Below 0 the clearance is the depth to which the disk reaches into the part.
 * @validity Rigid blades: the clearances wanted must leave room for bending and flapping. Each one that is not met carries an advisory.
 * @source Geometry; the clearances wanted are house values.
 * @example
 * const plan = layout.multirotor({ count: 6, rotorRadius: 1 * u.m })
 * layout.checks(plan, { footprint: 7 * u.m }).met // true
 */
export function checks(layout: Layout, options: ChecksOptions = {}): Checks {
  requireLayout(method, layout)
  const limits = readLimits(options)
  const ground = pad(layout)
  const blocked = blockedArea(layout)
  const wanted = (clear: Clear, radius: number) => limits.wanted[clear] ?? usual[clear] * radius
  const findings = [...pairsToCheck(layout, wanted).map(asFinding), ...circles(limits, ground)]
  findings.sort((a, b) => a.margin - b.margin)
  if (isListening())
    for (const finding of findings)
      if (!finding.met)
        advise({
          code: 'LAYOUT',
          method,
          quantity: finding.check,
          value: finding.clearance,
          range: [finding.required, null],
          message: finding.text,
        })
  const netSpin = layout.rotors.reduce((sum, { spin }) => sum + spin, 0)
  const interference = interferenceOf(layout)
  return {
    met: findings.every((finding) => finding.met),
    findings,
    netSpin,
    interference: interference ?? 1,
    blocked,
    pad: ground,
    remarks: remarksOf(netSpin, interference, blocked),
  }
}

function readLimits(options: ChecksOptions) {
  checkOptions(method, options, known)
  const { footprint, overall, wanted = {} } = options
  if (footprint !== undefined) requirePositive(method, 'footprint', footprint, 'm')
  if (overall !== undefined) requirePositive(method, 'overall', overall, 'm')
  checkOptions(`${method} wanted`, wanted, knownWanted)
  for (const [clear, length] of Object.entries(wanted)) requireNonNegative(method, `wanted.${clear}`, length, 'm')
  return { footprint, overall, wanted }
}

function asFinding(pair: CheckedPair): LayoutFinding {
  const { check, who, what, clearance, required, at } = pair
  const margin = clearance - required
  const met = margin >= -rounding
  const between = what === '' ? who : `${who} and ${what}`
  return { check, between, clearance, required, margin, met, at, text: sentence(pair, met) }
}

function sentence({ check, who, what, clearance, required }: CheckedPair, met: boolean): string {
  const from = who.charAt(0).toUpperCase() + who.slice(1)
  const length = metres(Math.abs(clearance))
  if (check === 'hub on boom' || check === 'boom on wing')
    return met ? `${from} sits ${length} within the end of ${what}.` : `${from} sits ${length} off ${what}.`
  const wanted = met ? `${metres(required)} is enough` : `it must keep ${metres(required)} clear`
  if (clearance >= 0) return `${from} passes ${what} at ${length}; ${wanted}.`
  const how = check === 'rotor to rotor' ? `overlaps ${what} by ${length}` : `reaches ${length} into ${what}`
  return `${from} ${how}; ${wanted}.`
}

function circles(limits: ReturnType<typeof readLimits>, { diameter, overall }: Pad): LayoutFinding[] {
  const finding = (check: 'footprint' | 'overall', size: number, limit: number | undefined, around: string) => {
    if (limit === undefined) return []
    const margin = limit - size
    const met = margin >= -rounding
    const text = `The circle around ${around} is ${metres(size)} across; ${metres(limit)} ${met ? 'is allowed' : 'is all that is allowed'}.`
    return [{ check, between: around, clearance: margin, required: 0, margin, met, text }]
  }
  return [
    ...finding('footprint', diameter, limits.footprint, 'the turning rotors'),
    ...finding('overall', overall, limits.overall, 'the whole aircraft'),
  ]
}

/** Undefined where disks overlap that are not of one size: the pair formula is for equal ones. */
function interferenceOf({ rotors }: Layout): number | undefined {
  const cutting = rotors.some((one, i) =>
    rotors
      .slice(0, i)
      .some((other) => Math.hypot(one.x - other.x, one.y - other.y) < one.radius + other.radius - rounding),
  )
  if (!cutting) return 1
  const radius = rotors[0]?.radius as number
  if (rotors.some((one) => Math.abs(one.radius - radius) > rounding)) return undefined
  return silently(() => overlap({ radius, positions: rotors.map(({ x, y }) => [x, y] as const) })).interference
}

function remarksOf(netSpin: number, interference: number | undefined, blocked: BlockedArea): readonly string[] {
  const remarks: string[] = []
  if (netSpin !== 0)
    remarks.push(
      `Spins do not cancel: ${Math.abs(netSpin)} more ${Math.abs(netSpin) === 1 ? 'rotor turns' : 'rotors turn'} ${netSpin > 0 ? 'anticlockwise' : 'clockwise'}.`,
    )
  if (interference === undefined)
    remarks.push('Disks of different sizes overlap: what that costs in hover is not counted.')
  else if (interference > 1)
    remarks.push(`Overlapping disks take ${round(100 * (interference - 1))} % more induced power.`)
  const share = blocked.total / blocked.diskArea
  if (share > 0.005) remarks.push(`Wing, tail, booms and body block ${round(100 * share)} % of the disks' area.`)
  return remarks
}

function metres(value: number): string {
  return `${round(value)} m`
}

/** To a millimetre, or a thousandth. */
function round(value: number): number {
  return Number(value.toFixed(3))
}
