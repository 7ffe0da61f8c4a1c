import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { powertrain, u } = preloaded
const page = { continuousTorque: 250, ratedSpeed: 125, efficiency: 0.94 }
const motor = powertrain.motor(page)

describe('powertrain.motor(options)', () => {
  it.each([0, 0.05, 1 / 6])(
    'has its greatest efficiency where the data page says, with a constant share of %d',
    (constantShare) => {
      const given = powertrain.motor({ ...page, constantShare, bestTorque: 200, bestSpeed: 110 })
      const at = (torque: number, speed: number) => powertrain.motorAt({ motor: given, torque, speed }).efficiency
      expectClose(at(200, 110), 0.94, 1e-13)
      for (const torque of [150, 195, 205, 260]) expect(at(torque, 110)).toBeLessThan(0.94)
      for (const speed of [80, 107, 113, 140]) expect(at(200, speed)).toBeLessThan(0.94)
    },
  )

  it('advises an efficiency above motors built', () => {
    expect(listenWhile(() => powertrain.motor({ ...page, efficiency: 0.98 })).advisories).toMatchObject([
      { code: 'MOTOR_EFFICIENCY' },
    ])
  })

  it.each<[string, object, RegExp]>([
    ['no torque', { continuousTorque: 0 }, /continuousTorque/],
    ['an efficiency of 1', { efficiency: 1 }, /efficiency/],
    ['a peak below the continuous torque', { peakTorque: 100 }, /peakTorque is 100 N m.*at least 250/],
    ['a greatest speed below the rated one', { maximumSpeed: 100 }, /maximumSpeed/],
    ['a constant share above a sixth', { constantShare: 0.2 }, /constantShare/],
    ['an unknown option', { power: 1 }, /option "power"/],
  ])('refuses %s', (_, wrong, message) => {
    expect(() => powertrain.motor({ ...page, ...wrong })).toThrow(message)
  })
})

describe('powertrain.motorAt({ motor, torque, speed })', () => {
  it('adds its losses up to the electrical power', () => {
    const point = powertrain.motorAt({ motor, torque: 180, speed: 100 })
    expectClose(point.copperLoss + point.ironLoss + point.windageLoss + point.constantLoss, point.loss, 1e-14)
    expectClose(point.shaftPower + point.loss, point.electricalPower, 1e-14)
    expect(point).toMatchObject({ ok: true, status: 'ok', message: '' })
  })

  it('says what it cannot hold, with a signed deficit and an advisory', () => {
    const heard = listenWhile(() => {
      const over = powertrain.motorAt({ motor, torque: 520, speed: 100 })
      expect(over).toMatchObject({ ok: false, status: 'torque', torqueDeficit: 20 })
      expect(over.message).toMatch(/cannot hold 520 N m: its peak torque is 500 N m/)
      expect(powertrain.motorAt({ motor, torque: 100, speed: 200 })).toMatchObject({ ok: false, status: 'speed' })
    })
    expect(heard.advisories.map((one) => one.code)).toEqual(['MOTOR_LIMIT', 'MOTOR_LIMIT'])
  })

  it('has no efficiency at rest, and refuses a motor that is none', () => {
    expect(powertrain.motorAt({ motor, torque: 0, speed: 0 })).toMatchObject({ efficiency: 0, electricalPower: 0 })
    const none = { torque: 5 } as unknown as typeof motor
    expect(() => powertrain.motorAt({ motor: none, torque: 1, speed: 1 })).toThrow(/as powertrain.motor gives it/)
    expect(() => powertrain.motorAt({ motor: { ...motor, copper: Number.NaN }, torque: 1, speed: 1 })).toThrow(
      /motor.copper/,
    )
    expect(() => powertrain.motorAt({ motor: { ...motor, peakTorque: 0 }, torque: 1, speed: 1 })).toThrow(/peakTorque/)
    expect(() => powertrain.motorAt({ motor, torque: -1, speed: 1 })).toThrow(/torque/)
  })
})

describe('powertrain.overload(options)', () => {
  it('lasts at the continuous torque, and for the textbook time above it', () => {
    expect(powertrain.overload({ motor, torque: 250, speed: 125 })).toMatchObject({ lasting: true })
    const over = powertrain.overload({ motor, torque: 450, speed: 125, startShare: 0.4 })
    const x = over.heatShare
    expectClose(over.time ?? 0, 120 * Math.log((x - 0.4) / (x - 1)), 1e-12)
    const there = powertrain.overload({ motor, torque: 450, speed: 125, startShare: 0.4, duration: over.time ?? 0 })
    expectClose(there.endShare, 1, 1e-12)
  })

  it('gives no time to a motor that starts hot, and refuses a start beyond', () => {
    expect(powertrain.overload({ motor, torque: 450, speed: 125, startShare: 1 }).time).toBe(0)
    expect(() => powertrain.overload({ motor, torque: 450, speed: 125, startShare: 1.1 })).toThrow(/startShare/)
  })
})

describe('powertrain.efficiencyMap(options)', () => {
  it('is powertrain.motorAt over a grid, with its best point', () => {
    const torque = [50, 150, 250, 400]
    const speed = [20, 60, 125]
    const map = powertrain.efficiencyMap({ motor, torque, speed })
    expect(map.efficiency[1]?.[2]).toBe(powertrain.motorAt({ motor, torque: 150, speed: 125 }).efficiency)
    expect(map.best).toMatchObject({ torque: 250, speed: 125 })
  })

  it('refuses an empty axis and a negative speed', () => {
    expect(() => powertrain.efficiencyMap({ motor, torque: [], speed: [1] })).toThrow(/a list of 1 to 200/)
    expect(() => powertrain.efficiencyMap({ motor, torque: [1], speed: [-1] })).toThrow(/speed\[0\]/)
  })
})

describe('powertrain.controllerAt({ controller, power })', () => {
  const bridge = powertrain.controller({ ratedPower: 60 * u.kW, efficiency: 0.97 })

  it('loses its standing share with no load, and more than in proportion above', () => {
    const idle = powertrain.controllerAt({ controller: bridge, power: 0 })
    const full = powertrain.controllerAt({ controller: bridge, power: 60 * u.kW })
    expectClose(idle.loss, 0.1 * full.loss, 1e-12)
    expect(idle.efficiency).toBe(0)
    expect(powertrain.controllerAt({ controller: bridge, power: 30 * u.kW }).efficiency).toBeGreaterThan(0.96)
  })

  it('advises above its rated power and above controllers built, and refuses what is none', () => {
    const heard = listenWhile(() => {
      powertrain.controllerAt({ controller: bridge, power: 70 * u.kW })
      powertrain.controller({ ratedPower: 1, efficiency: 0.995 })
    })
    expect(heard.advisories.map((one) => one.code)).toEqual(['CONTROLLER_OVERLOAD', 'CONTROLLER_EFFICIENCY'])
    const none = {} as typeof bridge
    expect(() => powertrain.controllerAt({ controller: none, power: 1 })).toThrow(/as powertrain.controller gives it/)
    expect(() => powertrain.controllerAt({ controller: { ...bridge, square: -1 }, power: 1 })).toThrow(/square/)
    expect(() =>
      powertrain.controller({ ratedPower: 1, efficiency: 0.9, standbyShare: 0.7, squareShare: 0.4 }),
    ).toThrow(/squareShare/)
  })
})

describe('powertrain.chain(options)', () => {
  const bridge = powertrain.controller({ ratedPower: 60 * u.kW, efficiency: 0.97 })
  const drive = { shaftPower: 25 * u.kW, shaftSpeed: 125, motor, controller: bridge }

  it('keeps the book: battery power is shaft power and the losses, whatever the chain', () => {
    for (const more of [{}, { gearRatio: 1.1 }, { cableResistance: 0.01, voltage: 700 }, { count: 8 }]) {
      const one = powertrain.chain({ ...drive, ...more })
      const losses = Object.values(one.losses).reduce((sum, loss) => sum + loss, 0)
      expectClose(losses, one.loss, 1e-12)
      const count = 'count' in more ? 8 : 1
      expectClose(one.batteryPower, count * drive.shaftPower + one.loss, 1e-12)
      expectClose(one.efficiency, (count * drive.shaftPower) / one.batteryPower, 1e-12)
    }
  })

  it('turns a faster motor through a gear, at less torque and with its loss', () => {
    const fast = powertrain.motor({ continuousTorque: 60, ratedSpeed: 500, efficiency: 0.94 })
    const geared = powertrain.chain({ ...drive, motor: fast, gearRatio: 4 })
    expectClose(geared.motorTorque, drive.shaftPower / 0.985 / 500, 1e-13)
    expectClose(geared.losses.gear, drive.shaftPower * (1 / 0.985 - 1), 1e-12)
  })

  it('carries the cable current that its loss belongs to', () => {
    const { current = 0, losses, batteryPower } = powertrain.chain({ ...drive, cableResistance: 0.02, voltage: 400 })
    expectClose(losses.cable, current ** 2 * 0.02, 1e-13)
    expectClose(current * 400, batteryPower, 1e-12)
    expectClose(
      powertrain.chain({ ...drive, voltage: 400 }).current ?? 0,
      powertrain.chain(drive).batteryPower / 400,
      1e-13,
    )
  })

  it('answers beyond a limit with a signed deficit, a sentence and an advisory', () => {
    const heard = listenWhile(() => {
      const over = powertrain.chain({ ...drive, shaftPower: 70 * u.kW })
      expect(over).toMatchObject({ ok: false, status: 'torque' })
      expectClose(over.deficit, 70e3 - 500 * 125, 1e-12)
      const thin = powertrain.chain({ ...drive, cableResistance: 2, voltage: 300 })
      expect(thin).toMatchObject({ ok: false, status: 'voltage' })
      expect(thin.message).toMatch(/lets 11.25 kW through at most/)
      expect(thin.deficit).toBeGreaterThan(0)
    })
    expect(heard.advisories.map((one) => one.code)).toContain('POWERTRAIN_LIMIT')
    expect(powertrain.chain(drive).deficit).toBeLessThan(0)
  })

  it('advises where the motor is too hot to last', () => {
    const heard = listenWhile(() => powertrain.chain({ ...drive, shaftPower: 45 * u.kW }))
    expect(heard.advisories).toMatchObject([{ code: 'MOTOR_OVERLOAD' }])
  })

  it.each<[string, object, RegExp]>([
    ['a negative power', { shaftPower: -1 }, /shaftPower/],
    ['no speed', { shaftSpeed: 0 }, /shaftSpeed/],
    ['a cable without a voltage', { cableResistance: 0.1 }, /voltage is missing.*for its current/],
    ['half a chain', { count: 1.5 }, /count/],
    ['a controller that is none', { controller: 5 }, /as powertrain.controller gives it/],
    ['an unknown option', { shaftTorque: 5 }, /option "shaftTorque"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => powertrain.chain({ ...drive, ...wrong } as Parameters<typeof powertrain.chain>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
