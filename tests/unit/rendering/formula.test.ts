import { describe, expect, it } from 'vitest'
import { formulasOf } from '../../../kernel/cells/formulas/index.js'
import type { NamedValue } from '../../../shared/contracts/index.js'
import {
  type CellView,
  linesOf,
  lineWords,
  renderCalculation,
  renderLine,
  renderLines,
  sheetContext,
  symbolOf,
} from '../../../shared/rendering/index.js'
import { cellId, cellView, newDocument, number, plainText, resultOf } from './support.js'

const document = newDocument()

/** A cell of this code, with these values when given. */
function cellOf(code: string, values?: readonly NamedValue[], more: Partial<CellView> = {}): CellView {
  const id = cellId('a')
  const formulas = formulasOf({
    cells: [{ id, source: code, code, declares: [], reads: [], assumptions: [] }],
    shadowed: [],
  })
  return cellView('a', {
    source: code,
    formulas: formulas.get(id) ?? [],
    ...(values === undefined ? {} : { result: resultOf('a', { values: [...values] }) }),
    ...more,
  })
}

/** What is said of each line. */
function wordsOf(cell: CellView, others: readonly CellView[] = []): string[] {
  return linesOf(cell, sheetContext({ cells: [cell, ...others] })).map((line) =>
    lineWords(line).replaceAll('\u202f', ' '),
  )
}

/** Forms of a right-hand side, and how the formula is said. */
const forms: readonly (readonly [code: string, words: string])[] = [
  ['rotorCount * Math.PI * rotorRadius ** 2', 'rotor count · π · rotor radius^2'],
  ['(mass * u.g0) / (1 - download)', '(mass · standard gravity) / (1 − download)'],
  ['-5 * u.K + temperature', '−5 K + temperature'],
  ['temperature + -5 * u.K', 'temperature + (−5 K)'],
  ['(235 * u.Wh) / u.kg * mass', '235 Wh/kg · mass'],
  ['mass * 1.2 * u.kg / u.m ** 3', 'mass · 1.2 kg/m³'],
  ['power / u.kW', 'power / kW'],
  ['u.m ** 2 * area', 'm^2 · area'],
  ['Math.sqrt(thrust / (2 * rho * area))', '√(thrust / (2 · rho · area))'],
  ['Math.cbrt(a) + Math.hypot(a, b)', '∛(a) + √(a^2 + b^2)'],
  ['Math.pow(a, b) - (c - d)', 'a^b − (c − d)'],
  ['a - (b + c)', 'a − (b + c)'],
  ['a - b + c', 'a − b + c'],
  ['a + (b + c) * d', 'a + (b + c) · d'],
  ['-(a * b)', '−a · b'],
  ['-a * b', '−a · b'],
  ['b * -a', 'b · (−a)'],
  ['-(a + b)', '−(a + b)'],
  ['(-a) ** 2', '(−a)^2'],
  ['a ** b ** c', 'a^(b^c)'],
  ['(a ** b) ** c', '(a^b)^c'],
  ['(a * b) ** 2', '(a · b)^2'],
  ['(a / b) ** 1.5', '(a / b)^1.5'],
  ['2 ** -a', '2^(−a)'],
  ['(3 * u.m) ** 2', '(3 m)^2'],
  ['Math.max(a, b, 3)', 'max(a, b, 3)'],
  ['Math.abs(a - b)', '|a − b|'],
  ['Math.floor(a) + Math.ceil(b)', '⌊a⌋ + ⌈b⌉'],
  ['Math.exp(-a)', 'e^(−a)'],
  ['Math.E ** a', 'e^a'],
  ['Math.log(a) + Math.log10(b) + Math.log2(c)', 'ln(a) + lg(b) + lb(c)'],
  ['Math.sin(a) ** 2 + Math.atan2(b, c)', '(sin(a))^2 + arctan(b, c)'],
  ['a > b ? a : b', 'a if a > b; otherwise b'],
  ['a > b ? 1 : a >= c ? 2 : 3', '1 if a > b; 2 if a ≥ c; otherwise 3'],
  ['2 * (a > b ? a : b)', '2 · (a if a > b; otherwise b)'],
  ['(a > 0 && b <= 3) || !c', '(a > 0 and b ≤ 3) or not c'],
  ['a === b', 'a = b'],
  ['a !== b', 'a ≠ b'],
  [
    'rotor.hover({ thrust: (mass * u.g0) / 2, diskArea, density }).power',
    'rotor.hover(thrust = (mass · standard gravity) / 2, disk area, density).power',
  ],
  ['air.standard(altitude, warmth).density', 'air.standard(altitude, warmth).density'],
  ['hover.power * time', 'hover power · time'],
  ['rows[2].mass * 3', 'rows 2 mass · 3'],
  ['rows["wing"] * 3', 'rows wing · 3'],
  ['masses.reduce((s, m) => s + m, 0)', 'masses.reduce(…, 0)'],
  ['masses.length * 2', 'masses length · 2'],
  ['wing.lift?.slope * 2', 'wing lift slope · 2'],
  ['a % 3', 'a mod 3'],
  ['a * (b / c)', 'a · b / c'],
  ['a / b / c', 'a / (b · c)'],
  ['a / (b / c)', 'a / (b / c)'],
  ['1 / density', '1 / density'],
  ['(16 * a) / 11', '(16 · a) / 11'],
  ['Infinity - a', '∞ − a'],
  ['f(a, [b, 2], ...rest)', 'f(a, [b, 2], …)'],
  ['f(a, b, c, d, e, g, h)', 'f(a, b, c, d, e, g, …)'],
  ["f(a, 'blades lined up', true)", 'f(a, blades lined up, true)'],
  ['0.5 * rho * V ** 2 * S', '0.5 · rho · V^2 · S'],
  ['1e6 * a', '10⁶ · a'],
]

describe('linesOf', () => {
  it.each(forms)('linesOf(cell) with y = %s reads %s', (code, words) => {
    expect(wordsOf(cellOf(`const y = ${code}`, [number('y', 1, '1')]))).toEqual([`y = ${words} = 1`])
  })

  it.each([
    ['a value that is only stated', 'const y = 85 * u.km'],
    ['an assumption of a plain value', "const y = assumption('y', 85 * u.km, { unit: 'km' })"],
    ['a list', 'const y = [a, b]'],
    ['a record', 'const y = { a, b }'],
    ['text made in pieces', 'const y = `x`'],
    ['what falls back on something else', 'const y = a ?? b'],
    ['a value that a loop changes', 'let y = a * b; for (const x of xs) y += x'],
    ['a value that a function changes', 'let y = a * b; const f = () => { y++ }'],
    ['a value given by destructuring later', 'let y = a * b; [y] = xs'],
    ['a function with a loop', 'function y(n) { let s = 0; for (let i = 0; i < n; i++) s += i; return s }'],
    ['a function without a result', 'function y() { const a = 1 }'],
    ['a function of a record', 'const y = ({ a }) => a * 2'],
    ['code that cannot be parsed', 'const y = ('],
  ])('linesOf(cell) has no line for %s', (_what, code) => {
    expect(wordsOf(cellOf(code))).toEqual([])
  })

  it('linesOf(cell) puts numbers with units in place of names, and the result behind', () => {
    const values = [
      number('rotorCount', 8, '1'),
      number('rotorRadius', 1.3, 'm', { unit: 'm' }),
      number('diskArea', 42.4743, 'm^2'),
    ]
    expect(wordsOf(cellOf('const diskArea = rotorCount * Math.PI * rotorRadius ** 2', values))).toEqual([
      'disk area = rotor count · π · rotor radius^2 = 8 · π · (1.3 m)^2 = 42.47 m²',
    ])
  })

  it('linesOf(cell) looks through result(...), assumption(...) and the statement alone', () => {
    const code = "const a = result('a', b * 2, { unit: 'm' })\nconst c = assumption('c', 16 / 11)\nresult('d', b / 2)"
    const values = [number('b', 3, 'm'), number('a', 6, 'm'), number('c', 16 / 11, '1'), number('d', 1.5, 'm')]
    expect(wordsOf(cellOf(code, values))).toEqual([
      'a = b · 2 = 3 m · 2 = 6 m',
      'c = 16 / 11 = 1.455',
      'd = b / 2 = (3 m) / 2 = 1.5 m',
    ])
  })

  it('linesOf(cell) takes `result` and `u` for what cells own of these names', () => {
    const id = cellId('a')
    const code = "const y = result('y', b) * u.kg"
    const cells = [{ id, source: code, code, declares: [], reads: [], assumptions: [] }]
    const formulas = formulasOf({ cells, shadowed: ['result', 'u'] }).get(id) ?? []
    expect(wordsOf(cellView('a', { formulas }))).toEqual(['y = result(y, b) · u kg'])
  })

  it('linesOf(cell) reads numbers of other cells and members of records, and says where a unit is not known', () => {
    const hover: NamedValue = {
      name: 'hover',
      dimension: null,
      value: { kind: 'record', entries: [['power', { kind: 'number', si: 300_000 }]], more: 0 },
    }
    const other = cellView('b', { result: resultOf('b', { values: [hover] }) })
    const cell = cellOf('const energy = hover.power * time\nconst power = hover.power', [
      number('time', 90, 's'),
      number('energy', 2.7e7, 'kg m^2 s^-2'),
      number('power', 300_000, 'kg m^2 s^-3'),
    ])
    expect(wordsOf(cell, [other])).toEqual([
      'energy = hover power · time = 300 000 · 90 s = 7.5 kWh',
      'power = hover power = 300 kW',
    ])
    const [first] = linesOf(cell, sheetContext({ cells: [cell, other] }))
    expect(first?.notes).toEqual(['numbers whose unit is not known are in SI'])
  })

  it('linesOf(cell) shows members in the units that the checker and the author gave them', () => {
    const rows: NamedValue = {
      name: 'rows',
      dimension: null,
      columns: { mass: 'kg', power: 'kg m^2 s^-3' },
      units: { power: 'W' },
      value: {
        kind: 'list',
        length: 1,
        items: [
          {
            kind: 'record',
            entries: [
              ['mass', { kind: 'number', si: 12 }],
              ['power', { kind: 'number', si: 5000 }],
            ],
            more: 0,
          },
        ],
      },
    }
    const cell = cellOf('const y = rows[0].power / rows[0].mass + 2 * rows.length', [rows, number('y', 1, '1')])
    expect(wordsOf(cell)).toEqual([
      'y = rows 0 power / rows 0 mass + 2 · rows length = (5 000 W) / (12 kg) + 2 · 1 = 1',
    ])
    expect(linesOf(cell, sheetContext({ cells: [cell] }))[0]?.notes).toEqual([])
  })

  it('linesOf(cell) gives functions and their steps as formulas for any argument', () => {
    const code =
      'const motorsAt = (mass) => hoverAt(mass).power * ratio ** 1.5\nfunction e(m, d) { const t = d / v; return m * t }'
    const cell = cellOf(code, [number('ratio', 1.5, '1')])
    expect(wordsOf(cell)).toEqual([
      'motorsAt(mass) = hoverAt(mass).power · ratio^1.5',
      'e(m, d) = m · t',
      'with\u00a0t = d / v',
    ])
    expect(linesOf(cell, sheetContext({ cells: [cell] }))[0]?.notes).toEqual(['for any mass'])
  })

  it('linesOf(cell) gives the call that a record came from in place of its name', () => {
    const values = [number('m', 1637, 'kg', { unit: 'kg' }), number('power', 3e5, 'kg m^2 s^-3')]
    expect(wordsOf(cellOf('const hover = hoverAt(m)\nconst power = hover.power', values))).toEqual([
      'power = hoverAt(m).power = hoverAt(1 637 kg).power = 300 kW',
    ])
  })

  it('linesOf(cell) leaves out a call until it has given a number: it may give anything', () => {
    expect(wordsOf(cellOf('const y = figure.line(a)\nconst z = 2 * a'))).toEqual(['z = 2 · a'])
  })

  it('linesOf(cell) gives each name of a destructured value', () => {
    const values = [number('power', 3, '1'), number('shaft', 4, '1')]
    expect(wordsOf(cellOf('const { power, torque: shaft } = rotor.hover(a)', values))).toEqual([
      'power = rotor.hover(a).power = 3',
      'shaft = rotor.hover(a).torque = 4',
    ])
  })

  it.each(['out of date', 'computing', 'failed', 'held back'] as const)(
    'linesOf(cell) puts no numbers in while the cell is %s, and says so',
    (state) => {
      const cell = cellOf('const b = 2 * a', [number('a', 1, 'm'), number('b', 2, 'm')], { state })
      const [line] = linesOf(cell, sheetContext({ cells: [cell] }))
      expect(line?.stages.length).toBe(1)
      expect(line?.notes).toEqual([`${state}: the numbers follow when it is computed`])
    },
  )

  it('linesOf(cell) puts no numbers in while a cell that it reads is out of date', () => {
    const cell = cellOf('const b = 2 * a', [number('b', 2, 'm')])
    const late = cellView('c', { state: 'out of date', result: resultOf('c', { values: [number('a', 1, 'm')] }) })
    const [line] = linesOf(cell, sheetContext({ cells: [cell, late] }))
    expect([line?.stages.length, line?.notes]).toEqual([1, ['out of date: the numbers follow when it is computed']])
  })

  it('linesOf(cell) says where a trial value stands in for the document’s own', () => {
    const tried = { name: 'a', value: 1, trial: 3 }
    const code = "const a = assumption('a', x / 2)\nconst b = 2 * a"
    const values = [number('a', 3, 'm'), number('b', 6, 'm')]
    const cell = { ...cellOf(code), result: resultOf('a', { values, assumptions: [tried] }) }
    const lines = linesOf(cell, sheetContext({ cells: [cell] }))
    expect(lines.map(lineWords)).toEqual(
      ['a = 3\u202fm', 'b = 2 · a = 2 · 3 m = 6 m'].map((text) => text.replace('3\u202fm', '3 m')),
    )
    expect(lines.map((line) => line.notes)).toEqual([
      ['trial value in place of the formula'],
      ['with the trial value of a'],
    ])
  })

  it('linesOf(cell) says whether a condition holds', () => {
    const values: NamedValue[] = [
      number('a', 2, '1'),
      { name: 'ok', dimension: null, value: { kind: 'truth', value: true } },
    ]
    expect(wordsOf(cellOf('const ok = a > 1', values))).toEqual(['ok = a > 1 = 2 > 1 = true'])
  })
})

describe('symbolOf', () => {
  it.each([
    [['rho'], 'ρ', ''],
    [['rhoHot'], 'ρ', 'hot'],
    [['rotorRadius'], 'radius', 'rotor'],
    [['hover', 'power'], 'power', 'hover'],
    [['hoverElectricalEfficiency'], 'efficiency', 'hover electrical'],
    [['figureOfMerit'], 'figure of merit', ''],
    [['liftToDrag'], 'lift to drag', ''],
    [['vInduced'], 'v', 'induced'],
    [['V_stall'], 'V', 'stall'],
    [['x1'], 'x', '1'],
    [['rows', '2'], 'rows', '2'],
    [['rows', '2', 'mass'], 'mass', 'rows 2'],
    [['cruise', 'liftToDrag'], 'lift to drag', 'cruise'],
    [['hover', 'diskLoading'], 'loading', 'hover disk'],
    [['theWholeAircraft', 'equivalentFlatPlateArea'], 'the whole aircraft equivalent flat plate area', ''],
    [['mass'], 'mass', ''],
    [['constructor'], 'constructor', ''],
    [['specificEnergyOfTheWholePackAtEndOfLife'], 'specific energy of the whole pack at end of life', ''],
  ] as const)('symbolOf(%j) is %s with the subscript "%s"', (parts, base, subscript) => {
    expect(symbolOf(parts)).toEqual({ kind: 'text', base, subscript })
  })
})

describe('renderLines', () => {
  it('renderLines(document, cell) is a closed fold with one line per name, said in words', () => {
    const cell = cellOf('const b = 2 * a', [number('a', 1, 'm'), number('b', 2, 'm')])
    const fold = renderLines(document, cell, sheetContext({ cells: [cell] }))
    expect(fold?.localName).toBe('details')
    expect(fold?.hasAttribute('open')).toBe(false)
    expect(fold?.querySelector('summary')?.textContent).toBe('Hand calculation')
    const math = fold?.querySelector('[role="math"]')
    expect(plainText({ textContent: math?.getAttribute('aria-label') ?? '' } as Node)).toBe('b = 2 · a = 2 · 1 m = 2 m')
    expect(math?.querySelectorAll('.stage').length).toBe(4)
  })

  it('renderLines(document, cell) is null where there is nothing to calculate', () => {
    const cell = cellOf('const a = 1 * u.m')
    expect(renderLines(document, cell, sheetContext({ cells: [cell] }))).toBeNull()
  })

  it('renderCalculation(document, cell) ends in the lines of a sizing cell', () => {
    const column = renderCalculation(document, cellOf('const b = 2 * a'))
    expect(column.lastElementChild?.className).toBe('lines-fold')
  })

  it('renderLine(document, line) draws fractions, roots, powers, cases and subscripts as MathML', () => {
    const math = mathOf('Math.sqrt(a / b) + Math.cbrt(c) ** 2 + (a > b ? tipSpeed : 2)')
    for (const tag of ['msqrt', 'mfrac', 'mroot', 'msup', 'mtable', 'msub'])
      expect(math.querySelector(tag)).not.toBeNull()
    expect(math.querySelector('msub .upright')?.textContent).toBe('speed')
  })

  it('renderLine(document, line) breaks long formulas before signs and after commas, each piece a formula of its own', () => {
    const pieces = Array.from(mathOf('aa * bb + f(cc, dd)').querySelectorAll('.stage:last-child math'))
    expect(pieces.map((piece) => plainText(piece))).toEqual(['=aa', '·bb', '+f(cc,', 'dd)'])
    expect(mathOf('aa * bb').querySelectorAll('wbr').length).toBeGreaterThan(0)
  })

  it('renderLine(document, line) sets letters side by side and parts words with a dot', () => {
    expect(plainText(mathOf('2 * a * V * tip').querySelector('.stage:last-child'))).toBe('=2aV·tip')
  })

  it('renderLine(document, line) draws the author’s TeX as symbol, and what cannot be read as it was written', () => {
    const values = [number('a', 3, '1', { symbol: 'P_\\mathrm{hover}' }), number('b', 6, '1', { symbol: '\\frac{' })]
    const cell = cellOf('const b = 2 * a', values)
    const [line] = linesOf(cell, sheetContext({ cells: [cell] }))
    if (line === undefined) throw new Error('no line')
    const made = renderLine(document, line)
    expect(made.querySelector('msub')?.textContent).toBe('Phover')
    expect(made.querySelector('.stage')?.textContent).toBe('\\frac{')
    expect(made.querySelector('[role="math"]')?.getAttribute('aria-label')).toBe('b = 2 · a = 2 · 3 = 6')
  })

  it('renderLine(document, line) sets exponents of units and numbers as superscripts', () => {
    const cell = cellOf('const b = 2 * a', [number('a', 1.5e-9, 'kg^2 m^-7'), number('b', 3e-9, 'kg^2 m^-7')])
    const made = renderLines(document, cell, sheetContext({ cells: [cell] }))
    expect(Array.from(made?.querySelectorAll('msup mn:last-child') ?? []).map((each) => each.textContent)).toContain(
      '−7',
    )
  })

  it('renderLine(document, line) writes hostile names, texts and TeX as text', () => {
    const hostile = '<img src=x onerror=alert(1)>'
    const symbol = `\\href{javascript:alert(1)}{x}${hostile}`
    const cell = cellOf(`const y = f('${hostile}', a)`, [
      number('a', 1, 'm', { label: hostile, symbol, unit: hostile }),
      number('y', 2, 'm', { label: hostile, symbol: '\\style{color:red}{x}' }),
    ])
    const made = renderLines(document, cell, sheetContext({ cells: [cell] }))
    expect(made?.querySelector('img, a, style, script, [onerror], [href], [style]')).toBeNull()
  })
})

function mathOf(code: string): HTMLElement {
  const cell = cellOf(`const y = ${code}`)
  const made = renderLines(document, cell, sheetContext({ cells: [cell] }))
  if (made === null) throw new Error('no lines')
  return made
}
