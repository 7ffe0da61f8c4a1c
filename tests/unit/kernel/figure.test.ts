import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { Figure } from '../../../shared/contracts/index.js'

const { figure, u } = preloaded
const axes = {
  caption: 'Power to fly level',
  x: { label: 'speed', values: [40, 50, 60], unit: 'm/s' },
  y: { label: 'power', unit: 'kW' },
}

describe('figure.line(options)', () => {
  it('is a figure of the contract, in SI, with dimension and unit text per axis', () => {
    const drawn = figure.line({
      ...axes,
      description: 'Falls and rises.',
      y: { ...axes.y, from: 0, to: 100 * u.kW, scale: 'linear' },
      series: [
        { label: 'clean', values: Float64Array.of(52_000, 58_000, 84_000) },
        { label: 'rotors out', x: [45, 55], values: [70_000, 80_000], ink: 'warning', broken: true },
      ],
      rules: [{ axis: 'x', at: 47, label: '1.3 stall speed' }],
    })
    expect(Figure.parse(drawn)).toEqual(drawn)
    expect(drawn.x).toEqual({ label: 'speed', dimension: 'm s^-1', unit: 'm/s' })
    expect(drawn.y).toMatchObject({ dimension: 'kg m^2 s^-3', unit: 'kW', from: 0, to: 100_000 })
    expect(drawn.marks).toEqual([
      { mark: 'line', x: [40, 50, 60], y: [52_000, 58_000, 84_000], ink: 'ink', label: 'clean' },
      { mark: 'line', x: [45, 55], y: [70_000, 80_000], ink: 'warning', broken: true, label: 'rotors out' },
      { mark: 'rule', axis: 'x', at: 47, ink: 'faint', label: '1.3 stall speed' },
    ])
  })

  it('takes one line as y.values, of a pure number where no unit is given', () => {
    const drawn = figure.line({ ...axes, y: { label: 'lift to drag', values: [9, 11, 10] } })
    expect(drawn.y).toEqual({ label: 'lift to drag', dimension: '1' })
    expect(drawn.marks).toHaveLength(1)
  })

  it('is frozen through, its numbers included, and leaves the caller’s lists alone', () => {
    const values = [1, 2, 3]
    const drawn = figure.line({ ...axes, series: [{ values }] })
    const [mark] = drawn.marks
    expect(Object.isFrozen(drawn) && Object.isFrozen(mark) && mark?.mark === 'line' && Object.isFrozen(mark.y)).toBe(
      true,
    )
    values.push(4)
    expect(mark?.mark === 'line' && mark.y).toEqual([1, 2, 3])
  })

  it('tells eight lines apart by ink and broken strokes', () => {
    const series = Array.from({ length: 8 }, () => ({ values: [1, 2, 3] }))
    const styles = figure.line({ ...axes, series }).marks.map((mark) => JSON.stringify({ ...mark, x: 0, y: 0 }))
    expect(new Set(styles).size).toBe(8)
  })

  it.each<[string, object, RegExp]>([
    ['no line', {}, /series is missing/],
    [
      'values that are not finite, with their place',
      { series: [{ values: [1, Number.NaN, 3] }] },
      /series\[0\]\.values\[1\]/,
    ],
    ['lists of unequal length', { series: [{ values: [1, 2] }] }, /a list of 2; it must be a list of 3/],
    ['a list that is none', { series: [{ values: 5 }] }, /series\[0\]\.values is 5/],
    ['an empty list', { series: [{ x: [], values: [] }] }, /a list of 0/],
    ['a unit it cannot read', { y: { label: 'P', unit: 'kq', values: [1, 2, 3] } }, /y\.unit/],
    ['a label that is no text', { y: { label: 5, values: [1, 2, 3] } }, /y\.label/],
    ['a caption too long', { caption: 'x'.repeat(401), series: [{ values: [1, 2, 3] }] }, /401 characters/],
    ['a scale it does not have', { y: { label: 'P', scale: 'log', values: [1, 2, 3] } }, /"logarithmic"/],
    ['an end that is not finite', { y: { label: 'P', from: Number.NaN, values: [1, 2, 3] } }, /y\.from/],
    ['an upper end that is not finite', { y: { label: 'P', to: Number.NaN, values: [1, 2, 3] } }, /y\.to/],
    ['an ink it does not have', { series: [{ values: [1, 2, 3], ink: 'red' }] }, /one of ink, accent/],
    ['a rule on no axis', { series: [{ values: [1, 2, 3] }], rules: [{ axis: 'z', at: 1 }] }, /rules\[0\]\.axis/],
    ['a rule nowhere', { series: [{ values: [1, 2, 3] }], rules: [{ axis: 'x' }] }, /rules\[0\]\.at/],
    ['an unknown option', { serie: [] }, /did you mean "series"/],
    ['an unknown option of an axis', { x: { ...axes.x, units: 'm' } }, /did you mean "unit"/],
    ['an unknown option of a series', { series: [{ value: [1] }] }, /did you mean "values"/],
    ['an unknown option of a rule', { series: [{ values: [1, 2, 3] }], rules: [{ axes: 'x' }] }, /did you mean "axis"/],
    ['a description that is no text', { description: 5, series: [{ values: [1, 2, 3] }] }, /description/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => figure.line({ ...axes, ...wrong } as Parameters<typeof figure.line>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('figure.bars(options)', () => {
  it('is horizontal bars of the contract', () => {
    const drawn = figure.bars({
      caption: 'Power',
      names: ['hover', 'cruise'],
      values: [3e5, 8e4],
      unit: 'kW',
      start: [0, 1],
    })
    expect(Figure.parse(drawn)).toEqual(drawn)
    expect(drawn.x).toEqual({ label: 'Power', dimension: 'kg m^2 s^-3', unit: 'kW' })
    expect(drawn.marks).toEqual([
      { mark: 'bar', names: ['hover', 'cruise'], value: [3e5, 8e4], start: [0, 1], ink: 'ink' },
    ])
  })

  it.each<[string, object, RegExp]>([
    ['names and values of unequal length', { names: ['a'] }, /names is a list of 1/],
    ['names that are no list', { names: 'ab' }, /names is the text "ab"/],
    ['a name that is no text', { names: ['a', 5] }, /names\[1\]/],
    ['starts of unequal length', { start: [0] }, /start is a list of 1/],
    ['an ink it does not have', { ink: 'blue' }, /ink/],
    ['an unknown option', { vales: [1] }, /did you mean "values"/],
    ['a description that is no text', { description: 5 }, /description/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () =>
      figure.bars({ caption: 'c', names: ['a', 'b'], values: [1, 2], ...wrong } as Parameters<typeof figure.bars>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('figure.massBreakdown({ masses })', () => {
  it('puts the heaviest first and writes mass and share beside the name', () => {
    const drawn = figure.massBreakdown({ masses: { cameraHead: 0.5, payload: 400, liftRotors: 52 } })
    expect(Figure.parse(drawn)).toEqual(drawn)
    const [bar] = drawn.marks
    expect(bar?.mark === 'bar' && bar.names).toEqual([
      'payload (400 kg, 88.4 %)',
      'lift rotors (52.0 kg, 11.5 %)',
      'camera head (500 g, 0.1 %)',
    ])
    expect(drawn.x).toEqual({ label: 'mass', dimension: 'kg', unit: 'kg' })
  })

  it.each<[string, object, RegExp]>([
    ['a negative mass', { masses: { a: 1, b: -1 } }, /masses\.b is -1 kg/],
    ['a mass that is not finite', { masses: { a: Number.NaN } }, /masses\.a is NaN/],
    ['no items', { masses: {} }, /nothing in sum/],
    ['masses that are no record', { masses: 5 }, /masses is 5/],
    ['an unknown option', { mases: {} }, /did you mean "masses"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => figure.massBreakdown(wrong as Parameters<typeof figure.massBreakdown>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
