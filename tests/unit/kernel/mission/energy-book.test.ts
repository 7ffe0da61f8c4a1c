/** The book of energy of a mission, kept a second time by a quadrature that knows nothing of the kernel's steps. */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { options } from './craft.js'

const { battery, mission, u } = preloaded

/** A cell without knots between its ends and without temperature in its resistance, so that orders can be seen. */
const empty = { voltage: 3, resistance: 0.05 }
const full = { voltage: 4.2, resistance: 0.02 }
const cell = battery.cell({
  capacity: 3 * u.Ah,
  mass: 0.048,
  openCircuitVoltage: [empty.voltage, full.voltage],
  resistance: [empty.resistance, full.resistance],
  minimumVoltage: 2.5,
  activationTemperature: 0,
})
const store = { cell, series: 200, parallel: 60 }
const aircraft = mission.aircraft({ ...options, battery: store })

const flyWith = (maxStep: number) =>
  mission.fly({
    aircraft,
    maxStep,
    segments: [
      { kind: 'hover', time: 180 * u.s },
      { kind: 'cruise', time: 900 * u.s, speed: 58 * u.mps },
      { kind: 'hover', name: 'landing', time: 180 * u.s },
    ],
  })

/** Trapezoids over the path: charge from the path, current from the circuit's quadratic, both written out here. */
function keepBook(history: ReturnType<typeof flyWith>['history']) {
  const count = store.series * store.parallel
  const rates = history.time.map((_, at) => {
    const charge = history.stateOfCharge[at] ?? 0
    const voltage = empty.voltage + (full.voltage - empty.voltage) * charge
    const resistance = empty.resistance + (full.resistance - empty.resistance) * charge
    const power = (history.power[at] ?? 0) / count
    const current = (voltage - Math.sqrt(voltage ** 2 - 4 * resistance * power)) / (2 * resistance)
    return { stored: count * voltage * current, heat: count * current ** 2 * resistance, delivered: count * power }
  })
  const book = { stored: 0, heat: 0, delivered: 0 }
  for (let at = 1; at < rates.length; at += 1) {
    const step = (history.time[at] ?? 0) - (history.time[at - 1] ?? 0)
    for (const key of ['stored', 'heat', 'delivered'] as const)
      book[key] += 0.5 * step * ((rates[at]?.[key] ?? 0) + (rates[at - 1]?.[key] ?? 0))
  }
  return book
}

describe('the energy that mission.fly draws from the store', () => {
  const steps = [90, 45, 22.5]

  it('is the integral of V_oc dQ: what was delivered and I^2 R, by an independent quadrature of second order', () => {
    const errors = steps.map((maxStep) => {
      const flown = flyWith(maxStep)
      expect(flown.feasible).toBe(true)
      const book = keepBook(flown.history)
      expectClose(book.stored, flown.stored, 5e-4)
      expectClose(book.heat, flown.heat, 1e-2)
      expectClose(book.delivered, flown.energy, 1e-12)
      expectClose(book.stored, book.delivered + book.heat, 1e-12)
      return Math.abs(book.stored / flown.stored - 1)
    })
    for (const at of [0, 1]) expect(Math.log2((errors[at] ?? 1) / (errors[at + 1] ?? 1))).toBeCloseTo(2, 1)
  })

  it('closes with the fourth order of its rule', () => {
    const open = [180, 90, 45].map((maxStep) => Math.abs(flyWith(maxStep).openBalance))
    for (const at of [0, 1]) {
      const order = Math.log2((open[at] ?? 1) / (open[at + 1] ?? 1))
      expect(order, open.join(' ')).toBeGreaterThan(3.3)
      expect(order, open.join(' ')).toBeLessThan(5.5)
    }
  })

  it('closes on a cell with a table as well, transitions and climbs included', () => {
    const flown = mission.fly({
      aircraft: { ...options, battery: { ...options.battery, conductance: 100 } },
      ambient: 290 * u.K,
      segments: [
        { kind: 'hover', time: 30 },
        { kind: 'transition' },
        { kind: 'climb', to: 800, rate: 4 },
        { kind: 'cruise', distance: 40_000 },
        { kind: 'descent', to: 0 },
        { kind: 'return transition' },
        { kind: 'landing', time: 30 },
      ],
    })
    expect(Math.abs(flown.openBalance)).toBeLessThan(3e-7)
  })
})
