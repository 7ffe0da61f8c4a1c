import { requireSegments } from './check-segments.js'
import type { Segment } from './segment.js'

/**
 * The segments of a mission in their order; checked and frozen, so that several aircraft can fly them.
 *
 * @equation nothing is computed
 * @param list - records with a `kind`: `'hover'` (`time` [s]), `'vertical climb'` (`height` [m], `rate` [m/s]), `'transition'` and `'return transition'` (`acceleration` [m/s^2], `speed` [m/s],
 * `stoppedRotors`), `'climb'` and `'descent'` (`to` [m], `rate` [m/s]), `'cruise'`, `'loiter'`, `'divert'`, `'reserve'` (`time` [s] or `distance` over ground [m], `altitude` [m]), `'landing'` (`time`, `height`,
 * `rate`, `stoppedRotors`), `'balked landing'` (`time`, `height`, `rate`); each may have a `name` and a `massChange` [kg] at its start, each wing-borne one a `tailwind` [m/s] and a `speed`:
 * [m/s], `'best range'`, `'best endurance'` or `'power limit'`
 * @returns the list, frozen
 * @throws InvalidInput for an empty list, a kind that is none, a value outside its range, a level segment with neither or both of time and distance, and an unknown option
 * @method A cruise without time and distance is given what `distance` of `mission.fly` leaves.
 * @validity Up to 200 segments.
 * @source House convention, no publication.
 * @example
 * const sector = mission.segments([
 *   { kind: 'hover', time: 60 * u.s }, { kind: 'transition' }, { kind: 'cruise', distance: 60 * u.km },
 *   { kind: 'reserve', time: 20 * u.min }, { kind: 'return transition' }, { kind: 'landing', time: 30 * u.s },
 * ])
 * sector.length // 6
 */
export function segments(list: readonly Segment[]): readonly Segment[] {
  const checked = requireSegments('mission.segments', list)
  return Object.freeze(checked.map((segment) => Object.freeze({ ...segment })))
}
