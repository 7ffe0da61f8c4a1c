import { describe, expect, test } from 'vitest'
import { cautionLine, type Driver, type Drivers, Figure } from '../../../shared/contracts/index.js'
import {
  type AskedSubject,
  askedSubject,
  assumptionNames,
  driversBasis,
  driversCsv,
  driversFigure,
  driversSentence,
  elasticityText,
  renderDrivers,
  renderLeft,
  renderNoAssumptions,
  renderWithout,
  sheetContext,
} from '../../../shared/rendering/index.js'
import { cellId, cellView, newDocument, number, plainText, resultOf, sheetView } from './support.js'

const document = newDocument()
const view = sheetView([
  cellView('needs', {
    number: '2',
    result: resultOf('needs', {
      values: [
        number('packEnergy', 846_000, 'm^2 s^-2', { unit: 'Wh/kg' }),
        number('payload', 400, 'kg', { unit: 'kg' }),
        number('sector', 85_000, 'm', { unit: 'km' }),
      ],
      assumptions: [
        { name: 'packEnergy', value: 846_000, trial: 900_000, unit: 'Wh/kg' },
        { name: 'payload', value: 400, unit: 'kg' },
        { name: 'sector', value: 85_000, unit: 'km' },
      ],
    }),
  }),
  cellView('mass', {
    number: '4',
    result: resultOf('mass', { values: [number('grossMass', 2069, 'kg', { unit: 'kg' })] }),
  }),
])
const subject = askedSubject(view, 'grossMass') as AskedSubject
const names = assumptionNames(view)
const context = sheetContext(view)
const plain = (text: string) => text.replace(/[\u202f\s]+/g, ' ')

const driver = (name: string, more: Partial<Driver> = {}): Driver => ({
  name,
  value: 10,
  from: 'ten percent',
  low: { at: 9, value: 2059, change: -10 },
  high: { at: 11, value: 2079, change: 10 },
  elasticity: 0.05,
  smooth: true,
  ...more,
})
const energy = driver('packEnergy', {
  value: 846_000,
  unit: 'Wh/kg',
  from: 'range',
  low: { at: 720_000, value: 2379, change: 310 },
  high: { at: 954_000, value: 1864, change: -205 },
  elasticity: -0.789,
})
const sector = driver('sector', {
  value: 85_000,
  from: 'range',
  low: { at: 40_000, value: 2069, change: 0 },
  high: { at: 165_000, failure: 'The mass <b>runs away</b>.', cell: cellId('mass') },
  smooth: false,
  unsteady: 'failure',
})
const drivers: Drivers = {
  target: 'grossMass',
  base: 2069,
  drivers: [
    energy,
    driver('payload', { from: 'distribution' }),
    driver('hue', { low: { at: 9, value: 2069, change: 0 }, high: { at: 11, value: 2070, change: 1 }, elasticity: 0 }),
    sector,
  ],
  without: ['seats'],
  unvaried: [
    { name: 'offset', reason: 'zero without a range' },
    { name: 'lost', reason: 'not finite' },
  ],
  runs: 31,
  left: [],
}
const draw = (more: Partial<Drivers> = {}) => renderDrivers(document, subject, { ...drivers, ...more }, names, context)
const tables = (drawn: Element | null) => [...(drawn?.querySelectorAll('table') ?? [])]

describe('driversSentence', () => {
  test('driversSentence() names what moves the number most, where it fails and how many do nothing', () => {
    expect(plain(driversSentence(subject, drivers, names))).toBe(
      'gross mass, 2 069 kg, is moved most by pack energy: +310 kg at 200 Wh/kg, −205 kg at 265 Wh/kg; then by payload and hue. At the high end of sector, 165 km, it does not compute: The mass <b>runs away</b>. 1 of 7 assumptions has no effect.',
    )
  })

  test('driversSentence() says when it has only begun, when nothing moves the number, and counts further failures', () => {
    const say = (more: Partial<Drivers>) => plain(driversSentence(subject, { ...drivers, ...more }, names))
    expect(say({ left: ['span'] })).toContain('is moved most so far by pack energy')
    expect(say({ drivers: [], without: [] })).toBe('gross mass, 2 069 kg, is moved by nothing that was varied.')
    const both = driver('a', { low: { at: 1, failure: 'x' }, high: { at: 2, failure: 'y' } })
    expect(say({ drivers: [both], without: [] })).toContain('by nothing at the ends that compute.')
    const wordy = driver('b', {
      low: { at: 3, failure: 'It asks for 1.5 kg more. It closes at 4.' },
      unsteady: 'failure',
    })
    expect(say({ drivers: [energy, wordy, both, sector] })).toContain(
      'At the low end of b, 3, it does not compute: It asks for 1.5 kg more. Nor does it at the low end of a, 1, nor at the high end of a, 2, nor at 1 more end.',
    )
    expect(say({ base: Number.NaN, drivers: [] })).toBe('Stopped before anything was varied.')
  })

  test('driversBasis() says that each was varied alone, from where, and what per 1 % means', () => {
    expect(driversBasis(subject, drivers, true)).toContain(
      '7 assumptions can reach gross mass; each was varied alone, all else as in the document or on trial: 31 runs. Per 1 %:',
    )
  })

  test('elasticityText() has a sign, and words where there is no slope', () => {
    expect(
      [0.789, -2, 0, undefined].map((elasticity) => plain(elasticityText({ ...energy, elasticity } as Driver))),
    ).toEqual(['+0.789 %', '−2 %', '0 %', 'none'])
  })
})

describe('renderDrivers', () => {
  test('renderDrivers() puts what does not compute first and folds what hardly moves the number', () => {
    const [failing, moving, slight] = tables(draw())
    expect(plainText(failing?.querySelector('caption'))).toBe('Where gross mass does not compute')
    const rows = (table: Element | undefined) =>
      [...(table?.querySelectorAll('tbody') ?? [])].map((one) => one.getAttribute('data-driver'))
    expect([failing, moving, slight].map(rows)).toEqual([['sector'], ['packEnergy', 'payload'], ['hue']])
    expect(plainText(slight?.closest('details')?.querySelector('summary'))).toBe(
      '1 more moves it by less than a hundredth of the first',
    )
  })

  test('renderDrivers() gives value, ends, changes and slope in words, with a heading for every column and row', () => {
    const moving = tables(draw())[1]
    expect([...(moving?.querySelectorAll('thead th') ?? [])].map(plainText)).toEqual([
      'low end',
      'change',
      'high end',
      'per 1 %',
    ])
    const [name, numbers] = [...(moving?.querySelectorAll('tbody tr') ?? [])]
    expect(plainText(name)).toBe('pack energy 235 Wh/kg, trial ends of its stated range')
    expect(name?.querySelector('th[scope="rowgroup"] a')?.getAttribute('href')).toBe('#cell-needs')
    expect([...(numbers?.children ?? [])].map(plainText)).toEqual([
      '+310 kg at 200 Wh/kg',
      '',
      '−205 kg at 265 Wh/kg',
      '−0.789 %',
    ])
    expect(plainText(moving)).toContain('ends at 5 and 95 % of its distribution')
  })

  test('renderDrivers() names the end that fails, why and where, and shows hostile words as text', () => {
    const [failing] = tables(draw())
    expect(plainText(failing?.querySelector('.driver-numbers'))).toBe(
      'no change at 40 kmdoes not compute at 165 km+0.05 %',
    )
    const remark = failing?.querySelector('.driver-remark')
    expect(plainText(remark)).toBe(
      'At the high end of sector, 165 km, gross mass does not compute: The mass <b>runs away</b>. Failed in cell 4.',
    )
    expect(remark?.querySelector('b')).toBeNull()
    expect(remark?.querySelector('a')?.getAttribute('href')).toBe('#cell-mass')
    const hostile = '<img src=x onerror=alert(1)>"\u202e'
    const drawn = draw({ drivers: [driver(hostile)] })
    expect(drawn?.querySelector('img')).toBeNull()
    expect(drawn?.textContent).toContain('<img src=x onerror=alert(1)>"\u202e')
  })

  test.each([
    ['failure', 'Close to the value it does not compute'],
    ['bend', 'Its effect turns or jumps close to the value'],
    ['threshold', 'Small changes do nothing: a limit has to be reached first'],
  ] as const)('renderDrivers() says in plain words what %s means', (unsteady, words) => {
    expect(plainText(draw({ drivers: [driver('payload', { smooth: false, unsteady })] }))).toContain(words)
  })

  test('renderDrivers() draws bars to either side of one zero line, the low end striped', () => {
    const bars = (one: Driver) =>
      [
        ...(tables(draw({ drivers: [energy, one] }))[0]?.querySelectorAll('tbody:last-child .driver-bar-change') ?? []),
      ].map((line) => ['x1', 'x2', 'y1', 'stroke-dasharray'].map((name) => line.getAttribute(name)))
    expect(
      bars(driver('payload', { low: { at: 9, value: 0, change: -155 }, high: { at: 11, value: 0, change: 310 } })),
    ).toEqual([
      ['50%', '25.5%', '6', '2 2'],
      ['50%', '99%', '6', null],
    ])
    // Both to one side: one above the other.
    expect(
      bars(driver('payload', { low: { at: 9, value: 0, change: 155 }, high: { at: 11, value: 0, change: 310 } })),
    ).toEqual([
      ['50%', '74.5%', '3', '2 2'],
      ['50%', '99%', '9', null],
    ])
  })

  test('renderDrivers() draws nothing where nothing moves the number', () => {
    expect(draw({ drivers: [] })).toBeNull()
  })
})

describe('assumptions beside the drivers', () => {
  test('renderWithout() lists what moves nothing and what was not varied, with the reason', () => {
    const words = plainText(renderWithout(document, drivers, names))
    expect(words).toContain('3 assumptions without effect or not varied')
    expect(words).toContain('Varied alone these move nothing:seats')
    expect(words).toContain(
      'offset is 0 and states no range, so there is no telling how far it might go; give it a range.',
    )
    expect(words).toContain('lost is no finite number.')
    expect(renderWithout(document, { ...drivers, without: [], unvaried: [] }, names)).toBeNull()
  })

  test('renderLeft() names what a stop left out', () => {
    expect(plainText(renderLeft(document, { ...drivers, left: ['wingSpan', 'sector'] }, names))).toBe(
      'Stopped before these were varied: wing span, sector.',
    )
    expect(renderLeft(document, drivers, names)).toBeNull()
  })

  test('renderNoAssumptions() teaches how to state one', () => {
    expect(plainText(renderNoAssumptions(document, 'gross mass'))).toMatch(
      /No assumption can reach gross mass.*range: \[350 \* u\.kg, 450 \* u\.kg\]/,
    )
  })
})

describe('drivers that leave the page', () => {
  test('driversFigure() is a sound figure of both ends, told in its description', () => {
    const figure = driversFigure(subject, drivers, names)
    expect(Figure.safeParse(figure).success).toBe(true)
    expect(figure?.marks[0]).toMatchObject({
      mark: 'bar',
      names: ['sector', 'pack energy', 'payload'],
      value: [0, 310, -10],
    })
    expect(figure?.marks[1]).toMatchObject({ value: [0, -205, 10], label: 'at the high end' })
    expect(figure?.description).toContain('is moved most by pack energy')
    expect(driversFigure(subject, { ...drivers, drivers: [] }, names)).toBeUndefined()
  })

  test('driversFigure() of very long names stays a sound figure', () => {
    const long = driver('x'.repeat(3000))
    expect(
      Figure.safeParse(driversFigure({ ...subject, label: 'y'.repeat(5000) }, { ...drivers, drivers: [long] }, names))
        .success,
    ).toBe(true)
  })

  test('driversCsv() has every assumption in full digits, safe to open, with caution and provenance', () => {
    const text = driversCsv(
      subject,
      { ...drivers, drivers: [...drivers.drivers, driver('=HYPERLINK("x")')] },
      names,
      'Skerry, draft',
    )
    const rows = text.split('\r\n')
    expect(rows[0]).toContain('"change of gross mass at the low end, kg"')
    expect(rows[1]).toContain('sector,85,km,40,165,ends of its stated range,0,,0.05,')
    expect(rows[2]).toContain('pack energy,235,Wh/kg,200,265,ends of its stated range,310,-205,-0.789,')
    expect(text).toContain(`"'=HYPERLINK(""x"")"`)
    for (const row of ['seats,,,,,,,,,no effect', 'offset,,,,,,,,,not varied', `"Skerry, draft",,,,,,,,,`])
      expect(rows).toContain(row)
    expect(text).toContain(cautionLine.slice(0, 30))
  })
})
