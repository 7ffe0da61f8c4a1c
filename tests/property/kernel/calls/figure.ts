/** Calls that draw, most of them what another call has answered; and what registers evidence. */
import { preloaded } from '../../../../kernel/library/index.js'
import { type AnyCall, type V, v } from '../any-input.js'
import { calls as authorityCalls } from './authority.js'
import { calls as limitCalls } from './limits.js'
import { calls as missionCalls } from './mission.js'
import { calls as rotorCalls } from './rotor.js'
import { calls as systemCalls } from './systems.js'
import { calls as wingAndDragCalls } from './wing-drag.js'

const { air, assumption, figure, requirement, result, rotor, table } = preloaded

const drawable = [...authorityCalls, ...limitCalls, ...missionCalls, ...rotorCalls, ...systemCalls, ...wingAndDragCalls]

/** A figure of what the named call answers. */
function drawn(name: string, from: string, draw: (answer: never) => unknown, inAThousand = 1000): AnyCall {
  const found = drawable.find(([title]) => title === from)
  if (found === undefined) throw new RangeError(`There is no call "${from}" for ${name} to draw.`)
  const [, count, call] = found
  return [name, count, (x) => draw(call(x) as never), inAThousand]
}

const list = (x: V) => [v(x, 0), v(x, 1), v(x, 2)]

const ofNumbers: readonly AnyCall[] = [
  [
    'figure.bars',
    4,
    (x) => figure.bars({ caption: 'c', names: ['a', 'b', 'c'], values: list(x), start: [0, v(x, 3), 0] }),
  ],
  [
    'figure.line',
    9,
    (x) =>
      figure.line({
        caption: 'c',
        x: { label: 'x', values: list(x), unit: 'm', from: v(x, 3) - 1, to: v(x, 4) },
        y: { label: 'y', unit: 'kW' },
        series: [{ label: 's', values: [v(x, 5), v(x, 6), v(x, 7)] }],
        rules: [{ axis: 'y', at: v(x, 8) }],
      }),
  ],
  ['figure.dragBreakdown', 3, (x) => figure.dragBreakdown({ dragAreas: { a: v(x, 0), b: v(x, 1), c: v(x, 2) } })],
  ['figure.massBreakdown', 3, (x) => figure.massBreakdown({ masses: { a: v(x, 0), b: v(x, 1), c: v(x, 2) } })],
  [
    'figure.dragPolar',
    9,
    (x) =>
      figure.dragPolar({
        polar: { zeroLiftDrag: v(x, 0), inducedFactor: v(x, 1) },
        points: { lift: [v(x, 2), v(x, 3)], drag: [v(x, 4), v(x, 5)] },
        upTo: v(x, 6),
      }),
  ],
  [
    'figure.rotorPolar',
    3,
    (x) => {
      const turned = { ...air.standard(0), radius: v(x, 0), chord: v(x, 1), blades: 2, tipSpeed: 100, elements: 6 }
      const blades = { ...turned, section: { liftSlope: 5.7, minimumDrag: 0.01 } }
      const loads = [0, 0.1].map((more) => rotor.bladeElement({ ...blades, collective: more + v(x, 2) / 10 }))
      return figure.rotorPolar({ rotors: [{ label: 'a', loads }] })
    },
  ],
]

const ofAnswers: readonly AnyCall[] = [
  drawn('figure.authorityMap', 'authority.attainable', (map) => figure.authorityMap({ maps: [map] }), 100),
  drawn('figure.peakPerLoss', 'authority.losses', (losses) => figure.peakPerLoss({ losses }), 100),
  drawn('figure.countTrade', 'authority.countTrade', (rows) => figure.countTrade({ rows }), 50),
  drawn('figure.massAgainstLoss', 'authority.countTrade', (rows) => figure.massAgainstLoss({ rows }), 50),
  drawn('figure.constraintDiagram', 'sizing.constraintDiagram', (diagram) => figure.constraintDiagram({ diagram })),
  drawn('figure.diskLoadingWindow', 'sizing.diskLoadingWindow', (window) => figure.diskLoadingWindow({ window })),
  drawn('figure.payloadRange', 'sizing.payloadRange', (reach) => figure.payloadRange({ aircraft: { a: reach } })),
  drawn('figure.hotAndHigh', 'limits.hotAndHigh', (grid) => figure.hotAndHigh({ grid })),
  drawn('figure.whatSizesWhat', 'limits.whatSizesWhat', (rows) => figure.whatSizesWhat({ rows })),
  drawn('figure.routeReach', 'limits.routeReach', (route) => figure.routeReach({ route })),
  drawn('figure.day', 'limits.day', (day) => figure.day({ day }), 200),
  drawn('figure.conversionCorridor', 'mission.corridor', (corridor) => figure.conversionCorridor({ corridor }), 200),
  drawn('figure.powerAgainstSpeed', 'mission.powerAgainstSpeed', (curve) => figure.powerAgainstSpeed({ curve }), 200),
  drawn('figure.missionProfile', 'mission.fly in fine steps', (flown) => figure.missionProfile({ flown }), 100),
  drawn('figure.efficiencyMap', 'propeller.efficiencyMap', (map) => figure.efficiencyMap({ map }), 100),
  drawn('figure.discharge', 'battery.run', (run) => figure.discharge({ runs: { a: run } })),
  drawn('figure.ragone', 'battery.ragone', (curve) => figure.ragone({ curves: { a: curve } })),
  drawn('figure.packPower', 'battery.availablePower', (curve) => figure.packPower({ curves: { a: curve } })),
  drawn('figure.massSpread', 'mass.spread of wings', (spread) => figure.massSpread({ spreads: { a: spread } })),
  drawn('figure.stowageComparison', 'drag.compareStowage', (comparison) => figure.stowageComparison({ comparison })),
]

const evidence: readonly AnyCall[] = [
  ['assumption', 3, (x) => assumption('a', v(x, 0), { range: [v(x, 1), v(x, 1) + v(x, 2)] })],
  ['requirement', 3, (x) => requirement('a', { actual: v(x, 0), within: [v(x, 1), v(x, 1) + v(x, 2)] })],
  ['result', 1, (x) => result('a', v(x, 0), { unit: 'kg' })],
  // A table gives back the very rows it was given, whatever is in them.
  ['table', 2, (x) => table('a', [{ b: v(x, 0) }, { b: v(x, 1) }], { units: { b: 'kg' } }).length],
]

export const calls: readonly AnyCall[] = [...ofNumbers, ...ofAnswers, ...evidence]
