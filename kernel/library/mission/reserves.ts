import type { Time } from '../quantity.js'

export interface ReserveRule {
  /** Final reserve [s]. */
  readonly time: Time
  readonly rule: string
  readonly applies: string
}

/**
 * Final reserves that operating rules print, as times for a `reserve` segment.
 *
 * @equation printed numbers
 * @returns `aeroplaneVisualDay` (30 min), `aeroplaneVisualNight` (45 min), `rotorcraftVisual` (20 min), `helicopterCommuter` (20 min), `aeroplaneInstrument` (45 min), `helicopterInstrument` (30 min), each with `time` [s], `rule`,
 * `applies`
 * @throws nothing
 * @method A table.
 * @validity Rules of one state, at normal cruising speed, as read in reprints; for powered lift 14 CFR Part 194 decides which of them hold, and elsewhere other rules do. The rules in force and
 * whoever is licensed to apply them decide; this table does not.
 * @source 14 CFR 91.151, 91.167 and 135.209 (read in reprints).
 * @example
 * mission.reserves.rotorcraftVisual.time / u.min // 20
 */
export const reserves = Object.freeze({
  aeroplaneVisualDay: rule(1800, '14 CFR 91.151(a)(1)', 'aeroplanes, visual flight rules, by day'),
  aeroplaneVisualNight: rule(2700, '14 CFR 91.151(a)(2)', 'aeroplanes, visual flight rules, by night'),
  rotorcraftVisual: rule(1200, '14 CFR 91.151(b)', 'rotorcraft, visual flight rules'),
  helicopterCommuter: rule(1200, '14 CFR 135.209(b)', 'helicopters, commuter and on-demand, visual flight rules'),
  aeroplaneInstrument: rule(2700, '14 CFR 91.167(a)(3)', 'aeroplanes, instrument flight rules, after the alternate'),
  helicopterInstrument: rule(1800, '14 CFR 91.167(a)(3)', 'helicopters, instrument flight rules, after the alternate'),
})

function rule(time: Time, name: string, applies: string): ReserveRule {
  return Object.freeze({ time, rule: name, applies })
}
