import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'

const { authority, drag, limits, rotor } = preloaded
const polar = drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 })

function refuses<O extends object>(call: (options: O) => unknown, right: O, rows: readonly [string, object, RegExp][]) {
  it.each(rows)('refuses %s', (_, wrong, message) => {
    const run = () => call({ ...right, ...wrong } as O)
    expect(run).toThrow(InvalidInput)
    expect(run).toThrow(message)
  })
}

describe('limits.climbAfterLoss(options)', () => {
  const air = { polar, weight: 16e3, wingArea: 15, density: 1.1 }
  const right = { ...air, shaftPower: 150e3, units: 2, propellerEfficiency: 0.8 }

  it('is the excess power of the units left over the weight (Anderson, 1999, section 5.10)', () => {
    const left = limits.climbAfterLoss({ ...right, speed: 50 })
    const { power } = drag.powerRequired({ ...air, speed: 50 })
    expectClose(left.climbSpeed, (0.8 * 75e3 - power) / 16e3, 1e-12)
    expectClose(left.gradient, left.climbSpeed / 50, 1e-12)
    expectClose(left.deficit, power / 0.8 - 75e3, 1e-12)
    expect(limits.climbAfterLoss(right).climbSpeed).toBeGreaterThan(left.climbSpeed)
  })

  it('glides when every unit is lost, steeper with a dead propeller, never below the floor', () => {
    const gone = limits.climbAfterLoss({ ...right, units: 1, speed: 50 })
    const { liftToDrag } = drag.powerRequired({ ...air, speed: 50 })
    expectClose(gone.climbSpeed, -50 / liftToDrag, 1e-12)
    expect(limits.climbAfterLoss({ ...right, addedDragArea: 0.1 }).climbSpeed).toBeLessThan(
      limits.climbAfterLoss(right).climbSpeed,
    )
    expect(limits.climbAfterLoss({ ...right, floor: 60 }).speed).toBe(60)
  })

  refuses(limits.climbAfterLoss, right, [
    ['half a unit', { units: 1.5 }, /units/],
    ['more lost than there are', { lost: 3 }, /up to the 2 units/],
    ['half a loss', { lost: 0.5 }, /whole number/],
    ['a negative loss', { lost: -1 }, /lost/],
    ['no power', { shaftPower: 0 }, /shaftPower/],
    ['too good a propeller', { propellerEfficiency: 1.2 }, /propellerEfficiency/],
    ['negative drag', { addedDragArea: -1 }, /addedDragArea/],
    ['no wing', { wingArea: 0 }, /wingArea/],
    ['no polar', { polar: {} }, /zeroLiftDrag/],
    ['a speed of 0', { speed: 0 }, /speed/],
    ['an absurd power', { shaftPower: 1e308, weight: 1e-5 }, /range of numbers/],
    ['an unknown option', { unit: 2 }, /did you mean "units"/],
  ])
})

describe('limits.verticalClimbAfterLoss(options)', () => {
  const right = { thrusts: [0, 2600, 2000], diskArea: 5.3, density: 1.098, figureOfMerit: 0.72, unitPower: 60e3 }

  it('climbs as the rotor that is asked most allows', () => {
    const left = limits.verticalClimbAfterLoss(right)
    const hover = rotor.hover({ thrust: 2600, diskArea: 5.3, density: 1.098, figureOfMerit: 0.72 })
    expectClose(left.deficit, hover.power - 60e3, 1e-12)
    const again = rotor.climb({
      climbSpeed: left.climbSpeed,
      thrust: 2600,
      diskArea: 5.3,
      density: 1.098,
      profilePower: hover.power - hover.idealPower,
    })
    expectClose(again.power, 60e3, 1e-9)
    expect(left.rotor).toBe(1)
  })

  it('takes the thrusts of a trim, and gives the deficit where it cannot hover', () => {
    const rotors = [
      { x: 2, y: 2, spin: 1 as const, maxThrust: 9e3, torqueRatio: 0.1 },
      { x: 2, y: -2, spin: -1 as const, maxThrust: 9e3, torqueRatio: 0.1 },
      { x: -2, y: 2, spin: -1 as const, maxThrust: 9e3, torqueRatio: 0.1 },
      { x: -2, y: -2, spin: 1 as const, maxThrust: 9e3, torqueRatio: 0.1 },
    ]
    const { thrusts } = authority.trim({ rotors, weight: 16e3, hold: ['lift', 'roll', 'pitch', 'yaw'], lost: [] })
    const weak = limits.verticalClimbAfterLoss({ ...right, thrusts })
    expect(weak.climbSpeed).toBe(0)
    expect(weak.deficit).toBeGreaterThan(0)
    expectClose(weak.hoverPower, 4 * (weak.deficit + 60e3), 1e-6)
  })

  refuses(limits.verticalClimbAfterLoss, right, [
    ['no thrusts', { thrusts: [] }, /thrust per rotor/],
    ['a negative thrust', { thrusts: [-1] }, /thrusts\[0\]/],
    ['nothing but stopped rotors', { thrusts: [0, 0] }, /greatest thrust/],
    ['no disk', { diskArea: 0 }, /diskArea/],
    ['no air', { density: 0 }, /density/],
    ['too good a rotor', { figureOfMerit: 2 }, /figureOfMerit/],
    ['no motor', { unitPower: 0 }, /unitPower/],
    ['an absurd thrust', { thrusts: [1e300] }, /range of numbers/],
    ['an unknown option', { thrust: 1 }, /did you mean "thrusts"/],
  ])
})

describe('limits.massAllowance(options)', () => {
  it('falls to nothing as the design matures, in every category', () => {
    const maturities = ['estimated', 'layout', 'pre-release', 'released', 'existing', 'actual'] as const
    for (const category of ['structure', 'battery', 'wire harness', 'instrumentation', 'mechanism'] as const) {
      const shares = maturities.map((maturity) => limits.massAllowance({ category, maturity }))
      expect(shares).toEqual([...shares].sort((a, b) => b - a))
      expect(shares.at(-1)).toBe(0)
    }
  })

  refuses(limits.massAllowance, { category: 'structure', maturity: 'layout' } as never, [
    ['no category', { category: undefined }, /category is missing/],
    ['no maturity', { maturity: undefined }, /maturity is missing/],
    ['a category it does not know', { category: 'bettery' }, /"battery"/],
    ['a maturity it does not know', { maturity: 'drawn' }, /"layout"/],
    ['an unknown option', { mass: 1 }, /option "mass"/],
  ])
})

describe('limits.massGrowth(options)', () => {
  const wing = { name: 'wing', mass: 180, allowance: 0.25, low: 150, high: 220 }
  const right = { items: [wing] }

  it('keeps growth and scatter apart, and carries growth to the gross mass', () => {
    const grown = limits.massGrowth({
      growthFactor: 2.5,
      items: [
        { name: 'harness', mass: 20, category: 'wire harness', maturity: 'estimated', low: 14, high: 29 },
        wing,
        { name: 'camera', mass: 4, category: 'instrumentation', maturity: 'actual' },
      ],
    })
    expect(grown.rows.map((row) => row.item)).toEqual(['wing', 'harness', 'camera'])
    expectClose(grown.growth, 45 + 11, 1e-12)
    expectClose(grown.predictedMass, 204 + 56, 1e-12)
    expectClose(grown.grossGrowth, 2.5 * 56, 1e-12)
    expectClose(grown.scatterLow, Math.hypot(30, 6), 1e-12)
    expectClose(grown.scatterHigh, Math.hypot(40, 9), 1e-12)
  })

  refuses(limits.massGrowth, right, [
    ['no items', { items: [] }, /at least one { name, mass/],
    ['a nameless item', { items: [{ ...wing, name: '' }] }, /items\[0\]\.name/],
    ['a negative mass', { items: [{ ...wing, mass: -1 }] }, /items\[0\]\.mass/],
    ['a low above the mass', { items: [{ ...wing, low: 200 }] }, /items\[0\]\.low/],
    ['a high below the mass', { items: [{ ...wing, high: 100 }] }, /items\[0\]\.high/],
    ['an allowance below 0', { items: [{ ...wing, allowance: -0.1 }] }, /items\[0\]\.allowance/],
    ['an item without maturity', { items: [{ name: 'x', mass: 1, category: 'battery' }] }, /items\[0\]\.maturity/],
    ['a growth factor of 0', { growthFactor: 0 }, /growthFactor/],
    ['an absurd mass', { items: [{ ...wing, mass: 1e308, low: 0, high: 1.7e308 }] }, /range of numbers/],
    ['an unknown field', { items: [{ ...wing, mas: 1 }] }, /did you mean "mass"/],
    ['an unknown option', { item: [] }, /did you mean "items"/],
  ])
})

describe('limits.hotelPower(options)', () => {
  const right = { items: [{ name: 'avionics', power: 800 }] }

  it('adds mean and peak powers and the power to carry heat off', () => {
    const hotel = limits.hotelPower({
      items: [...right.items, { name: 'cabin', power: 1500, duty: 0.5 }],
      heat: [{ name: 'cells', heat: 4000 }],
      coolingShare: 0.05,
      converterEfficiency: 0.8,
    })
    expectClose(hotel.power, (800 + 750 + 200) / 0.8, 1e-12)
    expectClose(hotel.peakPower, (800 + 1500 + 200) / 0.8, 1e-12)
    expect(hotel.rows.map((row) => row.item)).toEqual(['avionics', 'cabin', 'cooling'])
    expectClose(
      hotel.rows.reduce((sum, row) => sum + row.share, 0),
      1,
      1e-12,
    )
    expect(limits.hotelPower({ items: [{ name: 'off', power: 0 }] }).rows[0]?.share).toBe(0)
  })

  refuses(limits.hotelPower, right, [
    ['no items', { items: [] }, /at least one { name, power }/],
    ['a nameless item', { items: [{ name: '', power: 1 }] }, /items\[0\]\.name/],
    ['a negative power', { items: [{ name: 'x', power: -1 }] }, /items\[0\]\.power/],
    ['a duty above 1', { items: [{ name: 'x', power: 1, duty: 2 }] }, /items\[0\]\.duty/],
    ['heat that is no list', { heat: 5 }, /heat is 5/],
    ['a nameless heat', { heat: [{ name: '', heat: 1 }] }, /heat\[0\]\.name/],
    ['a negative heat', { heat: [{ name: 'x', heat: -1 }] }, /heat\[0\]\.heat/],
    ['a cooling share above 1', { coolingShare: 2 }, /coolingShare/],
    ['a converter that gives', { converterEfficiency: 1.2 }, /converterEfficiency/],
    ['an absurd power', { items: [{ name: 'x', power: 1.7e308 }] }, /range of numbers/],
    ['an unknown field of an item', { items: [{ name: 'x', powr: 1 }] }, /did you mean "power"/],
    ['an unknown field of a heat', { heat: [{ name: 'x', hat: 1 }] }, /did you mean "heat"/],
    ['an unknown option', { item: [] }, /did you mean "items"/],
  ])
})

describe('limits.glide(options)', () => {
  const right = { polar, weight: 16e3, wingArea: 15, density: 1.1, height: 450 }

  it('goes furthest at the best ratio of lift to drag, less against a wind', () => {
    const best = limits.glide(right)
    expectClose(best.liftToDrag, polar.maximumLiftToDrag, 1e-12)
    expectClose(best.distance, 450 * polar.maximumLiftToDrag, 1e-12)
    expectClose(Math.tan(best.angle), 1 / best.liftToDrag, 1e-12)
    for (const speed of [best.speed - 5, best.speed + 5])
      expect(limits.glide({ ...right, speed }).distance).toBeLessThan(best.distance)
    expectClose(limits.glide({ ...right, headwind: 10 }).distance, best.distance - 10 * best.time, 1e-12)
    expect(limits.glide({ ...right, headwind: 500 }).distance).toBe(0)
  })

  it('carries the weight across the path at any speed, and keeps the floor', () => {
    const fast = limits.glide({ ...right, speed: 60 })
    const lift = (2 * 16e3 * Math.cos(fast.angle)) / (1.1 * 3600 * 15)
    expectClose(fast.liftToDrag, lift / (polar.zeroLiftDrag + polar.inducedFactor * lift * lift), 1e-9)
    const slow = limits.glide({ ...right, floor: 60 })
    expectClose(slow.liftToDrag, fast.liftToDrag, 1e-9)
    expect(limits.glide({ ...right, addedDragArea: 0.1 }).distance).toBeLessThan(limits.glide(right).distance)
    expect(limits.glide({ ...right, height: 0 }).distance).toBe(0)
  })

  refuses(limits.glide, right, [
    ['no polar', { polar: 5 }, /polar/],
    ['no weight', { weight: 0 }, /weight/],
    ['no wing', { wingArea: 0 }, /wingArea/],
    ['no air', { density: 0 }, /density/],
    ['a negative height', { height: -1 }, /height/],
    ['negative drag', { addedDragArea: -1 }, /addedDragArea/],
    ['a negative floor', { floor: -1 }, /floor/],
    ['a wind that is NaN', { headwind: Number.NaN }, /headwind/],
    ['a speed of 0', { speed: 0 }, /speed/],
    ['an absurd height', { height: 1.7e308 }, /range of numbers/],
    ['an unknown option', { wind: 5 }, /option "wind"/],
  ])
})

describe('limits.routeReach(options)', () => {
  const sites = [
    { name: 'south', along: 0, runway: true },
    { name: 'north', along: 40e3, runway: true },
  ]
  const right = { length: 40e3, height: 450, liftToDrag: 12, sites }

  it('leaves a gap between two strips that the glide does not bridge', () => {
    const route = limits.routeReach(right)
    expect(route.covered).toBe(false)
    expect(route.gaps).toHaveLength(1)
    expectClose(route.gaps[0]?.from ?? 0, 5400, 1e-9)
    expectClose(route.gaps[0]?.to ?? 0, 34_600, 1e-9)
    expectClose(route.gaps[0]?.lacking ?? 0, 20e3 - 5400, 1e-9)
    expectClose(route.coveredShare, 10.8 / 40, 1e-9)
    expectClose(route.worst.along, 20e3, 1e-9)
  })

  it('goes on by the rotors with the energy left after the landing', () => {
    const rotorBorne = { power: 400e3, speed: 30, landingEnergy: 20e6 }
    const route = limits.routeReach({ ...right, rotorBorne, energyLeft: 220e6, keptHeight: 50 })
    expectClose(route.points[100]?.reach ?? 0, 400 * 12 + (30 * 200e6) / 400e3, 1e-12)
    expect(route.gaps).toEqual([{ from: expect.any(Number), to: expect.any(Number), lacking: expect.any(Number) }])
    const more = limits.routeReach({ ...right, rotorBorne, energyLeft: (along) => 320e6 - 500 * along })
    expect(more.covered).toBe(true)
    expect(more.coveredShare).toBe(1)
  })

  it('counts a pad as no site where the energy for the hover is gone or there are no rotors to hover on', () => {
    const pads = [{ name: 'pad', along: 20e3, off: 3e3 }]
    expect(limits.routeReach({ ...right, sites: pads }).gaps).toEqual([
      { from: 0, to: 40e3, lacking: expect.any(Number) },
    ])
    const rotorBorne = { power: 400e3, speed: 30, landingEnergy: 20e6 }
    const spent = limits.routeReach({
      ...right,
      sites: [{ name: 'pad', along: 20e3 }],
      height: () => 2000,
      rotorBorne,
      energyLeft: (along) => 30e6 - 500 * along,
    })
    expectClose(spent.gaps[0]?.from ?? 0, 20e3, 1e-6)
    expect(spent.gaps[0]?.to).toBe(40e3)
  })

  refuses(limits.routeReach, right, [
    ['no length', { length: 0 }, /length/],
    ['no sites', { sites: [] }, /at least one { name, along }/],
    ['no glide', { liftToDrag: 0 }, /liftToDrag/],
    ['a negative kept height', { keptHeight: -1 }, /keptHeight/],
    ['one point', { points: 1 }, /points/],
    ['a negative height', { height: -1 }, /height/],
    ['a height that is NaN', { height: () => Number.NaN }, /height/],
    ['rotors without energy', { rotorBorne: { power: 1, speed: 1, landingEnergy: 0 } }, /given with rotorBorne/],
    ['rotors without power', { rotorBorne: { power: 0, speed: 1, landingEnergy: 0 } }, /rotorBorne\.power/],
    ['rotors without speed', { rotorBorne: { power: 1, speed: 0, landingEnergy: 0 } }, /rotorBorne\.speed/],
    ['a landing that gives', { rotorBorne: { power: 1, speed: 1, landingEnergy: -1 } }, /landingEnergy/],
    ['an unknown field of rotors', { rotorBorne: { powr: 1 } }, /did you mean "power"/],
    ['a nameless site', { sites: [{ name: '', along: 0 }] }, /sites\[0\]\.name/],
    ['a site nowhere', { sites: [{ name: 'x' }] }, /sites\[0\]\.along/],
    ['a site beside nothing', { sites: [{ name: 'x', along: 0, off: Number.NaN }] }, /sites\[0\]\.off/],
    ['a runway that is no truth', { sites: [{ name: 'x', along: 0, runway: 1 }] }, /true or false/],
    ['an unknown field of a site', { sites: [{ name: 'x', alon: 0 }] }, /did you mean "along"/],
    ['an absurd length', { height: 1e308 }, /range of numbers/],
    ['an unknown option', { site: [] }, /did you mean "sites"/],
  ])
})
