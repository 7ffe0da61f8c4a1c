import { describe, expect, it } from 'vitest'
import type { LiftRotor } from '../../../../kernel/library/authority/index.js'
import { preloaded } from '../../../../kernel/library/index.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from '../wing/refusals.js'
import { ring, signs, threePerSide } from './plans.js'

const { authority, u } = preloaded
const weight = 16 * u.kN
const eight = ring('PNPNPNPN', 6 * u.kN)
const columns = [0, 1, 2, 3]
const oneHot = (buses: readonly number[]) => buses.map((bus) => columns.map((at) => (at === bus ? 1 : 0)))
const opposite = oneHot([0, 1, 2, 3, 0, 1, 2, 3])
const neighbours = oneHot([0, 0, 1, 1, 2, 2, 3, 3])

describe('authority.electricalLosses(options)', () => {
  it('looks at every rotor, branch, bus and battery', () => {
    const seen = authority.electricalLosses({ rotors: eight, weight, feeds: opposite })
    const kinds = seen.cases.map((one) => one.kind)
    const count = (kind: string) => kinds.filter((one) => one === kind).length
    expect([count('rotor'), count('branch'), count('bus'), count('battery')]).toEqual([8, 8, 4, 4])
    expect(seen.cases.find((one) => one.name === 'bus 1')?.lost).toEqual([1, 5])
    expect(seen.cases.find((one) => one.name === 'bus 1 to rotor 5')?.lost).toEqual([5])
  })

  it('tells pairings apart: opposite rotors on a bus are lost with less peak than neighbours', () => {
    const worst = (feeds: number[][]) =>
      Math.max(
        ...authority
          .electricalLosses({ rotors: eight, weight, feeds })
          .cases.filter((one) => one.kind === 'bus')
          .map((one) => one.peakToHover),
      )
    expect(worst(opposite)).toBeLessThan(worst(neighbours) * 1.0001)
  })

  it('loads the batteries left with n/(n - 1) where each rotor can draw from every one', () => {
    const all = eight.map(() => [0.25, 0.25, 0.25, 0.25])
    const seen = authority.electricalLosses({ rotors: eight, weight, feeds: all })
    expect(seen.evenBatteryLoad).toBeCloseTo(4 / 3, 12)
    const battery = seen.cases.find((one) => one.kind === 'battery')
    for (const left of battery?.powerLeft ?? []) expect(left).toBeCloseTo(0.75, 12)
    expect(battery?.lost).toEqual([])
    expect(battery?.batteryLoads.filter((load) => load > 0)).toHaveLength(3)
    for (const load of battery?.batteryLoads.filter((one) => one > 0) ?? []) expect(load).toBeCloseTo(4 / 3, 6)
    expect(seen.greatestBatteryLoad).toBeGreaterThanOrEqual(4 / 3 - 1e-9)
  })

  it('weakens a rotor that has lost one of two windings to 63 % of its thrust, and none that either bus can feed', () => {
    const halves = eight.map((_, at) => columns.map((bus) => (bus === at % 4 || bus === (at + 1) % 4 ? 0.5 : 0)))
    const weaker = authority.electricalLosses({ rotors: eight, weight, feeds: halves })
    const bus = weaker.cases.find((one) => one.name === 'bus 0')
    expect(bus?.powerLeft).toEqual([0.5, 1, 1, 0.5, 0.5, 1, 1, 0.5])
    expect(bus?.lost).toEqual([])
    const either = authority.electricalLosses({
      rotors: eight,
      weight,
      feeds: halves.map((row) => row.map((share) => Math.ceil(share))),
    })
    expect(
      either.cases.filter((one) => one.kind === 'bus').every((one) => one.powerLeft.every((left) => left === 1)),
    ).toBe(true)
  })

  it('follows buses to batteries: one battery on two buses takes both with it', () => {
    const seen = authority.electricalLosses({
      rotors: eight,
      weight,
      feeds: opposite,
      batteries: [
        [1, 0],
        [1, 0],
        [0, 1],
        [0, 1],
      ],
    })
    expect(seen.cases.find((one) => one.name === 'battery 0')?.lost).toEqual([0, 1, 4, 5])
    expect(seen.evenBatteryLoad).toBe(2)
    const single = authority.electricalLosses({ rotors: eight, weight, feeds: eight.map(() => [1]) })
    expect(single.evenBatteryLoad).toBe(1)
    expect(single.worst.cannotHold).toContain('lift')
  })

  itRefuses(authority.electricalLosses, { rotors: eight, weight, feeds: opposite }, [
    ['fewer rows than rotors', { feeds: opposite.slice(1) }],
    ['rows of unequal length', { feeds: opposite.map((row, at) => row.slice(at % 2)) }],
    ['a share above 1', { feeds: opposite.map((row) => row.map((share) => 2 * share)) }],
    ['a rotor that nothing feeds', { feeds: opposite.map((row, at) => (at === 0 ? [0, 0, 0, 0] : row)) }],
    ['batteries for other buses', { batteries: [[1]] }],
  ])
})

describe('authority.pairing(options)', () => {
  it('finds the pairs of least worst peak: as good as any of all 105 groupings tried one by one', () => {
    const rotors = ring('PPNNPNPN', 9 * u.kN).map((rotor, at) => ({ ...rotor, x: rotor.x + (at === 0 ? 0.4 : 0) }))
    const found = authority.pairing({ rotors, weight })
    const scores = groupings([0, 1, 2, 3, 4, 5, 6, 7]).map((pairs) => {
      const trims = pairs.map((lost) => authority.trim({ rotors, weight, lost }))
      return [
        trims.reduce((sum, trim) => sum + trim.cannotHold.length, 0),
        trims.filter((trim) => !trim.controllable).length,
        Math.max(...trims.map((trim) => trim.degradedPeakShare)),
      ]
    })
    expect(scores).toHaveLength(105)
    const least = scores.sort(
      (a, b) => (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0) || (a[2] ?? 0) - (b[2] ?? 0),
    )[0]
    expect(4 - found.controllable).toBe(least?.[1])
    expect(found.worstPeakShare).toBeCloseTo(least?.[2] ?? 0, 7)
    expect(found.buses.flat().sort()).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
    expect(found.tried).toBe(28)
  })

  it('groups more than two on a bus, and one alone', () => {
    expect(authority.pairing({ rotors: ring('PNPNPN', 1e5), weight, rotorsPerBus: 3 }).buses).toHaveLength(2)
    expect(authority.pairing({ rotors: eight, weight, rotorsPerBus: 1 }).feasible).toBe(8)
  })

  itRefuses(authority.pairing, { rotors: eight, weight }, [
    ['a number that does not divide', { rotorsPerBus: 3 }],
    ['all on one bus', { rotorsPerBus: 8 }],
    ['more rotors than can be searched', { rotors: ring('PN'.repeat(9), 1e4) }],
  ])
})

/** All ways to pair off. */
function groupings(list: readonly number[]): number[][][] {
  const [first, ...rest] = list
  if (first === undefined) return [[]]
  return rest.flatMap((partner) =>
    groupings(rest.filter((one) => one !== partner)).map((others) => [[first, partner], ...others]),
  )
}

describe('authority.attainable(options)', () => {
  it('is a square of W arm/2 for four rotors strong enough: worked by hand', () => {
    const map = authority.attainable({ rotors: ring('PNPN', 8 * u.kN, 2), weight, hold: ['lift', 'roll', 'pitch'] })
    expect(Math.max(...map.x)).toBeCloseTo(16_000, 2)
    expect(Math.max(...map.y)).toBeCloseTo(16_000, 2)
    expect(map.trim.map(Math.abs)).toEqual([0, 0])
  })

  it('shrinks inside the intact one after a loss, in any plane', () => {
    for (const plane of [
      ['roll', 'pitch'],
      ['pitch', 'yaw'],
    ] as const) {
      const of = (lost: number[]) => authority.attainable({ rotors: eight, weight, plane, lost })
      const [whole, less] = [of([]), of([2])]
      expect(Math.max(...less.x)).toBeLessThanOrEqual(Math.max(...whole.x) + 1e-3)
      expect(Math.min(...less.y)).toBeGreaterThanOrEqual(Math.min(...whole.y) - 1e-3)
      expect(less).toMatchObject({ plane, lost: [2] })
    }
  })

  it('has no corners where the other axes cannot be held, and one where nothing can move', () => {
    expect(authority.attainable({ rotors: ring('PNPNPNPN', 1e3), weight }).x).toEqual([])
    const single: LiftRotor = { x: 0, y: 0, spin: 1, maxThrust: 2e4, torqueRatio: 0 }
    expect(authority.attainable({ rotors: [single], weight, hold: ['lift'] }).x).toEqual([0])
  })

  itRefuses(authority.attainable, { rotors: eight, weight }, [
    ['an axis twice', { plane: ['roll', 'roll'] }],
    ['lift as an axis', { plane: ['lift', 'roll'] }],
    ['few directions', { directions: 3 }],
  ])
})

describe('authority.rotorResponse(options)', () => {
  const rotor = {
    control: 'speed' as 'speed' | 'pitch',
    thrust: 2000,
    thrustAfter: 2900,
    radius: 1,
    tipSpeed: 140,
    solidity: 0.1,
    density: 1.2,
    speedOfSound: 340,
  }

  it('runs faster at the same blade loading by speed, and loads its blades at the same speed by pitch', () => {
    const speed = authority.rotorResponse(rotor)
    expect(speed.after.tipSpeed).toBeCloseTo(140 * Math.sqrt(1.45), 9)
    expect(speed.after.bladeLoading).toBeCloseTo(speed.intact.bladeLoading, 12)
    const pitch = authority.rotorResponse({ ...rotor, control: 'pitch' })
    expect(pitch.after.tipMach).toBe(pitch.intact.tipMach)
    expect(pitch.after.bladeLoading).toBeCloseTo(1.45 * pitch.intact.bladeLoading, 12)
    expect(pitch.timeConstant).toBeUndefined()
  })

  it('takes J Omega/(2 Q) for its time constant', () => {
    expect(authority.rotorResponse({ ...rotor, torque: 180, rotorInertia: 0.9 }).timeConstant).toBeCloseTo(0.35, 12)
  })

  it('says when the blades stall and when the tips run too fast', () => {
    const answers: ReturnType<typeof authority.rotorResponse>[] = []
    const heard = (options: Partial<typeof rotor>) =>
      listenWhile(() => {
        answers.push(authority.rotorResponse({ ...rotor, ...options }))
      }).advisories.map((one) => one.code)
    expect(heard({ control: 'pitch', tipSpeed: 90 })).toEqual(['ROTOR_STALL_AFTER_LOSS'])
    expect(heard({ tipSpeed: 210 })).toEqual(['TIP_MACH_AFTER_LOSS'])
    expect(answers.map((one) => one.within)).toEqual([false, false])
    expect(answers[0]?.after.stallMargin).toBeLessThan(0)
  })

  itRefuses(authority.rotorResponse, rotor, [
    ['another control', { control: 'flap' }],
    ['no thrust', { thrust: 0 }],
    ['no speed of sound', { speedOfSound: undefined }],
    ['inertia without torque', { rotorInertia: 1 }],
    ['numbers beyond range', { thrustAfter: 1e308, thrust: 1e-10 }],
  ])
})

describe('authority.search(options)', () => {
  it('finds, for a ring of eight, a pattern whose peak is no more than that of rotors turning alternately', () => {
    const found = authority.search({ rotors: eight, weight })
    expect(found).toMatchObject({ tried: 35 })
    expect(found.rows).toHaveLength(10)
    expect(found.best?.held).toBe(8)
    expect(found.best?.thrustToHover).toBeLessThanOrEqual(Math.SQRT2 + 1e-7)
    const { best } = found
    const rated = authority.rating({ rotors: best?.rotors ?? [], weight })
    expect(rated.peakShare).toBeCloseTo(best?.peakShare ?? 0, 9)
  })

  it('never offers as best what has no yaw authority, however small its peak', () => {
    const alike = authority.search({ rotors: eight, weight, patterns: [signs('PPPPPPPP'), signs('PNPNPNPN')] })
    expect(alike.best?.pattern).toBe('+-+-+-+-')
    expect(alike.notSteerable).toBe(1)
    const none = authority.search({ rotors: eight, weight, patterns: [signs('PPPPPPPP')] })
    expect('best' in none).toBe(false)
  })

  it('keeps the accelerations asked for, at a higher peak', () => {
    const inertia = { roll: 4000, pitch: 4000, yaw: 7000 }
    const calm = authority.search({ rotors: eight, weight, keep: 1 }).best
    const brisk = authority.search({
      rotors: eight,
      weight,
      inertia,
      acceleration: { roll: 0.8, pitch: 0.8, yaw: 0.05 },
      keep: 1,
    }).best
    expect(brisk?.peakShare).toBeGreaterThan(calm?.peakShare ?? 1)
  })

  it('tries stretches, cants and the conditions it is given', () => {
    const found = authority.search({
      rotors: threePerSide([1, 1, 1, 1, 1, 1]),
      weight,
      hold: ['lift', 'roll', 'pitch', 'yaw'],
      stretches: [
        { x: 1, y: 1 },
        { x: 1.5, y: 1 },
      ],
      outwardCants: [0, 5 * u.deg],
      centresOfGravity: [{ x: 0.02, y: 0 }],
      disturbances: [{}],
      simultaneous: 1,
      keep: 100,
    })
    expect(found.tried).toBe(40)
    expect(found.rows).toHaveLength(40)
    expect(found.best).toMatchObject({ held: 6, outwardCant: 5 * u.deg })
  })

  it('pairs mirror images to turn opposite where there are more than eight', () => {
    const ten = [1, 2, 3, 4, 5].flatMap((x) =>
      [-2, 2].map((y) => ({ x: x - 3, y, spin: 1, maxThrust: 1, torqueRatio: 0.1 })),
    )
    const found = authority.search({ rotors: ten, weight, simultaneous: 0 })
    expect(found.tried).toBe(16)
    for (const row of found.rows)
      for (let at = 0; at < 10; at += 2) expect(row.spins[at]).toBe(-(row.spins[at + 1] ?? 0))
  })

  itRefuses(authority.search, { rotors: eight, weight }, [
    ['an odd number of rotors', { rotors: eight.slice(1) }],
    [
      'ten rotors without mirror images',
      { rotors: ring('PN'.repeat(5), 1).map((rotor) => ({ ...rotor, y: rotor.y + 1 })) },
    ],
    ['no patterns', { patterns: [] }],
    ['a pattern of another length', { patterns: [[1, -1]] }],
    ['a stretch of 0', { stretches: [{ x: 0, y: 1 }] }],
    ['a cant beyond 1.2 rad', { outwardCants: [2] }],
    ['no rows to keep', { keep: 0 }],
    ['more arrangements than anyone waits for', { outwardCants: new Array(1000).fill(0.1) }],
    ['an acceleration without inertia', { acceleration: { yaw: 1 } }],
  ])
})

describe('authority.countTrade(options)', () => {
  const trade = {
    counts: [4, 6, 8, 10],
    footprint: { length: 9, width: 12 },
    weight,
    density: 1.1,
    figureOfMerit: 0.7,
    tipSpeed: 150,
    unitFailure: 1e-5,
  }
  const rows = authority.countTrade(trade)

  it('has a row per count and arrangement whose discs lie in the footprint and do not touch', () => {
    expect(rows).toHaveLength(12)
    for (const { rotors, radius, discArea, count } of rows) {
      expect(discArea).toBeCloseTo(count * Math.PI * radius ** 2, 9)
      for (const [at, one] of rotors.entries()) {
        expect(Math.abs(one.x) + radius).toBeLessThanOrEqual(4.5 + 1e-9)
        expect(Math.abs(one.y) + radius).toBeLessThanOrEqual(6 + 1e-9)
        for (const other of rotors.slice(at + 1))
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(2 * radius)
      }
    }
  })

  it('hovers by momentum theory and rates rotors for the peak, nine tenths of it for trim', () => {
    for (const row of rows) {
      expect(row.hoverPower).toBeCloseTo(weight ** 1.5 / (0.7 * Math.sqrt(2 * 1.1 * row.discArea)), 3)
      expect(row.thrustToHover * 0.9).toBeCloseTo(row.peakShare * row.count, 9)
      expect(row.parts).toBe(4 * row.count)
      expect('cost' in row).toBe(false)
    }
  })

  it('loses lift with any loss of four, with two of eight, and some unit fails the more often the more there are', () => {
    const of = (count: number) => rows.find((row) => row.count === count && row.arrangement === 'ring')
    expect(of(4)?.lossOfLift).toBeCloseTo(4e-5, 8)
    expect(of(4)?.held).toBe(0)
    expect(of(8)).toMatchObject({ held: 8, of: 8, steerable: true })
    expect(of(8)?.lossOfLift).toBeLessThan(1e-8)
    expect(of(8)?.anyFailure).toBeGreaterThan(of(6)?.anyFailure ?? 1)
  })

  it('takes gross mass from the closure and cost from the prices it is given', () => {
    const heavier = authority.countTrade({
      ...trade,
      counts: [8],
      arrangements: ['ring'],
      hold: ['lift', 'roll', 'pitch', 'yaw'],
      outwardCants: [0],
      grossMass: (candidate) => 1500 + 100 * candidate.thrustToHover,
      cost: { perUnit: 10, perKilogram: 2 },
    })[0]
    expect(heavier?.grossMass).toBeCloseTo(1500 + 100 * (heavier?.thrustToHover ?? 0), 9)
    expect(heavier?.cost).toBeCloseTo(80 + 2 * ((heavier?.motorMass ?? 0) + (heavier?.controllerMass ?? 0)), 9)
  })

  itRefuses(authority.countTrade, trade, [
    ['an odd count', { counts: [5] }],
    ['an arrangement that is none', { arrangements: ['star'] }],
    ['no arrangement', { arrangements: [] }],
    ['a footprint without width', { footprint: { length: 9 } }],
    ['a weight of 0', { weight: 0 }],
    ['a gross mass that is no function', { grossMass: 1600 }],
    ['a gross mass of 0', { grossMass: () => 0 }],
    ['a price below 0', { cost: { perUnit: -1, perKilogram: 0 } }],
    ['a unit failure above 1', { unitFailure: 2 }],
    ['a figure of merit of 0', { figureOfMerit: 0 }],
  ])
})
