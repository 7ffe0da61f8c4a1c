import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { Figure } from '../../../../shared/contracts/index.js'
import { itRefuses } from '../wing/refusals.js'

const { drag, figure } = preloaded

describe('figure.dragBreakdown(options)', () => {
  it('orders parts by size and names their shares, as a figure of the contract', () => {
    const built = drag.buildUp([
      { name: 'gear', dragArea: 0.1 },
      { name: 'liftRotors', dragArea: 0.3 },
    ])
    const drawn = figure.dragBreakdown({ dragAreas: built.dragAreas, description: 'Rotors lead.' })
    expect(Figure.parse(drawn)).toEqual(drawn)
    expect(drawn.marks).toMatchObject([{ names: ['lift rotors (75.0 %)', 'gear (25.0 %)'], value: [0.3, 0.1] }])
    expect(drawn.x.unit).toBe('m^2')
  })

  itRefuses(figure.dragBreakdown, { dragAreas: { wing: 0.1 } }, [
    ['a list', { dragAreas: [1] }],
    ['a negative area', { dragAreas: { wing: -1 } }],
    ['nothing in sum', { dragAreas: { wing: 0 } }],
    ['a sum beyond numbers', { dragAreas: { wing: 1.7e308, body: 1.7e308 } }],
  ])
})

describe('figure.dragPolar(options)', () => {
  const polar = drag.polar({ zeroLiftDrag: 0.03, aspectRatio: 10, spanEfficiency: 0.8 })
  const points = { lift: [-0.2, 0.5, 1], drag: [0.031, 0.042, 0.07] }

  it('draws the parabola through the lifts of its points, and the points', () => {
    const drawn = figure.dragPolar({ polar, points, description: 'Fits.' })
    expect(Figure.parse(drawn)).toEqual(drawn)
    const [line, dots, best] = drawn.marks
    expect(line?.mark === 'line' && [line.y[0], line.y.at(-1)]).toEqual([-0.2, 1])
    expect(dots).toMatchObject({ mark: 'dot', y: points.lift, x: points.drag })
    expect(best).toMatchObject({ mark: 'rule', at: polar.liftAtBestRatio })
  })

  it('draws to a lift of 1.5 without points, and no rule beyond the picture', () => {
    expect(figure.dragPolar({ polar }).marks).toHaveLength(2)
    expect(figure.dragPolar({ polar, upTo: 0.5 }).marks).toHaveLength(1)
  })

  itRefuses(figure.dragPolar, { polar } as Parameters<typeof figure.dragPolar>[0], [
    ['no polar', { polar: null }],
    ['lists of unequal length', { points: { lift: [1], drag: [1, 2] } }],
    ['a point that is no number', { points: { lift: [1], drag: [Number.NaN] } }],
    ['an unknown field of the points', { points: { ...points, angle: [1] } }],
    ['an end below nothing', { upTo: -1 }],
    ['a caption that is no text', { caption: 5 }],
    ['a description that is no text', { description: 5 }],
    ['a picture beyond numbers', { upTo: 1e200 }],
  ])
})

describe('figure.stowageComparison(options)', () => {
  const comparison = drag.compareStowage({
    records: [
      drag.stowageRecord({ name: 'bare', dragArea: 0.3, mechanismMass: 0, source: 'invented' }),
      drag.stowageRecord({ name: 'hidden', dragArea: 0.05, mechanismMass: 40, source: 'invented' }),
      drag.stowageRecord({ name: 'anvil', dragArea: 0.3, mechanismMass: 900, source: 'invented' }),
    ],
    mass: 1600,
    airframeDragArea: 0.42,
    wingArea: 15,
    aspectRatio: 11,
    spanEfficiency: 0.8,
    density: 1.1,
    speed: 58,
  })

  it('spans the band of each way, with its estimate and verdict in the name and a rule at no gain', () => {
    const drawn = figure.stowageComparison({ comparison, description: 'Hidden pays.' })
    expect(Figure.parse(drawn)).toEqual(drawn)
    const [bars, rule] = drawn.marks
    expect(bars?.mark === 'bar' && bars.names).toEqual([
      '+0 %, reference: bare',
      '+21 %, pays: hidden',
      '-36 %, does not pay: anvil',
    ])
    expect(bars?.mark === 'bar' && bars.start?.[1]).toBe(comparison[1]?.gain.range.low)
    expect(rule).toMatchObject({ mark: 'rule', axis: 'x', at: 0 })
  })

  it('shows endurance instead of range where asked', () => {
    const drawn = figure.stowageComparison({ comparison, goal: 'endurance', caption: 'Loiter' })
    expect(drawn.caption).toBe('Loiter')
    expect(drawn.marks[0]?.mark === 'bar' && drawn.marks[0].value[1]).toBe(comparison[1]?.gain.endurance.high)
  })

  itRefuses(figure.stowageComparison, { comparison } as Parameters<typeof figure.stowageComparison>[0], [
    ['an empty list', { comparison: [] }],
    ['an entry that is no comparison', { comparison: [5] }],
    [
      'a gain that is no number',
      { comparison: [{ name: 'x', gain: { range: { low: 0, best: 0, high: Number.NaN } } }] },
    ],
    ['an unknown goal', { goal: 'speed' }],
  ])
})
