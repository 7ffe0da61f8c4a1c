import { describe, expect, it } from 'vitest'
import { cautionInFull, cautionLine, Figure } from '../../../shared/contracts/index.js'
import { figureTable, figureToCsv, figureToSvgText, renderFigure } from '../../../shared/rendering/index.js'
import {
  allFigures,
  contours,
  driverBars,
  massBars,
  nothing,
  planView,
  powerCurve,
  sideBySide,
  spread,
} from './figures.js'
import { newDocument, plainText } from './support.js'

const document = newDocument()
const words = (figure: HTMLElement) => Array.from(figure.querySelectorAll('svg text')).map(plainText)

describe('figureToSvgText', () => {
  it.each(Object.entries(allFigures))(
    'figureToSvgText(document, %s) is drawn as it was looked at',
    async (name, figure) => {
      expect(Figure.safeParse(figure).success).toBe(true)
      const drawn = figureToSvgText(document, figure).replace(/-?\d+\.\d{3,}/g, (digits) =>
        String(Number(Number(digits).toFixed(2))),
      )
      await expect(drawn.replaceAll('><', '>\n<')).toMatchFileSnapshot(`figures/${name}.svg`)
    },
  )

  it('figureToSvgText(document, figure) stands alone: no classes, variables or current colour', () => {
    for (const figure of Object.values(allFigures)) {
      const drawn = figureToSvgText(document, figure)
      expect(drawn).not.toMatch(/class=|data-|aria-|var\(|currentColor|<style/)
      expect(drawn).toContain('xmlns="http://www.w3.org/2000/svg"')
    }
  })

  it('figureToSvgText(document, figure) escapes what a caption or label holds', () => {
    const hostile = '</title><script>alert("1")</script>\u0000'
    const drawn = figureToSvgText(document, {
      ...powerCurve,
      caption: hostile,
      marks: [{ mark: 'text', x: 50, y: 5e4, text: hostile }],
    })
    expect(drawn).not.toContain('<script')
    expect(drawn).not.toContain('\u0000')
  })

  it.each([320, 640])(
    'figureToSvgText(document, figure, %s wide) carries the caution below the drawing, and its full text',
    (width) => {
      const drawn = figureToSvgText(document, powerCurve, { width })
      const lines = [...drawn.matchAll(/<text [^>]*font-size="11"[^>]*>([^<]*)</g)].map((match) => match[1] ?? '')
      expect(lines.join(' ')).toBe(cautionLine)
      expect(lines.every((line) => line.length * 5.6 <= width)).toBe(true)
      for (const sentence of cautionInFull) expect(drawn).toContain(sentence)
    },
  )
})

describe('renderFigure', () => {
  it('renderFigure(document, figure) has a numbered caption, a name, a description and no inline style', () => {
    const figure = renderFigure(document, powerCurve, { number: '2' })
    expect(plainText(figure.querySelector('figcaption'))).toBe('Figure 2. Power required in level flight.')
    const drawing = figure.querySelector('svg')
    expect(drawing?.getAttribute('role')).toBe('img')
    expect(drawing?.getAttribute('aria-label')).toBe('Figure 2. Power required in level flight.')
    expect(drawing?.querySelector('desc')?.textContent).toContain('rotors exposed')
    expect(figure.querySelector('[style], style')).toBeNull()
  })

  it('renderFigure(document, figure) says the description of the author where there is one', () => {
    const figure = renderFigure(document, { ...powerCurve, description: 'Power falls, then rises.' })
    expect(figure.querySelector('desc')?.textContent).toBe('Power falls, then rises.')
    expect(plainText(figure.querySelector('figcaption'))).toBe('Power required in level flight.')
  })

  it('renderFigure(document, figure) heads axes with label and unit and converts values', () => {
    const found = words(renderFigure(document, powerCurve))
    expect(found).toContain('true airspeed, m/s')
    expect(found).toContain('power required, kW')
    expect(found).toContain('100')
  })

  it('renderFigure(document, figure) names few lines at their ends and the rest in a legend', () => {
    const figure = renderFigure(document, powerCurve)
    expect(Array.from(figure.querySelectorAll('.figure-direct text')).map(plainText)).toEqual([
      'rotors exposed',
      'folded',
    ])
    expect(Array.from(figure.querySelectorAll('.figure-legend text')).map(plainText)).toEqual(['flown'])
  })

  it('renderFigure(document, figure) keeps direct labels apart', () => {
    const same = Array.from({ length: 5 }, (_, index) => ({
      mark: 'line' as const,
      x: [0, 1],
      y: [0, 1],
      label: `line ${index}`,
    }))
    const figure = renderFigure(document, { ...powerCurve, marks: same })
    const heights = Array.from(figure.querySelectorAll('.figure-direct text'))
      .map((label) => Number(label.getAttribute('y')))
      .sort((a, b) => a - b)
    heights.slice(1).forEach((height, index) => {
      expect(height - (heights[index] ?? 0)).toBeGreaterThanOrEqual(14)
    })
  })

  it('renderFigure(document, figure) tells lines apart by dash, points by shape and bars by pattern', () => {
    const lines = renderFigure(document, powerCurve)
    const dashes = Array.from(lines.querySelectorAll('[data-part="line"]')).map((line) =>
      line.getAttribute('stroke-dasharray'),
    )
    expect(new Set(dashes).size).toBe(2)
    const bars = renderFigure(document, driverBars, { number: '7' })
    expect(bars.querySelector('pattern')?.id).toBe('figure-7-hatched-second')
    expect(bars.querySelector('[fill="url(#figure-7-hatched-second)"]')).not.toBeNull()
  })

  it('renderFigure(document, bars) writes each name at its row, shortened when long, and each value at its end', () => {
    const found = words(renderFigure(document, massBars))
    expect(found).toContain('structure')
    expect(found.filter((word) => word === 'battery').length).toBe(2)
    expect(found.some((word) => /^systems, the fixed.*…$/.test(word))).toBe(true)
    expect(found).toContain('411.2')
  })

  it('renderFigure(document, bars) puts bars of one name side by side', () => {
    const figure = renderFigure(document, sideBySide)
    const tops = Array.from(figure.querySelectorAll('[data-part="bar"] rect')).map((bar) =>
      Number(bar.getAttribute('y')),
    )
    expect(new Set(tops).size).toBe(4)
  })

  it('renderFigure(document, drawing) has one metre as long across as up', () => {
    const circle = renderFigure(document, planView).querySelector('ellipse')
    expect(Number(circle?.getAttribute('rx'))).toBeCloseTo(Number(circle?.getAttribute('ry')), 1)
  })

  it('renderFigure(document, contour) labels each level in its unit', () => {
    const found = words(renderFigure(document, contours))
    expect(found).toContain('1.15 t')
    expect(found).toContain('1.35 t')
  })

  it('renderFigure(document, contour) draws points that make no grid', () => {
    const mark = contours.marks[0]
    if (mark?.mark !== 'contour') throw new Error('the figure has lost its contour')
    const scattered = { ...mark, x: mark.x.map((x, index) => x + index * 100) }
    const figure = renderFigure(document, { ...contours, marks: [scattered] })
    expect(figure.querySelectorAll('[data-part="contour"] path').length).toBeGreaterThan(0)
  })

  it('renderFigure(document, figure) without values says so', () => {
    expect(words(renderFigure(document, nothing))).toContain('no values to draw')
    expect(words(renderFigure(document, { ...nothing, marks: [] }))).toContain('no values to draw')
    expect(words(renderFigure(document, { ...massBars, marks: [{ mark: 'bar', names: [], value: [] }] }))).toContain(
      'mass, kg',
    )
  })

  it('renderFigure(document, figure) draws a single point, equal values and unequal lengths without NaN', () => {
    const odd = [
      { mark: 'dot' as const, x: [1], y: [1] },
      { mark: 'line' as const, x: [1, 2, 3], y: [5, 5] },
      { mark: 'band' as const, x: [1, 2], low: [0], high: [1, 2] },
    ]
    for (const marks of [odd, odd.slice(0, 1)])
      expect(renderFigure(document, { ...powerCurve, marks }).innerHTML).not.toMatch(/NaN|Infinity/)
  })

  it('renderFigure(document, logarithmic figure) with values at or below zero falls back to a linear axis', () => {
    const figure = renderFigure(document, { ...spread, marks: [{ mark: 'line', x: [1, 2], y: [0, 1000] }] })
    expect(figure.innerHTML).not.toMatch(/NaN|Infinity/)
    expect(words(figure)).toContain('1 000')
  })

  it('renderFigure(document, figure) reads a unit of another dimension as none', () => {
    const figure = renderFigure(document, { ...massBars, x: { label: 'mass', dimension: 'kg', unit: 'kW' } })
    expect(words(figure)).toContain('mass, kg')
  })

  it('renderFigure(document, figure) keeps its values in a table in display units', () => {
    const figure = renderFigure(document, contours)
    expect(plainText(figure.querySelector('.figure-data > summary'))).toBe('Values (20 rows)')
    expect(Array.from(figure.querySelectorAll('th')).map(plainText)).toEqual([
      'series',
      'range, km',
      'wing area, m²',
      'further value',
    ])
    expect(Array.from(figure.querySelectorAll('tbody tr')[1]?.children ?? []).map(plainText)).toEqual([
      'contour',
      '20',
      '10',
      '1.1',
    ])
  })

  it('renderFigure(document, figure) shows the head of a long table and says how long it is', () => {
    const x = Array.from({ length: 20_000 }, (_, index) => index)
    const figure = renderFigure(document, { ...powerCurve, marks: [{ mark: 'line', x, y: x }] })
    expect(figure.querySelectorAll('tbody tr').length).toBe(100)
    expect(plainText(figure.querySelector('.figure-data > p'))).toContain('first 100 of 20000 rows')
  })
})

describe('bars that span a range', () => {
  const bar = { mark: 'bar' as const, names: ['bare', 'hidden'], value: [90, 40], start: [72.345, 40] }
  const axis = { label: 'time', dimension: '1' }
  const spans: Figure = { figure: 'plot', caption: 'Spans', x: axis, y: axis, marks: [bar] }

  it('renderFigure(document, figure) writes both ends beside a bar that stands alone', () => {
    const shown = words(renderFigure(document, spans))
    expect(shown).toContain('72.3 to 90')
    expect(shown).toContain('40')
  })

  it('renderFigure(document, figure) writes the length of pieces that make one bar', () => {
    const pieces = {
      ...spans,
      marks: [
        { ...bar, start: [0, 0], value: [72, 30] },
        { ...bar, start: [72, 30], value: [90, 40] },
      ],
    }
    const shown = words(renderFigure(document, pieces))
    expect(shown).toContain('18')
    expect(shown.join(' ')).not.toContain(' to ')
  })
})

describe('figureTable', () => {
  it('figureTable(lines over the same x) shares rows', () => {
    const marks = powerCurve.marks.filter((mark) => mark.mark === 'line')
    const table = figureTable({ ...powerCurve, marks })
    expect(table.columns).toEqual([
      'true airspeed, m/s',
      'rotors exposed: power required, kW',
      'folded: power required, kW',
    ])
    expect(table.rows.length).toBe(9)
  })

  it('figureTable(bars) has a row per name and a column per series', () => {
    expect(figureTable(driverBars)).toEqual({
      columns: ['assumption', 'adds mass: elasticity', 'saves mass: elasticity'],
      rows: [
        ['payload', 0.77, null],
        ['range', 0.44, null],
        ['pack energy', null, -0.79],
      ],
    })
  })
})

describe('figureToCsv', () => {
  it('figureToCsv(figure) has display units, full digits and a header', () => {
    const csv = figureToCsv({ ...powerCurve, marks: [{ mark: 'line', x: [50], y: [123456.789] }] })
    expect(csv).toBe(`"true airspeed, m/s","power required, kW"\r\n50,123.456789\r\n"${cautionLine}",\r\n`)
  })

  it('figureToCsv(figure) disarms cells that a spreadsheet would run and leaves plain numbers', () => {
    const names = ['=1+2', '+a', '-b', '@c', '-5', '+1.5e3', '\tq', 'say "x", y', "=cmd|'/c calc'!A1"]
    const csv = figureToCsv({ ...massBars, marks: [{ mark: 'bar', names, value: names.map(() => -1) }] })
    expect(csv.split('\r\n').slice(1, -2)).toEqual([
      "'=1+2,-1",
      "'+a,-1",
      "'-b,-1",
      "'@c,-1",
      '-5,-1',
      '+1.5e3,-1',
      "'\tq,-1",
      '"say ""x"", y",-1',
      "'=cmd|'/c calc'!A1,-1",
    ])
  })

  it('figureToCsv(figure) writes every mark that has values', () => {
    const rows = (figure: Figure) => figureToCsv(figure).trim().split('\r\n').length - 2
    expect(rows(spread)).toBe(3 + 2 + 3)
    expect(rows(planView)).toBe(4 + 2)
    expect(rows(powerCurve)).toBe(9 + 9 + 2 + 2)
  })
})
