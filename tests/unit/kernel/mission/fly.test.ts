import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { craft, day, options, sector, withBattery, withCruise, withLift } from './craft.js'

const { air, battery, mission, rotor, u } = preloaded
type Options = Parameters<typeof mission.fly>[0]
type Segments = Options['segments']
const flown = mission.fly({ aircraft: craft, segments: sector, ...day })
const rowOf = (name: string, from = flown) => from.rows.find((row) => row.name === name) as (typeof flown.rows)[number]
const fly = (segments: Segments, more = {}) => mission.fly({ aircraft: craft, segments, ...more })

describe('mission.fly(options)', () => {
  it('of one hover is hover power for its time, and battery.run of it', () => {
    const hover = fly([{ kind: 'hover', time: 90 }])
    const { density } = air.standard(0)
    const { power } = rotor.hover({ thrust: (1900 * u.g0) / 0.95, diskArea: 42.5, density, figureOfMerit: 0.72 })
    const terminals = power / 0.9 + 2000
    expectClose(hover.energy, terminals * 90, 1e-12)
    const run = battery.run({
      cell: battery.cells.power18650,
      series: 200,
      parallel: 60,
      rating: 'peak',
      profile: [{ power: terminals, duration: 90 }],
    })
    expectClose(hover.stateOfCharge, run.stateOfCharge, 1e-9)
    expectClose(hover.temperature, run.temperature, 1e-9)
    expectClose(hover.heat, run.heat, 1e-9)
    expectClose(hover.stored, run.stored, 1e-9)
    expectClose(-hover.deficits.packPower, run.leastMargin, 1e-9)
    expectClose(rowOf('hover', hover).voltage, run.history.voltage.at(-1) ?? 0, 1e-9)
  })

  it('adds its rows up to its totals and keeps the book of energy', () => {
    expect(flown).toMatchObject({ feasible: true, status: 'ok', message: '', segment: '' })
    const sum = (key: 'time' | 'distance' | 'energy') => flown.rows.reduce((all, row) => all + row[key], 0)
    for (const key of ['time', 'distance', 'energy'] as const) expectClose(flown[key], sum(key), 1e-12)
    expect(Math.abs(flown.openBalance)).toBeLessThan(1e-7)
    expectClose(flown.stored, flown.energy + flown.heat, 1e-7)
    expect(flown.rows.map((row) => row.kind)).toEqual(sector.map((segment) => segment.kind))
  })

  it('gives an open cruise what the other segments leave of the sector, reserve apart', () => {
    const reserve = rowOf('reserve').distance
    expectClose(flown.distance - reserve, 60 * u.km, 1e-12)
    const short = fly(sector, { ...day, distance: 5 * u.km })
    expect(short).toMatchObject({ feasible: false, status: 'sector distance', segment: 'cruise' })
    expect(short.deficits.distance).toBeGreaterThan(0)
    expect(short.message).toContain('longer than the sector')
  })

  it('flies over ground with the wind, and against it takes longer', () => {
    const leg = (tailwind: number) => rowOf('cruise', fly([{ kind: 'cruise', speed: 60, distance: 30_000, tailwind }]))
    expectClose(leg(-10).time, 30_000 / 50, 1e-12)
    expectClose(leg(10).time, 30_000 / 70, 1e-12)
    expectClose(leg(-10).distance, 30_000, 1e-12)
    const timed = rowOf('loiter', fly([{ kind: 'loiter', speed: 60, time: 100 }], { tailwind: -10 }))
    expectClose(timed.distance, 5000, 1e-12)
    const pushed = rowOf('transition', fly([{ kind: 'transition', tailwind: 10 }]))
    const still = rowOf('transition', fly([{ kind: 'transition' }]))
    expectClose(pushed.distance - still.distance, 10 * still.time, 1e-9)
  })

  it('flies at best range, at best endurance and at the rating as mission.speeds has them', () => {
    const aircraft = mission.aircraft({ ...options, maximumLift: 6 })
    const asked = mission.speeds({ aircraft, tailwind: -12 })
    const legs = mission.fly({
      aircraft,
      tailwind: -12,
      segments: [
        { kind: 'cruise', distance: 1000 },
        { kind: 'reserve', time: 60 },
        { kind: 'cruise', name: 'dash', distance: 1000, speed: 'power limit' },
      ],
    })
    expectClose(rowOf('cruise', legs).speed, asked.bestRange.speed, 1e-12)
    expectClose(rowOf('reserve', legs).speed, asked.bestEndurance.speed, 1e-12)
    expectClose(rowOf('dash', legs).speed, asked.greatest?.speed ?? 0, 1e-12)
    expect(legs.deficits.cruisePower).toBe(0)
  })

  it('raises every wing-borne speed to the floor and says so', () => {
    const heard = listenWhile(() => {
      const slow = rowOf('cruise', fly([{ kind: 'cruise', speed: 20, time: 60 }]))
      expect(slow).toMatchObject({ floorBinds: true })
      expectClose(slow.speed, mission.speeds({ aircraft: craft }).floor, 1e-12)
    })
    expect(heard.advisories.map((one) => one.code)).toEqual(['SPEED_FLOOR'])
    expect(rowOf('reserve').floorBinds).toBe(true)
    expect(rowOf('cruise').floorBinds).toBe(false)
  })

  it('climbs by the weight times height over the efficiencies, beside the drag', () => {
    const climb = rowOf('climb', fly([{ kind: 'climb', to: 500, rate: 4, speed: 55 }]))
    const { density } = air.standard(250)
    const level = mission.trim({ aircraft: craft, altitude: 250, speed: 55 })
    expectClose(climb.propellerPower, (level.drag * 55 + 1900 * u.g0 * 4) / 0.84, 1e-10)
    expectClose(climb.time, 125, 1e-12)
    expectClose(climb.distance, Math.sqrt(55 ** 2 - 16) * 125, 1e-12)
    expect(density).toBeGreaterThan(1)
    const rated = rowOf('climb', fly([{ kind: 'climb', to: 500 }]))
    expectClose(rated.propellerPower, 180 * u.kW, 1e-9)
    const weak = fly([{ kind: 'climb', to: 10 }], { aircraft: withCruise({ powerLimit: 30_000 }) })
    expect(weak).toMatchObject({ feasible: false, status: 'cruise rating', segment: 'climb', second: 0 })
    expectClose(rowOf('climb', weak).time, 100, 1e-9)
  })

  it('descends on less, and on nothing but hotel power where the glide is shallower', () => {
    const down = (rate: number) =>
      rowOf(
        'descent',
        fly([
          { kind: 'climb', to: 900, rate: 5 },
          { kind: 'descent', to: 0, rate },
        ]),
      )
    expect(down(1).meanPower).toBeLessThan(rowOf('cruise').meanPower)
    expectClose(down(8).meanPower, 2000, 1e-12)
    expect(down(8).altitude).toBe(0)
  })

  it('picks up and sets down', () => {
    const change = fly([
      { kind: 'hover', time: 10 },
      { kind: 'hover', name: 'light', time: 10, massChange: -400 },
      { kind: 'hover', name: 'heavy', time: 10, massChange: 500 },
    ])
    expect(change.rows.map((row) => row.mass)).toEqual([1900, 1500, 2000])
    expectClose(
      (rowOf('light', change).energy - 20_000) / (rowOf('hover', change).energy - 20_000),
      (15 / 19) ** 1.5,
      1e-9,
    )
  })

  it('flies a level segment at an altitude of its own and comes back', () => {
    const up = fly([
      { kind: 'divert', distance: 5000, altitude: 2000, speed: 70 },
      { kind: 'hover', time: 5 },
    ])
    expectClose(
      rowOf('divert', up).propellerPower,
      mission.trim({ aircraft: craft, altitude: 2000, speed: 70 }).propellerPower,
      1e-12,
    )
    expect(rowOf('hover', up).altitude).toBe(0)
  })

  it('climbs and lands vertically as rotor.climb and rotor.descent do, in layers of thin air', () => {
    const aircraft = mission.aircraft(withLift({ figureOfMerit: undefined, profileDrag: 0.011, download: 0 }))
    const vertical = fly(
      [
        { kind: 'vertical climb', height: 40, rate: 3 },
        { kind: 'landing', height: 40, rate: 1.5 },
        { kind: 'balked landing' },
      ],
      { aircraft },
    )
    const { density } = air.standard(20)
    const base = {
      thrust: 1900 * u.g0,
      diskArea: 42.5,
      density,
      inducedFactor: 1.15,
      profilePower: (density * 42.5 * 165 ** 3 * 0.14 * 0.011) / 8,
    }
    expectClose(rowOf('vertical climb', vertical).rotorPower, rotor.climb({ ...base, climbSpeed: 3 }).power, 1e-10)
    expectClose(
      rowOf('landing', vertical).rotorPower,
      Math.max(rotor.descent({ ...base, descentSpeed: 1.5 }).power, mission.trim({ aircraft, speed: 0 }).rotorPower),
      1e-10,
    )
    expectClose(rowOf('balked landing', vertical).time, 10 + 30 / 2.5, 1e-12)
    expectClose(rowOf('balked landing', vertical).altitude, 30, 1e-9)
  })

  it('lands on the rotors that turn', () => {
    const land = (stoppedRotors: number) =>
      rowOf('landing', fly([{ kind: 'landing', time: 20, stoppedRotors }])).rotorPower
    expectClose(land(1) / land(0), Math.sqrt(8 / 7), 1e-12)
  })

  it('names segment and second of the first limit, as battery.run does', () => {
    const small = mission.aircraft(withBattery({ parallel: 38 }))
    const short = mission.fly({ aircraft: small, segments: sector, ...day })
    expect(short).toMatchObject({ feasible: false, status: 'charge floor', segment: 'landing' })
    expect(short.second).toBeGreaterThan(0)
    expect(short.message).toBe(
      `In "landing" at second ${short.second.toFixed(1)} the charge that must be left is reached.`,
    )
    const { meanPower } = rowOf('hover', fly([{ kind: 'hover', time: 1 }]))
    const long = fly([{ kind: 'hover', time: 3000 }])
    const run = battery.run({
      cell: battery.cells.power18650,
      series: 200,
      parallel: 60,
      rating: 'peak',
      floor: 0.1,
      profile: [{ power: meanPower, duration: 3000 }],
    })
    expect(long.status).toBe(run.status)
    // Another step in time: 9.4 s here, 10 s there.
    expectClose(long.second, run.second, 1e-5)
  })

  it('goes on past a limit, with deficits that are continuous and have their signs', () => {
    const deficit = (parallel: number) =>
      mission.fly({ aircraft: withBattery({ parallel }), segments: sector, ...day, steps: 'coarse' }).deficits
    let before = deficit(60)
    expect(before.energy).toBeLessThan(0)
    for (let parallel = 59; parallel >= 20; parallel -= 1) {
      const now = deficit(parallel)
      expect(now.energy, `${parallel} strings`).toBeGreaterThan(before.energy)
      // An empty pack gives nothing, and can give no less.
      expect(now.packPower).toBeGreaterThan(before.packPower - 1)
      before = now
    }
    expect(before.energy).toBeGreaterThan(0)
    expect(before.packPower).toBeGreaterThan(0)
    // Half the pack lacks about half of what the flight takes.
    const half = deficit(20)
    expect(half.energy).toBeLessThan(flown.energy)
  })

  it.each<[string, object, Segments, string]>([
    [
      'voltage floor',
      withBattery({ cell: { ...battery.cells.power18650, peakCurrent: 1000 }, parallel: 10 }),
      [{ kind: 'hover', time: 10 }],
      'voltage floor',
    ],
    ['current', withBattery({ rating: 'continuous', parallel: 30 }), [{ kind: 'hover', time: 10 }], 'current'],
    ['lift rating', withLift({ powerLimit: 1e5 }), [{ kind: 'hover', time: 10 }], 'lift rating'],
    ['cruise rating', withCruise({ powerLimit: 1e4 }), [{ kind: 'cruise', time: 10 }], 'cruise rating'],
    ['cruise thrust', withCruise({ powerLimit: 1e4 }), [{ kind: 'transition' }], 'cruise thrust'],
    [
      'temperature',
      withBattery({ cell: { ...battery.cells.power18650, maximumTemperature: 299 } }),
      [{ kind: 'hover', time: 100 }],
      'temperature',
    ],
  ])('tells of the limit "%s"', (_, aircraft, segments, status) => {
    const heard = listenWhile(() => {
      expect(mission.fly({ aircraft: aircraft as typeof options, segments })).toMatchObject({ feasible: false, status })
    })
    expect(heard.advisories.map((one) => one.code)).toContain('MISSION_FAILS')
  })

  it('says whether a hover is left when all is flown', () => {
    const { landing, stateOfCharge, temperature } = flown
    const limit = battery.powerLimit({
      cell: battery.cells.power18650,
      series: 200,
      parallel: 60,
      rating: 'peak',
      stateOfCharge,
      temperature,
    })
    expectClose(landing.powerLimit, limit.power, 1e-12)
    expectClose(
      landing.power,
      mission.trim({ aircraft: craft, ...{ altitude: 600, temperatureOffset: 15 }, speed: 0 }).power,
      1e-9,
    )
    expectClose(landing.powerMargin, landing.powerLimit - landing.power, 1e-12)
    const heard = listenWhile(() => {
      const small = mission.fly({ aircraft: withBattery({ parallel: 30 }), segments: sector, ...day })
      expect(small.landing.powerMargin).toBeLessThan(0)
    })
    expect(heard.advisories.map((one) => one.code)).toEqual(['MISSION_FAILS', 'LANDING_POWER'])
  })

  it('warns of fast vertical descents and of blades near the stall', () => {
    const heard = listenWhile(() =>
      fly([{ kind: 'landing', height: 50, rate: 6 }], { aircraft: withLift({ solidity: 0.05 }) }),
    )
    expect(heard.advisories.map((one) => one.code)).toEqual(['VORTEX_RING', 'BLADE_LOADING'])
  })

  it('warns of a descent steeper than the glide and of cells that are too cold', () => {
    const steep = [
      { kind: 'climb' as const, to: 600, rate: 3 },
      { kind: 'descent' as const, to: 0, rate: 8 },
    ]
    const heard = listenWhile(() => fly(steep, { cellTemperature: 250 }))
    expect(heard.advisories.map((one) => one.code)).toEqual(['DESCENT_STEEP', 'CELL_TEMPERATURE'])
    expect(heard.advisories[0]?.message).toContain('in segment 2 is steeper than the glide')
  })

  it('with coarse steps keeps energy and charge within a thousandth, and no path', () => {
    const coarse = mission.fly({ aircraft: craft, segments: sector, ...day, steps: 'coarse' })
    expectClose(coarse.energy, flown.energy, 1e-4)
    expectClose(coarse.stateOfCharge, flown.stateOfCharge, 1e-3)
    expectClose(coarse.landing.powerLimit, flown.landing.powerLimit, 2e-3)
    expect(coarse.history.time).toEqual([])
    const finer = mission.fly({ aircraft: craft, segments: sector, ...day, maxStep: 1 })
    expectClose(finer.stateOfCharge, flown.stateOfCharge, 1e-6)
  })

  it('cools its cells towards the ambient', () => {
    const cooled = mission.fly({
      aircraft: withBattery({ conductance: 500 }),
      segments: sector,
      ...day,
      cellTemperature: 310,
      ambient: 290,
    })
    expect(cooled.temperature).toBeLessThan(310)
  })

  it.each<[string, object, RegExp]>([
    [
      'an aircraft without a battery',
      { aircraft: { ...options, battery: undefined } },
      /aircraft.battery.*mission.demand/,
    ],
    ['a charge above 1', { stateOfCharge: 2 }, /stateOfCharge/],
    ['frozen cells', { cellTemperature: 100 }, /cellTemperature/],
    ['an ambient in space', { ambient: 3 }, /ambient/],
    ['steps that are none', { steps: 'medium' }, /steps/],
    ['steps of no time', { maxStep: 0 }, /maxStep/],
    ['a wind that is none', { tailwind: Number.NaN }, /tailwind/],
    ['an open cruise without a sector', { segments: [{ kind: 'cruise' }] }, /distance.*given where a cruise/],
    ['a sector without an open cruise', { segments: [{ kind: 'hover', time: 5 }], distance: 5 }, /there are 0/],
    ['a sector with two', { segments: [{ kind: 'cruise' }, { kind: 'cruise' }], distance: 5 }, /there are 2/],
    ['a negative sector', { segments: [{ kind: 'cruise' }], distance: -5 }, /distance/],
    ['a climb that goes down', { segments: [{ kind: 'climb', to: -5 }] }, /segments\[0\].to.*at or above the 0.0 m/],
    ['a descent that goes up', { segments: [{ kind: 'descent', to: 5 }] }, /at or below/],
    [
      'a headwind beyond the speed',
      { segments: [{ kind: 'cruise', distance: 5, speed: 60, tailwind: -61 }] },
      /never arrives/,
    ],
    [
      'a climb without rate and rating',
      { aircraft: withCruise({ powerLimit: undefined }), segments: [{ kind: 'climb', to: 5 }] },
      /segments\[0\].rate/,
    ],
    [
      'the rating of none',
      {
        aircraft: withCruise({ powerLimit: undefined }),
        segments: [{ kind: 'cruise', time: 5, speed: 'power limit' }],
      },
      /power limit/,
    ],
    ['more set down than there is', { segments: [{ kind: 'hover', time: 5, massChange: -5000 }] }, /massChange/],
    [
      'too many stopped rotors',
      { segments: [{ kind: 'landing', time: 5, stoppedRotors: 8 }] },
      /segments\[0\].stoppedRotors/,
    ],
    ['a hover of weeks', { segments: [{ kind: 'hover', time: 1e6 }] }, /at most 20000 steps/],
    [
      'a mass beyond numbers',
      { aircraft: { ...options, mass: 1e300 }, segments: [{ kind: 'hover', time: 5 }] },
      /size that no aircraft has/,
    ],
    ['a misspelt option', { step: 5 }, /option "step"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => mission.fly({ aircraft: craft, segments: [{ kind: 'hover', time: 5 }], ...wrong } as Options)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('mission.demand(options)', () => {
  it('asks what mission.fly asks, without a battery', () => {
    const { battery: _, ...without } = options
    const asked = mission.demand({ aircraft: without, segments: sector, ...day })
    expect(asked).toMatchObject({ feasible: true, status: 'ok', message: '' })
    expectClose(asked.energy, flown.energy, 1e-4)
    expectClose(asked.time, flown.time, 1e-5)
    expect(asked.rows).toHaveLength(sector.length)
    expect(asked.rows[0]).not.toHaveProperty('stateOfCharge')
    expect(asked.deficits.liftPower).toBeLessThan(0)
  })

  it('tells of ratings that do not suffice', () => {
    const asked = mission.demand({ aircraft: withLift({ powerLimit: 1e5 }), segments: sector, ...day })
    expect(asked).toMatchObject({ feasible: false, status: 'lift rating', segment: 'hover', second: 0 })
    expect(asked.deficits.liftPower).toBeGreaterThan(0)
  })

  it('refuses what concerns the battery', () => {
    expect(() => mission.demand({ aircraft: craft, segments: sector, stateOfCharge: 1 } as Options)).toThrow(
      InvalidInput,
    )
  })
})
