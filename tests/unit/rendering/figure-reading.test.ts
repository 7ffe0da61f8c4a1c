import { describe, expect, it } from 'vitest'
import type { Figure } from '../../../shared/contracts/index.js'
import { readFigure, spotAt, stepFor, stepSpot, stepWords } from '../../../shared/rendering/index.js'
import { contours, driverBars, massBars, planView, powerCurve, sideBySide, spread } from './figures.js'

const plain = (text: string | undefined) => (text ?? '').replaceAll('\u202f', ' ')
const reading = readFigure(powerCurve, 720)

describe('readFigure', () => {
  it('readFigure(figure, width) gives each series its points in words with units', () => {
    expect(reading.series.map(({ name, points }) => [name, points.length])).toEqual([
      ['rotors exposed', 9],
      ['folded', 9],
      ['flown', 2],
      ['lines across', 2],
    ])
    expect(plain(reading.series[0]?.points[0]?.words)).toBe('true airspeed 36 m/s, power required 47.80 kW')
    expect(plain(reading.series[2]?.points[0]?.words)).toBe('cruise: true airspeed 58 m/s, power required 81 kW')
    expect(plain(reading.series[3]?.points[0]?.words)).toBe('1.3 times stall: true airspeed 46.86 m/s')
  })

  it('readFigure(figure, width) reads between the points of a line, and nothing beyond its ends', () => {
    const line = reading.series[0]
    expect(plain(line?.at?.(36)?.words)).toBe('47.80 kW')
    const [first = 0, second = 0] = [36, 41].map((speed) => 0.31 * speed ** 3 + 1.2e6 / speed)
    expect(plain(line?.at?.(38.5)?.words)).toBe(`${((first + second) / 2000).toFixed(2)} kW`)
    expect(line?.at?.(35)).toBeNull()
    expect(line?.at?.(77)).toBeNull()
  })

  it('readFigure(figure, width) reads both ends of a band', () => {
    const band = readFigure(spread, 720).series.find(
      ({ at, points }) => at !== undefined && points[0]?.words.includes(' to '),
    )
    expect(band?.points.length).toBeGreaterThan(0)
  })

  it('readFigure(figure, width) reads bars by their full names, and pieces by their length', () => {
    const [bars] = readFigure(massBars, 720).series
    expect(bars?.points.map(({ words }) => plain(words))).toEqual([
      'structure: 523.8 kg',
      'battery: 411.2 kg',
      'systems, the fixed ones and their share of gross mass: 139.1 kg',
      'battery: 3 kg',
    ])
    expect(readFigure(driverBars, 720).series.map(({ name }) => name)).toEqual([
      'adds mass',
      'saves mass',
      'lines across',
    ])
    expect(readFigure(sideBySide, 720).series.length).toBe(2)
  })

  it('readFigure(figure, width) names the parts of a drawing with their sizes', () => {
    const [parts] = readFigure(planView, 720).series
    expect(parts?.points.map(({ words }) => plain(words))).toEqual([
      'wing: 12 m across, 1 m along',
      'clockwise 1: radius 1.3 m, centre at across −3 m, ahead 2 m',
      'counter-clockwise 2: radius 1.3 m, centre at across 3 m, ahead 2 m',
    ])
  })

  it('readFigure(figure, width) reads the value at each point of a contour', () => {
    const [values] = readFigure(contours, 720).series
    expect(values?.points.length).toBe(20)
    expect(plain(values?.points[0]?.words)).toMatch(/^range .* km, wing area .*: .* t$/)
  })

  it('readFigure(figure, width) leaves out what has no place, and bears a figure without values', () => {
    const figure: Figure = {
      figure: 'plot',
      caption: '',
      x: { label: '', dimension: '1', scale: 'logarithmic' },
      y: { label: '', dimension: '1' },
      marks: [
        { mark: 'line', x: [1, 10], y: [1, 2] },
        { mark: 'polygon', x: [], y: [] },
      ],
    }
    expect(readFigure(figure, 720).series[0]?.points[0]?.words).toBe('1, value 1')
    expect(readFigure({ ...figure, marks: [] }, 720).series).toEqual([])
    expect(spotAt(readFigure({ ...figure, marks: [] }, 720), 5, 5)).toBeNull()
  })
})

describe('spotAt', () => {
  it('spotAt(reading, x, y) gives every series at the nearest x', () => {
    const { frame } = reading
    const spot = spotAt(reading, frame.left + 3, frame.height - frame.bottom - 5)
    expect(plain(spot?.heading)).toBe('true airspeed 36 m/s')
    expect(spot?.lines.map(plain)).toEqual(['rotors exposed: 47.80 kW', 'folded: 46.36 kW'])
    expect([spot?.places.length, spot?.upright]).toEqual([2, reading.series[0]?.points[0]?.x])
  })

  it('spotAt(reading, x, y) gives a point or a line that is pointed right at', () => {
    const dot = reading.series[2]?.points[0]
    const rule = reading.series[3]?.points[0]
    expect(plain(spotAt(reading, (dot?.x ?? 0) + 4, (dot?.y ?? 0) - 4)?.lines[0])).toMatch(/^cruise: /)
    expect(plain(spotAt(reading, (rule?.x ?? 0) + 1, 200)?.lines[0])).toMatch(/^1.3 times stall: /)
  })

  it('spotAt(reading, x, y) in a drawing gives the smallest thing around, else the nearest', () => {
    const drawing = readFigure(planView, 720)
    const rotor = drawing.series[0]?.points[1]
    expect(spotAt(drawing, (rotor?.x ?? 0) + 3, (rotor?.y ?? 0) + 3)?.lines[0]).toMatch(/^clockwise 1/)
    expect(spotAt(drawing, 1, (rotor?.y ?? 0) - 3)?.lines[0]).toMatch(/^clockwise 1/)
  })

  it('spotAt(reading, x, y) is null off the drawing', () => {
    expect(spotAt(reading, -1, 10)).toBeNull()
    expect(spotAt(reading, 10, 10_000)).toBeNull()
  })
})

describe('stepFor', () => {
  it('stepFor(reading, step, command) walks along a series and stops at its ends', () => {
    const first = stepFor(reading, undefined, 'next value')
    expect(first).toEqual({ series: 0, point: 0 })
    expect(stepFor(reading, first, 'next value')).toEqual({ series: 0, point: 1 })
    expect(stepFor(reading, first, 'previous value')).toEqual({ series: 0, point: 0 })
    expect(stepFor(reading, first, 'last value')).toEqual({ series: 0, point: 8 })
    expect(stepFor(reading, { series: 0, point: 8 }, 'next value')).toEqual({ series: 0, point: 8 })
    expect(stepFor(reading, { series: 0, point: 8 }, 'first value')).toEqual({ series: 0, point: 0 })
  })

  it('stepFor(reading, step, command) goes to the nearest point of the next series', () => {
    expect(stepFor(reading, { series: 0, point: 4 }, 'next series')).toEqual({ series: 1, point: 4 })
    expect(stepFor(reading, { series: 1, point: 8 }, 'next series')).toEqual({ series: 2, point: 1 })
    expect(stepFor(reading, { series: 0, point: 4 }, 'previous series')).toEqual({ series: 0, point: 4 })
  })

  it('stepFor(reading, step, command) moves nothing for any other key, or without values', () => {
    expect(stepFor(reading, undefined, undefined)).toBeUndefined()
    expect(stepFor(readFigure({ ...powerCurve, marks: [] }, 720), undefined, 'next value')).toBeUndefined()
  })

  it('stepWords(reading, step) says series, place and values; stepSpot(reading, step) shows the same', () => {
    const step = { series: 0, point: 2 }
    expect(plain(stepWords(reading, step))).toMatch(
      /^rotors exposed, 3 of 9: true airspeed 46 m\/s, power required .* kW$/,
    )
    const spot = stepSpot(reading, step)
    expect([spot?.heading, spot?.lines.length, spot?.places.length]).toEqual(['rotors exposed', 1, 1])
    expect(stepSpot(reading, { series: 9, point: 0 })).toBeNull()
  })
})
