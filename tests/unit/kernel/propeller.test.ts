import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'

const { air, figure, propeller, rotor, u } = preloaded
const codes = (run: () => void) => listenWhile(run).advisories.map((one) => one.code)
const disk = { thrust: 1500, speed: 60, diskArea: 2.5, density: 1.225 }

describe('propeller.ideal', () => {
  it('is rotor.axial in climb', () => {
    const { power, inducedVelocity } = propeller.ideal(disk)
    const { speed: climbSpeed, ...rest } = disk
    const axial = rotor.axial({ ...rest, climbSpeed })
    expect([power, inducedVelocity]).toEqual([axial.power, axial.inducedVelocity])
  })

  it('at rest has no efficiency and the power of hovering', () => {
    const still = propeller.ideal({ ...disk, speed: 0 })
    expect(still.efficiency).toBe(0)
    expectClose(still.power, 1500 * Math.sqrt(1500 / (2 * 1.225 * 2.5)), 1e-14)
  })

  it.each<[string, object, RegExp]>([
    ['no thrust', { thrust: 0 }, /thrust/],
    ['a negative speed', { speed: -1 }, /speed/],
    ['no disk', { diskArea: 0 }, /diskArea/],
    ['no air', { density: 0 }, /density/],
    ['a misspelt option', { area: 1 }, /option "area"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => propeller.ideal({ ...disk, ...options })).toThrow(message)
  })
})

const cruising = {
  thrust: 1200,
  speed: 58,
  radius: 0.9,
  density: 1.1,
  tipSpeed: 190,
  solidity: 0.12,
  profileDrag: 0.01,
}

describe('propeller.estimate', () => {
  it('adds up, and its profile power along the path is the quadrature of drag times path speed cubed', () => {
    const { power, inducedPower, profilePower, swirlPower } = propeller.estimate(cruising)
    expectClose(1200 * 58 + inducedPower + profilePower + swirlPower, power, 1e-12)
    let sum = 0
    const n = 20_000
    for (let i = 0; i < n; i += 1) sum += (((i + 0.5) / n) ** 2 + (58 / 190) ** 2) ** 1.5 / n
    const drag = 0.5 * 1.1 * 190 ** 3 * 0.12 * Math.PI * 0.9 ** 2 * 0.01
    expectClose(profilePower, drag * sum, 1e-7)
  })

  it('turns the wake as a solid body that takes the shaft’s torque', () => {
    const { power, swirlPower } = propeller.estimate(cruising)
    const through =
      58 + propeller.ideal({ thrust: 1200, speed: 58, diskArea: Math.PI * 0.81, density: 1.1 }).inducedVelocity
    const rotation = 190 / 0.9
    const torque = power / rotation
    expectClose(swirlPower, (torque * torque) / (Math.PI * 1.1 * through * 0.9 ** 4), 1e-10)
  })

  it('advises past a tip Mach number of 0.85 and an advance ratio of 3', () => {
    const at = (options: object) => codes(() => propeller.estimate({ ...cruising, ...options }))
    expect(at({ speedOfSound: 340 })).toEqual([])
    expect(at({ tipSpeed: 290, speedOfSound: 340 })).toEqual(['TIP_MACH'])
    expect(at({ tipSpeed: 58, thrust: 100 })).toEqual(['ADVANCE_RATIO'])
    expectClose(propeller.estimate({ ...cruising, speedOfSound: 340 }).tipMach ?? 0, Math.hypot(190, 58) / 340, 1e-14)
  })

  it.each<[string, object, RegExp]>([
    ['no thrust', { thrust: 0 }, /thrust/],
    ['a negative speed', { speed: -1 }, /speed/],
    ['no radius', { radius: 0 }, /radius/],
    ['no air', { density: 0 }, /density/],
    ['a tip that stands', { tipSpeed: 0 }, /tipSpeed/],
    ['a tip too slow for its torque', { tipSpeed: 20 }, /tipSpeed is 20 m\/s; it must be at least about/],
    ['no solidity', { solidity: 0 }, /solidity/],
    ['no drag', { profileDrag: 0 }, /profileDrag/],
    ['a low induced factor', { inducedFactor: 0.9 }, /inducedFactor/],
    ['no sound', { speedOfSound: 0 }, /speedOfSound/],
    ['a misspelt option', { rpm: 1 }, /option "rpm"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => propeller.estimate({ ...cruising, ...options })).toThrow(message)
  })
})

const polar = { liftSlope: 5.9, minimumDrag: 0.009, zeroLiftAngle: -3 * u.deg, dragRise: 0.01 }
const three = {
  ...air.standard(0),
  radius: 0.9,
  rootCutout: 0.15,
  chord: 0.12,
  blades: 3,
  tipSpeed: 190,
  twist: [
    [0.2, 62 * u.deg],
    [0.5, 36 * u.deg],
    [0.75, 27 * u.deg],
    [1, 21 * u.deg],
  ] as const,
  section: polar,
}

describe('propeller.bladeElement', () => {
  it('takes a speed or an advance ratio alike', () => {
    const bySpeed = propeller.bladeElement({ ...three, speed: 58 })
    const byRatio = propeller.bladeElement({ ...three, advanceRatio: bySpeed.advanceRatio })
    expectClose(byRatio.thrust, bySpeed.thrust, 1e-12)
    expectClose(bySpeed.advanceRatio, (Math.PI * 58) / 190, 1e-14)
  })

  it('is rotor.bladeElement in other coefficients: C_T by pi^3/4, C_P by pi^4/4', () => {
    const { thrustCoefficient, powerCoefficient } = propeller.bladeElement({ ...three, speed: 58 })
    const turned = rotor.bladeElement({ ...three, collective: 0, axialSpeed: 58 })
    expectClose(thrustCoefficient, (Math.PI ** 3 / 4) * turned.thrustCoefficient, 1e-12)
    expectClose(powerCoefficient, (Math.PI ** 4 / 4) * turned.torqueCoefficient, 1e-12)
  })

  it('shifts the twist to its blade angle; without one the table’s own angles stand', () => {
    const own = propeller.bladeElement({ ...three, speed: 58 })
    expectClose(own.bladeAngle, 27 * u.deg, 1e-12)
    expectClose(propeller.bladeElement({ ...three, speed: 58, bladeAngle: 27 * u.deg }).thrust, own.thrust, 1e-12)
    expect(propeller.bladeElement({ ...three, speed: 58, bladeAngle: 30 * u.deg }).thrust).toBeGreaterThan(own.thrust)
  })

  it('brakes past the advance ratio of no thrust, with no efficiency', () => {
    const fast = propeller.bladeElement({ ...three, advanceRatio: 2.5 })
    expect(fast.thrust).toBeLessThan(0)
    expect(fast.efficiency).toBe(0)
  })

  it('advises on stall at rest', () => {
    expect(codes(() => propeller.bladeElement({ ...three, speed: 0, bladeAngle: 40 * u.deg }))).toEqual(['STALL'])
  })

  it.each<[string, object, RegExp]>([
    ['neither speed nor advance ratio', {}, /speed or advanceRatio is missing/],
    ['both', { speed: 1, advanceRatio: 1 }, /given together/],
    ['a negative speed', { speed: -1 }, /speed is -1/],
    ['a negative advance ratio', { advanceRatio: -1 }, /advanceRatio is -1/],
    ['a blade angle in degrees', { speed: 1, bladeAngle: 27 }, /bladeAngle is 27 rad/],
    ['no blade angle without a twist table', { speed: 1, twist: -0.3 }, /bladeAngle is missing/],
    ['no radius', { speed: 1, radius: 0 }, /propeller.bladeElement: radius/],
    ['a misspelt option', { speed: 1, pitch: 1 }, /option "pitch"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => propeller.bladeElement({ ...three, ...options })).toThrow(message)
  })
})

describe('propeller.bladeAngleForThrust and propeller.tipSpeedForThrust', () => {
  const own = propeller.bladeElement({ ...three, speed: 58 })
  const { tipSpeed: _, ...fixed } = three

  it('give back the blade angle and the tip speed of a thrust', () => {
    const governed = propeller.bladeAngleForThrust({ ...three, speed: 58, thrust: own.thrust })
    expectClose(governed.bladeAngle, 27 * u.deg, 1e-9)
    const geared = propeller.tipSpeedForThrust({ ...fixed, speed: 58, thrust: own.thrust })
    expectClose(geared.tipSpeed, 190, 1e-9)
    expectClose(geared.power, own.power, 1e-8)
    // Slower than the first step, at rest.
    expectClose(propeller.tipSpeedForThrust({ ...fixed, speed: 0, thrust: 1 }).thrust, 1, 1e-8)
  })

  it('advise as propeller.bladeElement does', () => {
    const fast = { ...three, speed: 58, thrust: 500, tipSpeed: 280 }
    expect(codes(() => propeller.bladeAngleForThrust(fast))).toEqual(['SECTION_MACH'])
    expect(codes(() => propeller.tipSpeedForThrust({ ...fixed, speed: 58, thrust: 5000 }))).toContain('SECTION_MACH')
  })

  it.each<[string, () => unknown, RegExp]>([
    ['no thrust', () => propeller.bladeAngleForThrust({ ...three, speed: 58, thrust: 0 }), /thrust is 0 N/],
    ['no speed', () => propeller.bladeAngleForThrust({ ...three, thrust: 1 }), /speed or advanceRatio is missing/],
    ['too much', () => propeller.bladeAngleForThrust({ ...three, speed: 9, thrust: 1e6 }), /all these blades give/],
    ['an angle', () => propeller.bladeAngleForThrust({ ...three, bladeAngle: 1 } as never), /option "bladeAngle"/],
    ['no thrust of fixed blades', () => propeller.tipSpeedForThrust({ ...fixed, speed: 58, thrust: 0 }), /thrust is 0/],
    ['a negative speed', () => propeller.tipSpeedForThrust({ ...fixed, speed: -1, thrust: 1 }), /speed is -1/],
    ['no sound', () => propeller.tipSpeedForThrust({ ...fixed, speedOfSound: 0, speed: 1, thrust: 1 }), /speedOfSound/],
    ['tips past sound', () => propeller.tipSpeedForThrust({ ...fixed, speed: 58, thrust: 1e6 }), /below the speed of/],
    ['a tip speed', () => propeller.tipSpeedForThrust({ ...three, speed: 1, thrust: 1 } as never), /option "tipSpeed"/],
  ])('refuse %s', (_, call, message) => {
    expect(call).toThrow(message)
  })
})

describe('propeller.efficiencyMap', () => {
  const map = propeller.efficiencyMap({
    ...three,
    advanceRatios: [0.4, 0.8, 1.2],
    bladeAngles: [20 * u.deg, 30 * u.deg],
  })

  it('holds propeller.bladeElement point by point, a row per blade angle', () => {
    const point = propeller.bladeElement({ ...three, advanceRatio: 1.2, bladeAngle: 30 * u.deg })
    expectClose(map.efficiency[5] ?? 0, point.efficiency, 1e-12)
    expectClose(map.thrustCoefficient[5] ?? 0, point.thrustCoefficient, 1e-12)
    expectClose(map.powerCoefficient[5] ?? 0, point.powerCoefficient, 1e-12)
  })

  it('chooses a finer pitch when slow and a coarser when fast', () => {
    const angles = map.best.map((one) => Math.round(one.bladeAngle / u.deg))
    expect(angles).toEqual([20, 20, 30])
    for (const [column, one] of map.best.entries())
      expect(one.efficiency).toBe(Math.max(map.efficiency[column] ?? 0, map.efficiency[column + 3] ?? 0))
  })

  it('advises of its best point', () => {
    const fast = { ...three, tipSpeed: 280, advanceRatios: [0.8], bladeAngles: [0.4] }
    expect(codes(() => propeller.efficiencyMap(fast))).toEqual(['SECTION_MACH'])
  })

  it.each<[string, object, RegExp]>([
    ['no advance ratios', { advanceRatios: [] }, /advanceRatios is a list of 0/],
    ['advance ratios that fall', { advanceRatios: [1, 0.5] }, /advanceRatios\[1\].*above the one before it, 1/],
    ['a negative advance ratio', { advanceRatios: [-1] }, /advanceRatios\[0\] is -1/],
    ['blade angles in degrees', { bladeAngles: [20] }, /bladeAngles\[0\] is 20 rad/],
    ['too many points', { advanceRatios: Array.from({ length: 10_001 }, (_, i) => i / 5000) }, /at most 10000 points/],
    ['a misspelt option', { angles: [1] }, /option "angles"/],
  ])('refuses %s', (_, options, message) => {
    const call = () => propeller.efficiencyMap({ ...three, advanceRatios: [1], bladeAngles: [0.5], ...options })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })

  it('is drawn as contours with the best angle, or as a line for a fixed pitch', () => {
    expect(figure.efficiencyMap({ map }).marks.map((one) => one.mark)).toEqual(['contour', 'line'])
    const fixed = propeller.efficiencyMap({ ...three, advanceRatios: [0.4, 0.8], bladeAngles: [0.4] })
    const drawn = figure.efficiencyMap({ map: fixed, caption: 'Fixed pitch', description: 'One blade angle.' })
    expect(drawn.marks.map((one) => one.mark)).toEqual(['line'])
    expect(drawn).toMatchObject({ caption: 'Fixed pitch', description: 'One blade angle.' })
  })

  it('is refused by figure.efficiencyMap where it is none', () => {
    expect(() => figure.efficiencyMap({ map: {} as never })).toThrow(/map is a record; it must be a map/)
    expect(() => figure.efficiencyMap({ map: { ...map, efficiency: [1] } })).toThrow(
      /a list of 1; it must be a list of 6/,
    )
    expect(() => figure.efficiencyMap({ maps: map } as never)).toThrow(/did you mean "map"/)
  })
})

describe('propeller.minimumInducedLoss', () => {
  const wish = {
    ...air.standard(0),
    thrust: 1200,
    speed: 58,
    radius: 0.9,
    rootCutout: 0.15,
    blades: 3,
    tipSpeed: 190,
    liftCoefficient: 0.6,
    section: polar,
  }
  const design = propeller.minimumInducedLoss(wish)

  it('gives its thrust and efficiency when analysed by propeller.bladeElement, to 0.5 %', () => {
    const { chord, twist } = design
    const met = propeller.bladeElement({ ...three, chord, twist, speed: 58 })
    expectClose(met.thrust, 1200, 0.005)
    expectClose(met.efficiency, design.efficiency, 0.005)
  })

  it('is an optimum: at equal thrust another twist or taper does no better in propeller.bladeElement', () => {
    const efficiencyOf = (change: (x: number) => number, widen: (x: number) => number) => {
      const at = (bladeAngle: number) =>
        propeller.bladeElement({
          ...three,
          chord: design.chord.map(([x, c]) => [x, c * widen(x)] as const),
          twist: design.twist.map(([x, angle]) => [x, angle + change(x)] as const),
          speed: 58,
          bladeAngle,
        })
      let [low, high] = [design.bladeAngle - 0.1, design.bladeAngle + 0.1]
      while (high - low > 1e-9) {
        const middle = (low + high) / 2
        if (at(middle).thrust > 1200) high = middle
        else low = middle
      }
      return at(low).efficiency
    }
    const best = efficiencyOf(
      () => 0,
      () => 1,
    )
    const others = [0.1, -0.1].flatMap((slope) => [
      efficiencyOf(
        (x) => slope * (x - 0.75),
        () => 1,
      ),
      efficiencyOf(
        () => 0,
        (x) => 1 + 8 * slope * (x - 0.75),
      ),
    ])
    for (const other of others) expect(other).toBeLessThan(best + 2e-4)
    expect(Math.min(...others)).toBeLessThan(best - 5e-4)
  })

  it('gives a thrust for a power and back', () => {
    const { thrust: _, ...rest } = wish
    const byPower = propeller.minimumInducedLoss({ ...rest, power: design.power })
    expectClose(byPower.thrust, 1200, 1e-6)
    expectClose(design.thrust, 1200, 1e-9)
    expectClose(design.efficiency, (1200 * 58) / design.power, 1e-9)
  })

  it('is near the worked light-aircraft propeller of Adkins and Liebeck, 0.870 (from memory; section drag assumed)', () => {
    const classic = propeller.minimumInducedLoss({
      ...air.standard(0),
      power: 70 * u.hp,
      speed: (110 * u.mi) / u.h,
      radius: 2.875 * u.ft,
      rootCutout: 0.5 * u.ft,
      blades: 2,
      tipSpeed: 2400 * u.rpm * 2.875 * u.ft,
      liftCoefficient: 0.7,
      section: { liftSlope: 5.9, minimumDrag: 0.0065, zeroLiftAngle: -4 * u.deg, dragRise: 0.002 },
    })
    expectClose(classic.efficiency, 0.87, 0.01)
  })

  it('advises on heavy loading', () => {
    expect(codes(() => propeller.minimumInducedLoss({ ...wish, speed: 25, thrust: 1500 }))).toEqual(['HEAVY_LOADING'])
    expect(codes(() => propeller.minimumInducedLoss(wish))).toEqual([])
  })

  it.each<[string, object, RegExp]>([
    ['neither thrust nor power', { thrust: undefined }, /thrust or power is missing/],
    ['both', { power: 1e5 }, /given together/],
    ['no thrust', { thrust: 0 }, /thrust is 0 N/],
    ['no power', { thrust: undefined, power: 0 }, /power is 0 W/],
    ['a thrust beyond the disk', { thrust: 1e6 }, /thrust is 1000000 N; it must be less than about .* A larger disk/],
    ['rest', { speed: 0 }, /speed/],
    ['no radius', { radius: 0 }, /radius/],
    ['no hub', { rootCutout: 0 }, /rootCutout/],
    ['a hub beyond the blade', { rootCutout: 0.9 }, /rootCutout/],
    ['half a blade', { blades: 1.5 }, /blades is 1.5/],
    ['a tip that stands', { tipSpeed: 0 }, /tipSpeed/],
    ['no air', { density: 0 }, /density/],
    ['no viscosity', { dynamicViscosity: 0 }, /dynamicViscosity/],
    ['no sound', { speedOfSound: 0 }, /speedOfSound/],
    ['no lift', { liftCoefficient: 0 }, /liftCoefficient/],
    ['a lift past the stall', { liftCoefficient: 1.9 }, /liftCoefficient is 1.9.*one that the section reaches/],
    ['too few elements', { elements: 4 }, /elements/],
    ['no section', { section: undefined }, /section/],
    ['a misspelt option', { cl: 1 }, /option "cl"/],
  ])('refuses %s', (_, options, message) => {
    const call = () => propeller.minimumInducedLoss({ ...wish, ...options } as typeof wish)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('figure.rotorPolar', () => {
  const loads = [-0.02, 0.05, 0.1].map((collective) =>
    rotor.bladeElement({ ...three, twist: 0, chord: 0.12, collective, section: { liftSlope: 5.7, minimumDrag: 0.01 } }),
  )

  it('draws the rotors and the ideal one below them', () => {
    const drawn = figure.rotorPolar({ rotors: [{ label: 'three', loads }], description: 'Torque over thrust.' })
    const [points, ideal] = drawn.marks
    if (points?.mark !== 'line' || ideal?.mark !== 'line') throw new Error('the polar has no lines')
    expect(points.y[2]).toBeGreaterThan(ideal.y[32] ?? Number.POSITIVE_INFINITY)
    expect(ideal.label).toBe('ideal')
  })

  it('leaves the ideal rotor out where there is no thrust', () => {
    expect(figure.rotorPolar({ rotors: [{ loads: loads.slice(0, 1) }] }).marks).toHaveLength(1)
  })

  it('refuses no rotors, no loads and a misspelt option', () => {
    expect(() => figure.rotorPolar({ rotors: [] })).toThrow(/rotors is a list of 0/)
    expect(() => figure.rotorPolar({ rotors: [{ loads: [] }] })).toThrow(/rotors\[0\].loads is a list of 0/)
    expect(() => figure.rotorPolar({ rotor: [] } as never)).toThrow(/did you mean "rotors"/)
  })
})
