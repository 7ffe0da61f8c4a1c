import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { Figure } from '../../../../shared/contracts/index.js'

const { battery, figure, mass, u } = preloaded
const cell = battery.cells.power18650
const flown = battery.run({ cell, series: 200, parallel: 60, profile: [{ power: 200 * u.kW, duration: 200 }] })

describe('figures of packs and masses', () => {
  it('figure.discharge draws voltage over time, or over charge, with the floor as a rule', () => {
    const overTime = Figure.parse(figure.discharge({ runs: { new: flown }, minimumVoltage: 500 }))
    expect(overTime.marks.map((mark) => mark.mark)).toEqual(['line', 'rule'])
    expect(overTime.x.dimension).toBe('s')
    const overCharge = Figure.parse(figure.discharge({ runs: { new: flown }, against: 'charge' }))
    expect(overCharge.x.dimension).toBe('1')
  })

  it('figure.packPower draws what is available as lines and what is needed as dots', () => {
    const curves = { warm: battery.availablePower({ cell }), cold: battery.availablePower({ cell, temperature: 270 }) }
    const needed = [{ name: 'last landing', stateOfCharge: 0.15, specificPower: 700 }]
    const drawn = Figure.parse(figure.packPower({ curves, needed }))
    expect(drawn.marks.map((mark) => mark.mark)).toEqual(['line', 'line', 'dot'])
    expect(figure.packPower({ curves }).marks).toHaveLength(2)
  })

  it('figure.ragone draws energy against power', () => {
    const drawn = Figure.parse(figure.ragone({ curves: { new: battery.ragone({ cell, points: 12 }) } }))
    expect(drawn.y.dimension).toBe('m^2 s^-2')
    expect(drawn.marks).toHaveLength(1)
  })

  it('figure.massSpread draws a bar per item and method', () => {
    const spreads = { gear: mass.spread('gear', { grossMass: 2000 }) }
    const [bar] = Figure.parse(figure.massSpread({ spreads })).marks
    expect(bar).toMatchObject({
      mark: 'bar',
      names: ['gear, raymer', 'gear, torenbeek', 'gear, cessna', 'gear, nicolai'],
    })
  })

  it.each<[string, () => unknown]>([
    ['no runs', () => figure.discharge({ runs: {} })],
    ['something that is no run', () => figure.discharge({ runs: { a: {} as typeof flown } })],
    ['an axis it does not know', () => figure.discharge({ runs: { a: flown }, against: 'energy' as 'time' })],
    ['no curves', () => figure.ragone({ curves: {} })],
    [
      'something that is no curve',
      () => figure.packPower({ curves: { a: {} as ReturnType<typeof battery.availablePower> } }),
    ],
    [
      'needs that are no list',
      () => figure.packPower({ curves: { a: battery.availablePower({ cell }) }, needed: 5 as unknown as [] }),
    ],
    ['no spreads', () => figure.massSpread({ spreads: {} })],
    ['something that is no spread', () => figure.massSpread({ spreads: { a: {} as ReturnType<typeof mass.spread> } })],
  ])('refuse %s', (_, call) => {
    expect(call).toThrow(InvalidInput)
  })
})
