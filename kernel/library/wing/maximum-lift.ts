import { requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { adviseOutside, requireChoice } from '../outside.js'
import type { Angle, Ratio } from '../quantity.js'

export interface FlapOptions {
  readonly kind: 'plain' | 'split' | 'slotted' | 'Fowler' | 'double-slotted'
  /** Wing area in front of and with the flaps, over wing area. */
  readonly flappedShare: Ratio
  /** Of the hinge line [rad], 0 when left out. */
  readonly sweepHinge?: Angle
  /** Chord with the flap out over chord with it in, 1 when left out; counts for Fowler and double-slotted flaps. */
  readonly chordGrowth?: Ratio
}

export interface MaximumLiftOptions {
  /** Largest lift coefficient of the section, at the wing's Reynolds number. */
  readonly sectionMaximum: Ratio
  /** [rad], 0 when left out. */
  readonly sweepQuarterChord?: Angle
  readonly flap?: FlapOptions
  /** On the mean chord at the stall; watched where given. */
  readonly reynolds?: Ratio
}

export interface MaximumLift {
  /** Flaps in. */
  readonly clean: Ratio
  /** What the flaps add, 0 without them. */
  readonly flapIncrement: Ratio
  readonly flapped: Ratio
}

const method = 'wing.maximumLift'
const known = new Set(['sectionMaximum', 'sweepQuarterChord', 'flap', 'reynolds'])
const knownFlap = new Set(['kind', 'flappedShare', 'sweepHinge', 'chordGrowth'])
/** Increment of the section's largest lift coefficient, and whether it grows with the chord. */
const increments: Readonly<Record<FlapOptions['kind'], { readonly increment: number; readonly grows: boolean }>> = {
  plain: { increment: 0.9, grows: false },
  split: { increment: 0.9, grows: false },
  slotted: { increment: 1.3, grows: false },
  Fowler: { increment: 1.3, grows: true },
  'double-slotted': { increment: 1.6, grows: true },
}
const kinds = Object.keys(increments) as FlapOptions['kind'][]

/**
 * Largest lift coefficient of a wing, flaps in and flaps out.
 *
 * @equation C_L,max = 0.9 c_l,max cos L; dC_L,max = 0.9 dc_l,max (S_flapped/S) cos L_hinge; dc_l,max = 0.9 plain or split, 1.3 slotted,
 * 1.3 c'/c Fowler, 1.6 c'/c double-slotted
 * @param options - `sectionMaximum` c_l,max; optional `sweepQuarterChord` L [rad] (0), `flap` { `kind`, `flappedShare`, `sweepHinge`
 * [rad] (0), `chordGrowth` c'/c (1) }, `reynolds`
 * @returns `clean`, `flapIncrement`, `flapped`
 * @throws InvalidInput for a section maximum outside 0.3 to 4, a sweep beyond 1 rad, a flapped share outside 0 to 1, a chord growth
 * outside 1 to 1.5, an unknown kind of flap, and an unknown option
 * @method Share of the section's maximum that a wing of moderate taper reaches when its first section stalls; flap increments for
 * landing settings.
 * @validity Within 15 %. Aspect ratio above 4, sweep below 0.6 rad (advisory). Booms, stopped rotors and their wakes lower it and are
 * not in it: treat the result as an assumption. Below a Reynolds number of a million section maxima fall quickly (advisory). Standard
 * roughness lowers c_l,max of usual sections to 1.2 to 1.35 (from memory).
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, section 12.4 and table 12.2 (from memory).
 * @example
 * const high = wing.maximumLift({ sectionMaximum: 1.6, flap: { kind: 'slotted', flappedShare: 0.5 } })
 * high.flapped // 2.025
 */
export function maximumLift(options: MaximumLiftOptions): MaximumLift {
  checkOptions(method, options, known)
  const { sectionMaximum, sweepQuarterChord = 0, flap, reynolds } = options
  requireWithin(method, 'sectionMaximum', sectionMaximum, '1', 0.3, 4)
  requireWithin(method, 'sweepQuarterChord', sweepQuarterChord, 'rad', -1, 1)
  adviseOutside(Math.abs(sweepQuarterChord), {
    code: 'MAXIMUM_LIFT_SWEEP',
    method,
    quantity: 'sweepQuarterChord',
    high: 0.6,
    because: 'beyond 0.6 rad a leading-edge vortex governs the stall',
  })
  if (reynolds !== undefined) {
    requirePositive(method, 'reynolds', reynolds, '1')
    adviseOutside(reynolds, {
      code: 'MAXIMUM_LIFT_REYNOLDS',
      method,
      quantity: 'reynolds',
      low: 1e6,
      because: 'below a million the section’s maximum falls quickly; make sure it was measured there',
    })
  }
  const clean = 0.9 * sectionMaximum * Math.cos(sweepQuarterChord)
  const flapIncrement = flap === undefined ? 0 : incrementOf(flap)
  return { clean, flapIncrement, flapped: clean + flapIncrement }
}

function incrementOf(flap: FlapOptions): number {
  if (typeof flap !== 'object' || flap === null)
    throw new InvalidInput({
      method,
      argument: 'flap',
      value: describeValue(flap),
      accepted: 'a record with kind and flappedShare',
    })
  checkOptions(`${method} flap`, flap, knownFlap)
  const { kind, flappedShare, sweepHinge = 0, chordGrowth = 1 } = flap
  requireChoice(method, 'flap.kind', kind, kinds)
  requireWithin(method, 'flap.flappedShare', flappedShare, '1', 0, 1)
  requireWithin(method, 'flap.sweepHinge', sweepHinge, 'rad', -1, 1)
  requireWithin(method, 'flap.chordGrowth', chordGrowth, '1', 1, 1.5)
  const { increment, grows } = increments[kind]
  return 0.9 * increment * (grows ? chordGrowth : 1) * flappedShare * Math.cos(sweepHinge)
}
