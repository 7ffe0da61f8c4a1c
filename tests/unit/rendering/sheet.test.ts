import { describe, expect, it } from 'vitest'
import { cautionLine } from '../../../shared/contracts/index.js'
import {
  renderCalculation,
  renderCell,
  renderFigures,
  renderReference,
  renderResult,
  renderSheet,
  type SheetContext,
  sheetContext,
} from '../../../shared/rendering/index.js'
import { powerCurve } from './figures.js'
import { cellId, cellView, newDocument, number, plainText, resultOf, sheetView } from './support.js'

const document = newDocument()

describe('renderSheet', () => {
  it('renderSheet(document, view) states title block, caution with its link, and column heads', () => {
    const titleBlock = { question: 'Can it?', project: 'Board', prepared: 'initials', revision: 'B' }
    const sheet = renderSheet(document, sheetView([], { titleBlock, fingerprint: '4c1f 90ae' }))
    expect(sheet.localName).toBe('main')
    expect(sheet.querySelector('h1')?.textContent).toBe('Skerry Link shuttle')
    expect(sheet.querySelector('.question')?.textContent).toBe('Can it?')
    const fields = Array.from(sheet.querySelectorAll('.field')).map((field) => [
      field.querySelector('dt')?.textContent,
      field.querySelector('dd')?.textContent,
    ])
    expect(Object.fromEntries(fields)).toEqual({
      Project: 'Board',
      Prepared: 'initials',
      Checked: 'awaiting',
      Revision: 'B',
      Basis: 'none given',
      Approved: 'awaiting',
      Date: 'none given',
      Fingerprint: '4c1f 90ae',
    })
    expect(sheet.querySelector('.caution')?.textContent).toContain(cautionLine)
    expect(sheet.querySelector('.caution a')?.getAttribute('href')).toBe('/cautions')
    expect(plainText(sheet.querySelector('.column-heads'))).toBe('ReferenceCalculationResult')
  })

  it('renderSheet(document, view) without cells says so, and how one begins', () => {
    const words = plainText(renderSheet(document, sheetView([])))
    expect(words).toContain('no cells yet')
    expect(words).toContain('Begin with a rationale cell')
  })

  it('renderCalculation(document, cell) of an empty cell says what it is for', () => {
    const empty = (kind: 'rationale' | 'sizing') => cellView('a', { kind, source: ' \n' })
    expect(plainText(renderCalculation(document, empty('sizing')))).toContain('It takes TypeScript')
    expect(plainText(renderCalculation(document, empty('rationale')))).toContain('Prose goes here')
    expect(plainText(renderResult(document, empty('sizing')))).toBe('current')
  })

  it('renderResult(document, cell) without any value says what would stand there, and with anything else does not', () => {
    const said = (more: Parameters<typeof cellView>[1]) => plainText(renderResult(document, cellView('a', more)))
    expect(said({ result: resultOf('a') })).toContain('No values: what a cell declares with const')
    expect(said({ state: 'not computed' })).toContain('stand here once it is computed')
    for (const more of [
      { result: resultOf('a', { values: [number('a', 1, 'm')] }) },
      { result: resultOf('a', { figures: [powerCurve] }) },
      { result: resultOf('a', { log: ['a word'] }) },
      { state: 'failed' as const, result: resultOf('a', { outcome: 'failed' }) },
    ])
      expect(said(more)).not.toContain('No values')
  })

  it('renderSheet(document, view) writes hostile titles as text', () => {
    const title = '<img src=x onerror=alert(1)>'
    const sheet = renderSheet(document, sheetView([], { title, titleBlock: { project: title } }))
    expect(sheet.querySelector('img')).toBeNull()
    expect(sheet.querySelector('h1')?.textContent).toBe(title)
  })

  it('renderSheet(document, view) names other cells by their number', () => {
    const failed = cellView('a', { number: '3a', state: 'failed' })
    const held = cellView('b', {
      number: '4',
      state: 'held back',
      result: resultOf('b', { outcome: 'held back', heldBackBy: cellId('a') }),
    })
    const sheet = renderSheet(document, sheetView([failed, held]))
    const state = sheet.querySelector('#cell-b .state')
    expect(plainText(state)).toBe('held back: cell 3a failed')
    expect(state?.querySelector('a')?.getAttribute('href')).toBe('#cell-a')
    expect(sheetContext({ cells: [failed] }).numberOf(cellId('a'))).toBe('3a')
  })

  it('renderSheet(document, view) bears a thousand cells', () => {
    const cells = Array.from({ length: 1000 }, (_, index) => cellView(`c${index}`, { number: String(index + 1) }))
    expect(renderSheet(document, sheetView(cells)).querySelectorAll('.cell').length).toBe(1000)
  })
})

describe('renderCell', () => {
  it('renderCell(document, cell) has its parts in order, with stable ids and states', () => {
    const cell = renderCell(document, cellView('a', { state: 'out of date', number: '3a' }))
    expect(cell.localName).toBe('section')
    expect(cell.id).toBe('cell-a')
    expect({ ...attributesOf(cell) }).toMatchObject({
      'data-cell': 'a',
      'data-kind': 'sizing',
      'data-state': 'out of date',
    })
    expect(Array.from(cell.children).map((part) => part.className)).toEqual([
      'number',
      'reference',
      'calculation',
      'result',
      'figures',
    ])
    expect(plainText(cell.querySelector('.number'))).toBe('3a')
  })

  it('renderFigures(document, cell) numbers figures through the sheet', () => {
    const result = resultOf('a', { figures: [powerCurve, powerCurve] })
    const figures = renderFigures(document, cellView('a', { firstFigure: 4, result }))
    const captions = Array.from(figures.querySelectorAll('.figure-number')).map((part) => part.textContent)
    expect(captions).toEqual(['Figure 4.', 'Figure 5.'])
    expect(renderFigures(document, cellView('a')).childNodes.length).toBe(0)
  })
})

describe('renderCalculation', () => {
  it('renderCalculation(document, sizing cell) folds to heading and count without a script', () => {
    const folded = renderCalculation(document, cellView('a', { source: '// Hover power\nconst a = 1\n' }))
    expect(folded.querySelector('h2.heading')?.textContent).toBe('Hover power')
    expect(folded.querySelector('summary')?.textContent).toBe('1 line of TypeScript')
    expect(folded.querySelector('details')?.hasAttribute('open')).toBe(false)
    const open = renderCalculation(document, cellView('a', { folded: false }))
    expect(open.querySelector('details')?.hasAttribute('open')).toBe(true)
  })

  it('renderCalculation(document, empty sizing cell) says that it is empty', () => {
    expect(renderCalculation(document, cellView('a', { source: ' \n' })).textContent).toContain('is empty')
  })

  it('renderCalculation(document, cell) lists findings with a link to the line', () => {
    const finding = {
      cell: cellId('a'),
      line: 2,
      column: 7,
      kind: 'dimension',
      severity: 'error',
      message: 'kg is added to m.',
    } as const
    const made = renderCalculation(
      document,
      cellView('a', { findings: [finding, { ...finding, severity: 'warning' }] }),
    )
    const items = Array.from(made.querySelectorAll('.finding'))
    expect(items.map(plainText)).toEqual(['Error, line 2: kg is added to m.', 'Warning, line 2: kg is added to m.'])
    expect(items[0]?.querySelector('a')?.getAttribute('href')).toBe('#cell-a-line-2')
    expect(made.querySelector('#cell-a-line-2')).not.toBeNull()
  })

  it('renderCalculation(document, rationale cell) is prose', () => {
    const made = renderCalculation(document, cellView('a', { kind: 'rationale', source: '# Why\n\n*so*' }))
    expect(made.querySelector('.prose h2')?.textContent).toBe('Why')
    expect(made.querySelector('em')?.textContent).toBe('so')
  })
})

describe('renderResult', () => {
  const result = resultOf('a', {
    values: [
      number('grossMass', 1636.9422, 'kg', { stated: true }),
      number('hoverPower', 315883.61, 'kg m^2 s^-3', { stated: true, unit: 'kW', label: 'hover power, all rotors' }),
      number('helper', 3, null),
      { name: 'f', value: { kind: 'function' }, dimension: null },
    ],
  })

  it('renderResult(document, cell) puts stated results first and folds the others', () => {
    const made = renderResult(document, cellView('a', { result }))
    const rows = Array.from(made.querySelectorAll(':scope > .values > .value')).map(plainText)
    expect(rows).toEqual(['gross mass1 637 kg', 'hover power, all rotors315.9 kW'])
    expect(plainText(made.querySelector('.more-values > summary'))).toBe('2 more values')
    expect(plainText(made.querySelector('.more-values [data-name="f"] dd'))).toBe('function')
    expect(made.querySelector('[data-name="helper"] dd')?.getAttribute('title')).toContain('in SI')
  })

  it('renderResult(document, cell) without stated results shows values before assumptions and folds a long rest', () => {
    const names = Array.from({ length: 20 }, (_, index) => `value${index}`)
    const made = renderResult(
      document,
      cellView('a', {
        result: resultOf('a', {
          values: [number('range', 85000, 'm'), ...names.map((name) => number(name, 1, '1'))],
          assumptions: [{ name: 'range', value: 85000 }],
        }),
      }),
    )
    const shown = Array.from(made.querySelectorAll(':scope > .values > .value')).map((row) =>
      row.getAttribute('data-name'),
    )
    expect(shown).toEqual(names.slice(0, 12))
    expect(made.querySelector('.more-values [data-name="range"]')).not.toBeNull()
  })

  it.each([
    [{ kind: 'text', text: 'lined up' } as const, 'lined up'],
    [{ kind: 'truth', value: true } as const, 'true'],
    [{ kind: 'nothing' } as const, 'no value'],
    [{ kind: 'list', length: 0, items: [] } as const, 'empty list'],
    [
      {
        kind: 'list',
        length: 2,
        items: [
          { kind: 'number', si: 1 },
          { kind: 'number', si: 0.25 },
        ],
      } as const,
      '1, 0.25',
    ],
    [
      { kind: 'list', length: 24, items: [1, 2, 3, 4, 5, 6].map((si) => ({ kind: 'number', si }) as const) } as const,
      '1, 2, 3, 4, … (24 in all)',
    ],
    [{ kind: 'list', length: 3, items: [{ kind: 'record', entries: [], more: 0 }] } as const, 'list of 3'],
    [{ kind: 'record', entries: [], more: 0 } as const, 'record of 0 entries'],
    [
      { kind: 'record', entries: [['inducedVelocity', { kind: 'number', si: 13.456 }]], more: 2 } as const,
      'record of 3 entriesinduced velocity 13.462 more; all in SI',
    ],
  ])('renderResult(document, cell) says %j in short words', (value, words) => {
    const values = [{ name: 'a', value, dimension: null, stated: true }]
    const made = renderResult(document, cellView('a', { result: resultOf('a', { values }) }))
    expect(plainText(made.querySelector('dd.value-words'))).toBe(words)
  })

  it('renderResult(document, cell) gives each requirement mark, word and margin', () => {
    const requirements = [
      { name: 'reserve', actual: 1320, atLeast: 1200, margin: 120, met: true, unit: 'min' },
      { name: 'pad circle', actual: 14.6, atMost: 14, margin: -0.6, met: false, unit: 'm' },
      { name: 'share', actual: 0.5, atLeast: 0.4, atMost: 0.6, margin: 0.1, met: true },
    ]
    const made = renderResult(document, cellView('a', { result: resultOf('a', { requirements }) }))
    expect(Array.from(made.querySelectorAll('.requirement')).map(plainText)).toEqual([
      '✓ reserve: met margin 2 min (22 min; at least 20 min)',
      '✕ pad circle: not met misses by 0.6 m (14.6 m; at most 14 m)',
      '✓ share: met margin 0.1 (0.5; at least 0.4; at most 0.6)',
    ])
  })

  it('renderResult(document, cell) says an error with cell, line and the calls that led there', () => {
    const error = {
      code: 'INVALID_INPUT',
      message: 'thrust is -3 N.',
      place: { cell: cellId('a'), line: 4, column: 2 },
      calledFrom: [
        { cell: cellId('b'), line: 7, column: 1 },
        { cell: cellId('x'), line: 9, column: 1 },
      ],
    }
    const cells = [cellView('a', { number: '3' }), cellView('b', { number: '5' })]
    const cell = cellView('a', { number: '3', state: 'failed', result: resultOf('a', { outcome: 'failed', error }) })
    const made = renderResult(document, cell, sheetContext({ cells }))
    expect(plainText(made.querySelector('.error'))).toBe(
      'Error in cell 3, line 4: thrust is -3 N. Called from cell 5, line 7, from another cell, line 9.',
    )
    expect(made.querySelector('.error a')?.getAttribute('href')).toBe('#cell-a-line-4')
  })

  it('renderResult(document, cell) shows advisories and log', () => {
    const advisories = [{ code: 'RANGE', method: 'rotor.hover', message: 'outside 0.6 to 0.8.' }]
    const made = renderResult(document, cellView('a', { result: resultOf('a', { advisories, log: ['<b>one</b>'] }) }))
    expect(plainText(made.querySelector('.advisory'))).toBe('Advisory (rotor.hover): outside 0.6 to 0.8.')
    expect(made.querySelector('.log li')?.textContent).toBe('<b>one</b>')
  })

  it.each(['current', 'out of date', 'computing', 'failed', 'held back', 'not computed'] as const)(
    'renderResult(document, cell) says the state "%s" in words',
    (state) => {
      const made = renderResult(document, cellView('a', { state }))
      expect(made.querySelector('.state-word')?.textContent).toBe(state)
    },
  )

  it('renderResult(document, cell) says that values of another text are the last ones', () => {
    const made = renderResult(document, cellView('a', { state: 'out of date', result }))
    expect(made.querySelector('.state')?.textContent).toContain('these are the last values')
  })

  it('renderResult(document, rationale cell) is an empty column', () => {
    expect(renderResult(document, cellView('a', { kind: 'rationale' })).childNodes.length).toBe(0)
  })
})

describe('renderReference', () => {
  it('renderReference(document, cell) states assumptions with value, range, source and trial', () => {
    const result = resultOf('a', {
      values: [number('range', 85000, 'm'), number('figureOfMerit', 0.72, '1')],
      assumptions: [
        { name: 'range', value: 85000, low: 600, high: 120000, source: 'route survey' },
        { name: 'figureOfMerit', value: 0.72, trial: 0.75, low: 0.68, source: 'route survey', note: 'measured' },
        { name: 'share', value: 0.3, high: 0.4 },
      ],
    })
    const made = renderReference(document, cellView('a', { result }))
    expect(Array.from(made.querySelectorAll('.assumptions li')).map(plainText)).toEqual([
      'range 85 km 0.6 to 120 km',
      'figure of merit 0.75 trial value; the document says 0.72 from 0.68 measured',
      'route survey',
      'share 0.3 up to 0.4',
    ])
    expect(made.querySelector('[data-name="figureOfMerit"]')?.hasAttribute('data-trial')).toBe(true)
  })

  it('renderReference(document, cell) folds a long list of assumptions to its count', () => {
    const assumptions = Array.from({ length: 29 }, (_, index) => ({ name: `a${index}`, value: index }))
    const made = renderReference(document, cellView('a', { result: resultOf('a', { assumptions }) }))
    expect(made.querySelector('summary')?.textContent).toBe('29 assumptions')
    expect(made.querySelectorAll('li').length).toBe(29)
  })

  it('renderReference(document, cell) names requirements and each method with an advisory once', () => {
    const advisory = { code: 'RANGE', method: 'rotor.hover', message: 'm' }
    const result = resultOf('a', {
      advisories: [advisory, { ...advisory, message: 'n' }],
      requirements: [{ name: 'R1', actual: 1, atLeast: 0, margin: 1, met: true, source: 'brief of the board' }],
    })
    const made = renderReference(document, cellView('a', { result }))
    expect(plainText(made.querySelector('.methods'))).toBe('Methodrotor.hoverwith advisory')
    expect(plainText(made.querySelector('.required'))).toBe('RequirementR1 brief of the board')
  })

  it('renderReference(document, cell, context) leads to each method that the cell calls, but not to what the sheet declares', () => {
    const cell = cellView('a', { source: 'const day = air.standard(0)\nconst m = mass.wing({})' })
    const own: SheetContext = {
      numberOf: () => undefined,
      known: (name) =>
        name === 'mass' ? { value: number('mass', 1, 'kg'), state: 'current', trial: false } : undefined,
    }
    const links = [...renderReference(document, cell, own).querySelectorAll('.methods a')]
    expect(links.map((link) => link.getAttribute('href'))).toEqual(['/methods#air.standard'])
  })

  it('renderReference(document, cell) folds many methods to their count', () => {
    const source = [...'abcdefg'].map((name) => `const ${name} = rotor.${name}()`).join('\n')
    const made = renderReference(document, cellView('a', { source }))
    expect(made.querySelector('.methods summary')?.textContent).toBe('7 methods')
    expect(made.querySelectorAll('.methods a')).toHaveLength(7)
  })

  it('renderReference(document, cell) without a result is empty', () => {
    expect(renderReference(document, cellView('a')).childNodes.length).toBe(0)
  })
})

function attributesOf(element: Element): Record<string, string> {
  return Object.fromEntries(Array.from(element.attributes).map((attribute) => [attribute.name, attribute.value]))
}
