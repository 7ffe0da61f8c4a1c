import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'

const { drag, sizing, u } = preloaded
const polar = drag.polar({ zeroLiftDrag: 0.035, aspectRatio: 10, spanEfficiency: 0.8 })
const [density, propellerEfficiency] = [1.1, 0.8]
const cruise = { kind: 'cruise', density, speed: 60 } as const
const stall = { kind: 'stall', name: 'conversion', density, speed: 42, maximumLift: 1.5, margin: 1.2 } as const
const diagramOf = (constraints: readonly object[], more: object = {}) =>
  sizing.constraintDiagram({ polar, propellerEfficiency, constraints, ...more } as never)

/** Raymer's and Anderson's form of thrust to weight: q C_D0/(W/S) + n^2 K (W/S)/q, plus the climb. */
function byHand(loading: number, speed: number, climb = 0, loadFactor = 1): number {
  const q = 0.5 * density * speed ** 2
  const thrustToWeight =
    (q * polar.zeroLiftDrag) / loading + (loadFactor ** 2 * polar.inducedFactor * loading) / q + climb / speed
  return (u.g0 * thrustToWeight * speed) / propellerEfficiency
}

describe('sizing.constraintDiagram(options)', () => {
  it('draws cruise, climb and turn as the textbook formulas have them', () => {
    const diagram = diagramOf([
      cruise,
      { kind: 'climb', density, climbSpeed: 4, speed: 50 },
      { kind: 'turn', density, speed: 55, loadFactor: 1.5 },
      { kind: 'ceiling', density, climbSpeed: 0.5, speed: 45 },
    ])
    const expected = [
      (x: number) => byHand(x, 60),
      (x: number) => byHand(x, 50, 4),
      (x: number) => byHand(x, 55, 0, 1.5),
      (x: number) => byHand(x, 45, 0.5),
    ]
    diagram.curves.forEach((curve, which) => {
      curve.wingLoading.forEach((loading, at) => {
        expectClose(curve.specificPower[at] ?? 0, expected[which]?.(loading) ?? 0, 1e-12, curve.name)
      })
    })
  })

  it('bounds wing loading by the stall, with its margin', () => {
    const { limits, greatestWingLoading } = diagramOf([cruise, stall])
    expectClose(greatestWingLoading, 0.5 * density * (42 / 1.2) ** 2 * 1.5, 1e-12)
    expect(limits).toEqual([{ name: 'conversion', wingLoading: greatestWingLoading }])
  })

  it('climbs at the speed of least power where none is given: no speed takes less', () => {
    const [level] = diagramOf([{ kind: 'climb', density, climbSpeed: 3 }]).curves
    level?.wingLoading.forEach((loading, at) => {
      for (const speed of [30, 40, 50, 60])
        expect(level.specificPower[at]).toBeLessThanOrEqual(byHand(loading, speed, 3 * (speed / speed)) + 1e-9)
    })
    const best = drag.leastPowerSpeed({ polar, weight: 1000, wingArea: 1, density })
    const [one] = diagramOf([{ kind: 'ceiling', density }], { wingLoadings: [1000, 1100] }).curves
    expectClose(one?.specificPower[0] ?? 0, (u.g0 * (best.power / 1000 + 0.508)) / propellerEfficiency, 1e-12)
  })

  it('finds least power where two curves cross, or at the edge of the allowed wing loadings', () => {
    const flat = diagramOf([cruise, { kind: 'climb', density, climbSpeed: 4 }], {
      wingLoadings: Array.from({ length: 2001 }, (_, step) => 400 + step),
    })
    const powers = flat.required.specificPower
    expect(flat.best.specificPower).toBe(Math.min(...powers))
    expect(flat.best.binds).toMatch(/cruise|climb/)
    const edge = diagramOf([{ ...cruise, speed: 80 }, stall])
    expect(edge.best).toMatchObject({ wingLoading: edge.greatestWingLoading, binds: 'cruise' })
    expectClose(edge.best.specificPower, byHand(edge.greatestWingLoading, 80), 1e-12)
  })

  it('says which requirement a design meets last, and by how much it misses', () => {
    const design = { wingLoading: 1000, specificPower: 80 }
    const good = diagramOf([cruise, stall], { design }).design
    expect(good).toMatchObject({ feasible: true, binds: 'conversion', next: { name: 'cruise' } })
    expectClose(good?.next?.margin ?? 0, 80 / byHand(1000, 60) - 1, 1e-12)
    const weak = diagramOf([cruise, stall], { design: { ...design, specificPower: 50 } }).design
    expect(weak).toMatchObject({ feasible: false, binds: 'cruise' })
    expect(diagramOf([cruise], { design }).design?.next).toBeUndefined()
  })

  it('answers where only stalls bound it, and where nothing names a speed', () => {
    expect(diagramOf([stall]).best).toMatchObject({ specificPower: 0, binds: '' })
    expect(diagramOf([{ kind: 'ceiling', density }]).curves[0]?.wingLoading).toHaveLength(81)
  })

  it.each<[string, object, RegExp]>([
    ['no requirement', { constraints: [] }, /at least one { kind: 'cruise'/],
    ['an unknown kind', { constraints: [{ ...cruise, kind: 'cruze' }] }, /it must be one of "stall", "cruise"/],
    ['a field of another kind', { constraints: [{ ...cruise, maximumLift: 1 }] }, /option "maximumLift"/],
    ['a field of no kind', { constraints: [{ ...cruise, sped: 1 }] }, /did you mean "speed"/],
    ['a nameless name', { constraints: [{ ...cruise, name: '' }] }, /constraints\[0\]\.name/],
    ['a density of 0', { constraints: [{ ...cruise, density: 0 }] }, /constraints\[0\]\.density/],
    ['a cruise without a speed', { constraints: [{ kind: 'cruise', density }] }, /constraints\[0\]\.speed is missing/],
    ['a climb without a rate', { constraints: [{ kind: 'climb', density }] }, /climbSpeed is NaN/],
    ['a climb at no speed', { constraints: [{ kind: 'climb', density, climbSpeed: 1, speed: 0 }] }, /speed is 0/],
    ['a turn without a load', { constraints: [{ kind: 'turn', density, speed: 50 }] }, /loadFactor/],
    ['a stall without lift', { constraints: [{ ...stall, maximumLift: -1 }] }, /maximumLift/],
    ['a stall margin of 0', { constraints: [{ ...stall, margin: 0 }] }, /margin/],
    ['a polar that is none', { polar: 5 }, /polar is 5/],
    ['a propeller that gives too much', { propellerEfficiency: 1.1 }, /propellerEfficiency/],
    ['a design without power', { design: { wingLoading: 1000 } }, /design\.specificPower/],
    ['a design without loading', { design: { specificPower: 50 } }, /design\.wingLoading/],
    ['loadings that fall', { wingLoadings: [2, 1] }, /that rise/],
    ['a loading of 0', { wingLoadings: [0, 1] }, /wingLoadings\[0\]/],
    ['an unknown option', { desing: {} }, /did you mean "design"/],
    ['a speed of absurd size', { constraints: [{ ...cruise, speed: 1e200 }] }, /range of numbers/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () =>
      sizing.constraintDiagram({ polar, propellerEfficiency, constraints: [cruise], ...wrong } as never)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('sizing.diskLoadingWindow(options)', () => {
  const power = { kind: 'hover power', specificPower: 220, figureOfMerit: 0.72 } as const
  const wake = { kind: 'outwash', speed: 28 } as const
  const pad = { kind: 'footprint', grossMass: 1637, diskArea: 44 } as const
  const tip = { kind: 'tip speed', speed: 160, solidity: 0.1 } as const
  const window = (bounds: readonly object[], more: object = {}) =>
    sizing.diskLoadingWindow({ density, bounds, download: 0.05, ...more } as never)

  it('inverts rotor.hover: a rotor at the bound takes exactly the power, and blows exactly the wake', () => {
    const [hover] = window([power]).rows
    const [outwash] = window([wake]).rows
    const mass = (hover?.diskLoading ?? 0) * 0.95
    const atBound = preloaded.rotor.hover({
      thrust: (hover?.diskLoading ?? 0) * 1,
      diskArea: 1,
      density,
      figureOfMerit: 0.72,
    })
    expectClose(atBound.power / (mass / u.g0), 220, 1e-12)
    const thrust = (outwash?.diskLoading ?? 0) * 1
    const blown = preloaded.rotor.hover({ thrust, diskArea: 1, density, figureOfMerit: 0.72 })
    expectClose(2 * blown.inducedVelocity, 28, 1e-12)
  })

  it('orders the bounds, opens between them and names the tightest', () => {
    const room = window([wake, power, tip, pad], { design: 398 })
    expect(room.rows.map((row) => row.name)).toEqual(['footprint', 'tip speed', 'outwash', 'hover power'])
    expect(room).toMatchObject({ open: false, binds: 'tip speed' })
    expectClose(room.rows[1]?.diskLoading ?? 0, density * 160 ** 2 * 0.1 * 0.12, 1e-12)
    const wide = window([{ ...pad, name: 'hangar' }, { ...pad, diskArea: 60 }, power])
    expect(wide).toMatchObject({ open: true, least: wide.rows[0]?.diskLoading, most: wide.rows[2]?.diskLoading })
    expect(wide.rows[0]?.name).toBe('hangar')
    expect(wide.binds).toBeUndefined()
    expect(window([pad]).most).toBeUndefined()
  })

  it.each<[string, object, RegExp]>([
    ['no bound', { bounds: [] }, /at least one { kind: 'outwash'/],
    ['an unknown kind', { bounds: [{ kind: 'noise' }] }, /"tip speed"/],
    ['a field of another kind', { bounds: [{ ...wake, solidity: 0.1 }] }, /solidity/],
    ['a nameless name', { bounds: [{ ...wake, name: ' ' }] }, /bounds\[0\]\.name/],
    ['a power of 0', { bounds: [{ ...power, specificPower: 0 }] }, /specificPower/],
    ['a merit above 1', { bounds: [{ ...power, figureOfMerit: 1.2 }] }, /figureOfMerit/],
    ['no mass', { bounds: [{ ...pad, grossMass: 0 }] }, /grossMass/],
    ['no area', { bounds: [{ ...pad, diskArea: 0 }] }, /diskArea/],
    ['no wake', { bounds: [{ ...wake, speed: -1 }] }, /speed/],
    ['more blade than disk', { bounds: [{ ...tip, solidity: 2 }] }, /solidity/],
    ['blades that carry nothing', { bounds: [{ ...tip, bladeLoading: 0 }] }, /bladeLoading/],
    ['a density of 0', { density: 0 }, /density/],
    ['a download of one', { download: 1 }, /download/],
    ['a design of 0', { design: 0 }, /design/],
    ['an absurd speed', { bounds: [{ ...wake, speed: 1e200 }] }, /range of numbers/],
    ['an unknown option', { bound: [] }, /did you mean "bounds"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => window([wake], wrong)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
