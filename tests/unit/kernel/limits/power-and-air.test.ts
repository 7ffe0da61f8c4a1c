import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { air, battery, drag, limits, rotor, u, wing } = preloaded
const polar = drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 })

/** One refusal per row, each of a call that is right but for one thing. */
function refuses<O extends object>(call: (options: O) => unknown, right: O, rows: readonly [string, object, RegExp][]) {
  it.each(rows)('refuses %s', (_, wrong, message) => {
    const run = () => call({ ...right, ...wrong } as O)
    expect(run).toThrow(InvalidInput)
    expect(run).toThrow(message)
  })
}

describe('limits.packPower(options)', () => {
  const right = {
    cell: battery.cells.power18650,
    energy: 60 * u.kWh,
    floor: 0.1,
    rating: 'peak' as const,
    demands: [{ name: 'landing', power: 320 * u.kW, stateOfCharge: 0.15 }],
  }

  it('takes the heaviest corner, and says what is behind it', () => {
    const pack = limits.packPower(right)
    expect(pack.rows.map((row) => row.corner)).toEqual([
      'new, warm',
      'end of life, warm',
      'end of life, cold',
      'end of life, hot',
    ])
    expect(pack).toMatchObject({ corner: 'end of life, cold', binds: 'power', demand: 'landing' })
    expect(pack.mass).toBe(Math.max(...pack.rows.map((row) => row.mass)))
    expectClose(pack.nextShare, Math.max(...pack.rows.map((row) => row.energyMass)) / pack.mass, 1e-12)
  })

  it('is the bound of the circuit: V_min (V_oc - V_min)/R, or V_oc^2/4R where the floor is below half', () => {
    const cellOf = (minimumVoltage: number) =>
      battery.cell({ capacity: 1e4, mass: 0.05, openCircuitVoltage: 3.4, resistance: 0.03, minimumVoltage })
    const asked = (minimumVoltage: number) =>
      limits.packPower({
        cell: cellOf(minimumVoltage),
        energy: 0,
        floor: 0.1,
        cellShare: 1,
        demands: [{ power: 1000 }],
        corners: [{ name: 'here' }],
      }).mass
    expectClose(asked(2.5), (1000 * 0.05) / ((2.5 * 0.9) / 0.03), 1e-12)
    expectClose(asked(1), (1000 * 0.05) / (3.4 ** 2 / (4 * 0.03)), 1e-12)
  })

  it('leaves a demand its own temperature, needs no mass for nothing, and stays silent on the way', () => {
    const warm = limits.packPower({ ...right, demands: [{ power: 320e3, stateOfCharge: 0.15, temperature: 298.15 }] })
    expect(warm.mass).toBeLessThan(limits.packPower(right).mass)
    const nothing = limits.packPower({ ...right, energy: 0, demands: [{ power: 0 }] })
    expect(nothing).toMatchObject({ mass: 0, nextShare: 1, rows: [{ neededSpecificPower: 0 }, {}, {}, {}] })
    const heard = listenWhile(() => limits.packPower({ ...right, corners: [{ name: 'arctic', temperature: 230 }] }))
    expect(heard.advisories).toEqual([])
  })

  refuses(limits.packPower, right, [
    ['no corners', { corners: [] }, /corners is a list of 0/],
    ['no demands', { demands: [] }, /demands is a list of 0/],
    ['a nameless corner', { corners: [{ name: '' }] }, /corners\[0\]\.name/],
    ['a corner without capacity', { corners: [{ name: 'x', capacityLeft: 0 }] }, /capacityLeft/],
    ['resistance that fell', { corners: [{ name: 'x', resistanceGrowth: 0.5 }] }, /resistanceGrowth/],
    ['a frozen corner', { corners: [{ name: 'x', temperature: 100 }] }, /temperature/],
    ['an unknown field of a corner', { corners: [{ name: 'x', temp: 300 }] }, /option "temp"/],
    ['an unknown option', { demand: [] }, /did you mean "demands"/],
  ])
})

describe('limits.speedFloors(options)', () => {
  const flown = { weight: 16e3, density: 1.1, wingArea: 15, maximumLift: 1.5 }
  const right = { ...flown, speeds: [{ name: 'cruise', speed: 58 }] }

  it('keeps 1.3 over the stall wing-borne and 1.2 at the conversion, the tightest first', () => {
    const stall = wing.stallSpeed(flown)
    const rows = limits.speedFloors({
      ...right,
      speeds: [
        { name: 'cruise', speed: 58 },
        { name: 'reserve', speed: 45 },
        { name: 'conversion', speed: 45, kind: 'conversion' },
        { name: 'turn', speed: 58, loadFactor: 1.44, margin: 1, density: 1 },
      ],
    })
    expect(rows.map((row) => row.phase)).toEqual(['reserve', 'conversion', 'cruise', 'turn'])
    expectClose(rows[0]?.floor ?? 0, 1.3 * stall, 1e-12)
    expectClose(rows[1]?.floor ?? 0, 1.2 * stall, 1e-12)
    expectClose(rows[3]?.floor ?? 0, 1.2 * stall * Math.sqrt(1.1), 1e-12)
    expect(rows.map((row) => row.met)).toEqual([false, true, true, true])
  })

  it('advises on a speed below its floor, and on no other', () => {
    const heard = listenWhile(() => limits.speedFloors({ ...right, speeds: [{ name: 'loiter', speed: 40 }] }))
    expect(heard.advisories).toMatchObject([{ code: 'SPEED_FLOOR', quantity: 'loiter', value: 40 }])
    expect(listenWhile(() => limits.speedFloors(right)).advisories).toEqual([])
  })

  refuses(limits.speedFloors, right, [
    ['no speeds', { speeds: [] }, /at least one { name, speed }/],
    ['no weight', { weight: 0 }, /weight/],
    ['no air', { density: 0 }, /density/],
    ['no wing', { wingArea: 0 }, /wingArea/],
    ['no lift', { maximumLift: 0 }, /maximumLift/],
    ['a nameless speed', { speeds: [{ name: '', speed: 5 }] }, /speeds\[0\]\.name/],
    ['a speed of 0', { speeds: [{ name: 'x', speed: 0 }] }, /speeds\[0\]\.speed/],
    ['a kind it does not know', { speeds: [{ name: 'x', speed: 5, kind: 'hover' }] }, /"wing-borne", "conversion"/],
    ['a margin of 0', { speeds: [{ name: 'x', speed: 5, margin: 0 }] }, /margin/],
    ['a load factor of 0', { speeds: [{ name: 'x', speed: 5, loadFactor: 0 }] }, /loadFactor/],
    ['thin air of one', { speeds: [{ name: 'x', speed: 5, density: 0 }] }, /speeds\[0\]\.density/],
    ['an absurd speed', { speeds: [{ name: 'x', speed: 1e308, margin: 1e-300 }] }, /range of numbers/],
    ['an unknown field', { speeds: [{ name: 'x', sped: 5 }] }, /did you mean "speed"/],
    ['an unknown option', { speed: [] }, /did you mean "speeds"/],
  ])
})

describe('limits.margins(options)', () => {
  const lift = { diskArea: 42.5, figureOfMerit: 0.72, download: 0.05, shaftPower: 400e3, packPower: 420e3 }
  const airborne = { wingArea: 15, maximumLift: 1.5, speed: 45 }
  const cruise = { polar, wingArea: 15, speed: 58, propellerEfficiency: 0.84, shaftPower: 110e3 }
  const right = { grossMass: 1637, density: 1.098, lift, wing: airborne, cruise }

  it('are what the methods of hover, stall and drag leave', () => {
    const left = limits.margins({ ...right, cruise: { ...cruise, climbSpeed: 1 } })
    const weight = 1637 * u.g0
    const hover = rotor.hover({ thrust: weight / 0.95, diskArea: 42.5, density: 1.098, figureOfMerit: 0.72 })
    expectClose(left['hover power'] ?? 0, 1 - hover.power / 400e3, 1e-12)
    expectClose(left['pack power'] ?? 0, 1 - hover.power / 0.9 / 420e3, 1e-12)
    const stall = wing.stallSpeed({ weight, density: 1.098, wingArea: 15, maximumLift: 1.5 })
    expectClose(left['wing stall'] ?? 0, 1 - (1.2 * (stall / 45)) ** 2, 1e-12)
    const { power } = drag.powerRequired({ polar, weight, wingArea: 15, density: 1.098, speed: 58 })
    expectClose(left['cruise power'] ?? 0, 1 - (power + weight) / (0.84 * 110e3), 1e-12)
  })

  it('answer only for what is given, and below zero where it is lacking', () => {
    const { packPower: _none, ...withoutPack } = lift
    expect(Object.keys(limits.margins({ grossMass: 1637, density: 1.1, lift: withoutPack }))).toEqual(['hover power'])
    const heavy = limits.margins({ ...right, grossMass: 5000 })
    expect(Object.values(heavy).every((left) => left < 0)).toBe(true)
  })

  refuses(limits.margins, right, [
    ['nothing to ask', { lift: undefined, wing: undefined, cruise: undefined }, /one at least/],
    ['no mass', { grossMass: 0 }, /grossMass/],
    ['no air', { density: -1 }, /density/],
    ['no disk', { lift: { ...lift, diskArea: 0 } }, /lift\.diskArea/],
    ['too good a rotor', { lift: { ...lift, figureOfMerit: 1.1 } }, /lift\.figureOfMerit/],
    ['a download of one', { lift: { ...lift, download: 1 } }, /lift\.download/],
    ['no thrust', { lift: { ...lift, thrustRatio: 0 } }, /lift\.thrustRatio/],
    ['no lift motor', { lift: { ...lift, shaftPower: 0 } }, /lift\.shaftPower/],
    ['no wires', { lift: { ...lift, electricalEfficiency: 0 } }, /lift\.electricalEfficiency/],
    ['no pack', { lift: { ...lift, packPower: 0 } }, /lift\.packPower/],
    ['no wing', { wing: { ...airborne, wingArea: 0 } }, /wing\.wingArea/],
    ['no maximum lift', { wing: { ...airborne, maximumLift: 0 } }, /wing\.maximumLift/],
    ['no speed', { wing: { ...airborne, speed: 0 } }, /wing\.speed/],
    ['no stall margin', { wing: { ...airborne, margin: 0 } }, /wing\.margin/],
    ['no polar', { cruise: { ...cruise, polar: 1 } }, /polar/],
    ['no cruise wing', { cruise: { ...cruise, wingArea: 0 } }, /cruise\.wingArea/],
    ['no cruise speed', { cruise: { ...cruise, speed: 0 } }, /cruise\.speed/],
    ['a climb downwards', { cruise: { ...cruise, climbSpeed: -1 } }, /cruise\.climbSpeed/],
    ['too good a propeller', { cruise: { ...cruise, propellerEfficiency: 2 } }, /cruise\.propellerEfficiency/],
    ['no cruise motor', { cruise: { ...cruise, shaftPower: 0 } }, /cruise\.shaftPower/],
    ['an unknown field of lift', { lift: { ...lift, area: 1 } }, /option "area"/],
    ['an unknown field of wing', { wing: { ...airborne, area: 1 } }, /option "area"/],
    ['an unknown field of cruise', { cruise: { ...cruise, power: 1 } }, /option "power"/],
    ['a wing that carries nothing', { wing: { ...airborne, speed: 1e-300 } }, /range of numbers/],
    ['an unknown option', { lifts: {} }, /did you mean "lift"/],
  ])
})

describe('limits.hotAndHigh(options)', () => {
  const right = {
    altitudes: [0, 1000, 3000],
    temperatureOffsets: [-10, 20],
    margins: (there: { readonly density: number }) => ({ 'hover power': there.density - 1, other: 1 }),
  }

  it('asks in the air of every place, and finds the ceiling exactly', () => {
    const grid = limits.hotAndHigh(right)
    expect(grid.rows.map(({ altitude, temperatureOffset }) => [altitude, temperatureOffset])).toEqual([
      [0, -10],
      [0, 20],
      [1000, -10],
      [1000, 20],
      [3000, -10],
      [3000, 20],
    ])
    const here = grid.rows[3]
    expectClose(here?.density ?? 0, air.standard(1000, 20).density, 1e-12)
    expectClose(here?.densityAltitude ?? 0, air.densityAltitude(here?.density ?? 1), 1e-12)
    for (const ceiling of grid.ceilings) {
      expect(ceiling.limit).toBe('hover power')
      expectClose(air.standard(ceiling.altitude, ceiling.temperatureOffset).density, 1, 1e-9)
    }
  })

  it('says where nothing limits, where a limit is lacking from the ground on, and which limit it is', () => {
    const ceiling = (margins: (there: { readonly altitude: number }) => Record<string, number>) =>
      limits.hotAndHigh({ ...right, temperatureOffsets: [0], margins }).ceilings[0]
    expect(ceiling(() => ({ a: 1 }))).toMatchObject({ altitude: 3000, limit: 'none in the grid' })
    expect(ceiling(() => ({ a: 1, b: -1 }))).toMatchObject({ altitude: 0, limit: 'b' })
    const two = ceiling(({ altitude }) => ({ a: 0.4, b: (1500 - altitude) / 1000 }))
    expect(two?.limit).toBe('b')
    expectClose(two?.altitude ?? 0, 1500, 1e-9)
  })

  refuses(limits.hotAndHigh, right, [
    ['altitudes that fall', { altitudes: [1000, 0] }, /altitudes/],
    ['one altitude', { altitudes: [1000] }, /at least 2/],
    ['no temperatures', { temperatureOffsets: [] }, /temperatureOffsets/],
    ['too many places', { altitudes: Array.from({ length: 2001 }, (_, index) => index) }, /number of places/],
    ['no function', { margins: 5 }, /margins is 5/],
    ['an answer that is none', { margins: () => 5 }, /the answer of margins is 5/],
    ['a margin that is NaN', { margins: () => ({ a: Number.NaN }) }, /"a" of the answer/],
    ['an altitude beyond the air', { altitudes: [0, 30_000] }, /altitude/],
    ['an unknown option', { margin: 1 }, /did you mean "margins"/],
  ])
})
