/** How the kernel answers the published cases of missions and reserves: one entry per kind of case. */
import { preloaded } from '../../kernel/library/index.js'
import type { Case } from './cases.js'
import type { Methods } from './check-cases.js'
import { at } from './system-methods.js'

const { mission, u } = preloaded
type Inputs = Case['inputs']

/** An aircraft of a given lift-to-drag ratio at its best, at a lift coefficient of 1; no floor is in the way. */
function glider(i: Inputs, liftCoefficient = 1) {
  const ratio = at(i, 'lift_to_drag')
  return mission.aircraft({
    mass: at(i, 'mass_kg'),
    wingArea: 14,
    maximumLift: 10,
    polar: { zeroLiftDrag: liftCoefficient / (2 * ratio), inducedFactor: 1 / (2 * ratio * liftCoefficient) },
    lift: { diskArea: 40, figureOfMerit: 0.7, efficiency: 0.9 },
    cruise: { propellerEfficiency: at(i, 'eta_total'), efficiency: 1 },
  })
}

/** A rule is text in the case file, where all else is numbers. */
function reserveOf(i: Readonly<Record<string, unknown>>): number {
  const found = Object.values(mission.reserves).find(
    (one) => one.rule === i.rule && one.applies.includes(whoOf(i.rule)),
  )
  if (found === undefined) throw new Error(`no reserve by the rule ${String(i.rule)}`)
  return found.time
}

/** One paragraph prints two times: 45 minutes for aeroplanes, 30 for helicopters; the case is the former. */
const whoOf = (rule: unknown) => (rule === '14 CFR 91.167(a)(3)' ? 'aeroplanes' : '')

export const methods: Methods = [
  [
    /^energy-per-km-01$/,
    (i) => {
      const { energyPerDistance = 0 } = mission.speeds({ aircraft: glider(i) }).bestRange
      return energyPerDistance / (u.Wh / u.km)
    },
  ],
  [
    /^mission-01$/,
    (i) => {
      const hops = Array.from({ length: at(i, 'hops') }, () => ({
        kind: 'cruise' as const,
        distance: at(i, 'hop_nmi') * u.nmi,
        tailwind: -10 * u.kt,
      }))
      const aircraft = glider({ mass_kg: 2000, lift_to_drag: 10, eta_total: 0.8 })
      return mission.demand({ aircraft, segments: hops }).distance
    },
  ],
  [
    /^mission-02$/,
    (i) => {
      const speed = at(i, 'speed_m_s')
      const liftCoefficient = (at(i, 'mass_kg') * u.g0) / (0.5 * 1.225 * speed ** 2 * 14)
      const segments = [{ kind: 'reserve' as const, time: at(i, 'reserve_s'), speed }]
      // At the lift coefficient of that speed in standard air at sea level the ratio is the one given.
      return mission.demand({ aircraft: glider(i, liftCoefficient), segments }).energy
    },
  ],
  [/^reserve-/, reserveOf],
  [
    /^download-01$/,
    (i) => {
      const base = glider({ mass_kg: 2000, lift_to_drag: 10, eta_total: 0.8 })
      const aircraft = { ...base, lift: { ...base.lift, download: at(i, 'download_fraction_of_thrust') } }
      return mission.trim({ aircraft, speed: 0 }).rotorThrust / (base.mass * u.g0)
    },
  ],
  [/^sv-01$/, (i) => (at(i, 'Wh_per_passenger_mile') * (u.Wh / u.mi)) / (u.Wh / u.km)],
]
