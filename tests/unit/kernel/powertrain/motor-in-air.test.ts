/** `powertrain.motorInAir` against the heat transfer it stands on, its limits, and the methods that take its motor. */
import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { air, powertrain } = preloaded
const lift = powertrain.motor({ continuousTorque: 250, ratedSpeed: 125, efficiency: 0.94 })
const rated = { motor: lift, density: 1.225, temperature: 313.15 }

/** Dittus and Boelter (1930, from memory): Nu = 0.023 Re^0.8 Pr^0.4, with air's conductivity by the usual fit of handbooks. */
function dittusBoelter(density: number, temperature: number, speed: number): number {
  const diameter = 0.02
  const viscosity = 1.716e-5 * (temperature / 273.15) ** 1.5 * ((273.15 + 110.4) / (temperature + 110.4))
  const conductivity = 0.0241 * (temperature / 273.15) ** 1.5 * ((273.15 + 194) / (temperature + 194))
  const prandtl = (1005 * viscosity) / conductivity
  const reynolds = (density * speed * diameter) / viscosity
  return (conductivity / diameter) * 0.023 * reynolds ** 0.8 * prandtl ** 0.4
}

describe('powertrain.motorInAir', () => {
  it('gives the motor back in the air of its rating', () => {
    const same = powertrain.motorInAir(rated)
    expectClose(same.coolingRatio, 1, 1e-15)
    expectClose(same.continuousTorque, lift.continuousTorque, 1e-14)
    expectClose(same.motor.thermalTime, lift.thermalTime, 1e-15)
    expect(same.lossDeficit).toBeLessThan(0)
  })

  it.each([
    [0, 0, 1],
    [1500, 20, 1],
    [3000, -10, 1.3],
    [4000, 15, 0.7],
  ])('follows Dittus and Boelter within 2 percent at %d m, %d K, %d of the speed', (altitude, offset, speed) => {
    const there = air.standard(altitude, offset)
    const { coolingRatio } = powertrain.motorInAir({ motor: lift, ...there, airSpeedRatio: speed })
    const expected = dittusBoelter(there.density, there.temperature, speed) / dittusBoelter(1.225, 313.15, 1)
    expect(Math.abs(coolingRatio / expected - 1)).toBeLessThan(0.02)
  })

  it('lets a motor last exactly at the torque that it gives', () => {
    const { motor, continuousTorque } = powertrain.motorInAir({ motor: lift, ...air.standard(2500, 25) })
    expect(continuousTorque).toBeLessThan(lift.continuousTorque)
    expectClose(powertrain.motorAt({ motor, torque: continuousTorque, speed: 125 }).heatShare, 1, 1e-13)
    expect(powertrain.overload({ motor, torque: 1.01 * continuousTorque, speed: 125 }).lasting).toBe(false)
    expect(powertrain.overload({ motor, torque: 0.99 * continuousTorque, speed: 125 }).lasting).toBe(true)
  })

  it('holds an overload for less time in thin air, and warms more slowly', () => {
    const { motor } = powertrain.motorInAir({ ...rated, density: 0.8 })
    const [thin, dense] = [motor, lift].map((one) => powertrain.overload({ motor: one, torque: 400, speed: 125 }))
    expect(thin?.time ?? 0).toBeLessThan(dense?.time ?? 0)
    expect(motor.thermalTime).toBeGreaterThan(lift.thermalTime)
  })

  it('leaves a motor that a liquid cools alone but for the temperature', () => {
    const { heatRatio } = powertrain.motorInAir({ ...rated, density: 0.7, exponent: 0 })
    expectClose(heatRatio, 1, 1e-15)
  })

  it('gives no torque and a positive deficit where turning alone is too much', () => {
    const { motor, continuousTorque, continuousPower, lossDeficit } = powertrain.motorInAir({
      ...rated,
      airSpeedRatio: 0.3,
    })
    expect([continuousTorque, continuousPower]).toEqual([0, 0])
    expect(lossDeficit).toBeGreaterThan(0)
    expect(powertrain.motorAt({ motor, torque: 0, speed: 125 }).heatShare).toBeGreaterThan(1)
  })

  it('never gives more than the peak torque', () => {
    expect(powertrain.motorInAir({ ...rated, airSpeedRatio: 20 }).continuousTorque).toBe(lift.peakTorque)
  })

  it('advises outside the densities it was carried over to', () => {
    const heard = listenWhile(() => powertrain.motorInAir({ ...rated, density: 0.5 }))
    expect(heard.advisories.map(({ code }) => code)).toEqual(['COOLING_AIR'])
  })

  it.each<[string, object, RegExp]>([
    ['no density', { density: 0 }, /density/],
    ['air as hot as the windings may be', { temperature: 428.15 }, /temperature/],
    ['still air', { airSpeedRatio: 0 }, /airSpeedRatio/],
    ['an exponent above 1', { exponent: 1.1 }, /exponent/],
    ['windings that may not pass the air of the rating', { windingLimit: 310 }, /windingLimit/],
    ['a motor that is none', { motor: 5 }, /as powertrain.motor gives it/],
    ['an unknown option', { altitude: 5 }, /option "altitude"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => powertrain.motorInAir({ ...rated, ...wrong } as Parameters<typeof powertrain.motorInAir>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
