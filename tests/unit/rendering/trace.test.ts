import { describe, expect, test } from 'vitest'
import type { Method, Trace, TraceStep } from '../../../shared/contracts/index.js'
import {
  mostNodes,
  renderTraceGraph,
  renderTraceList,
  TraceSubject,
  traceBasis,
  traceGraph,
  traceOutline,
  traceSentence,
} from '../../../shared/rendering/index.js'
import { cellId, cellView, newDocument, number, plainText, resultOf, sheetView } from './support.js'

const document = newDocument()
const hostile = '<img src=x onerror=alert(1)>"\'&'
const long = 'long'.repeat(80)

const view = sheetView([
  cellView('needs', {
    number: '1',
    result: resultOf('needs', {
      values: [
        number('payload', 400, 'kg', { unit: 'kg' }),
        number('floor', 500, 'kg', { unit: 'kg', label: hostile }),
        number('folded', 0, '1'),
      ],
      assumptions: [
        { name: 'payload', value: 400, unit: 'kg', source: hostile, note: long, owner: 'A. N.' },
        { name: 'floor', value: 500, unit: 'kg' },
        { name: 'folded', value: 0, source: ' ' },
      ],
    }),
  }),
  cellView('mass', {
    number: '2a',
    result: resultOf('mass', {
      values: [
        { name: 'hoverAt', value: { kind: 'function' }, dimension: null },
        { name: 'hover', value: { kind: 'record', entries: [], more: 0 }, dimension: null },
        number('gross', 800, 'kg', { unit: 'kg', label: 'gross mass' }),
      ],
      advisories: [
        { code: 'OUTSIDE', method: 'rotor.hover', message: `figure of merit ${hostile}` },
        { code: 'OTHER', method: 'wing.area', message: 'of another method' },
      ],
    }),
    formulas: [
      {
        name: 'gross',
        expression: {
          kind: 'product',
          factors: [
            { kind: 'quantity', value: 2 },
            { kind: 'name', name: 'payload', path: [] },
          ],
        },
      },
    ],
  }),
])

const step = (name: string, more: Partial<TraceStep> = {}): TraceStep => ({
  name,
  cell: cellId('needs'),
  line: 2,
  kind: 'assumption',
  reads: [],
  methods: [],
  acts: 'moves',
  wakes: [],
  apart: false,
  ...more,
})
const inMass = (name: string, reads: readonly string[], more: Partial<TraceStep> = {}) =>
  step(name, { cell: cellId('mass'), line: 5, kind: 'other', reads, ...more })
const wakesFrom = (from: number, by = 'floor', fails = false) => [{ by, from, fails }]

const trace: Trace = {
  target: 'gross',
  base: 800,
  steps: [
    step('payload', { value: 400 }),
    step('floor', { value: 500, acts: 'inactive', wakes: wakesFrom(800) }),
    step('folded', { value: 0, acts: 'not known' }),
    inMass('hoverAt', ['payload'], { methods: ['rotor.hover'] }),
    inMass('hover', ['hoverAt', 'payload']),
    inMass('gross', ['floor', 'hover', 'payload', 'folded'], { kind: 'number', value: 800, line: 7 }),
  ],
  runs: 44,
  left: ['folded'],
}
const subject = new TraceSubject(trace, view)
const method = {
  name: 'rotor.hover',
  subject: 'rotor',
  forms: [{ equation: 'P = T v_i/FM', validity: 'hover', source: `Leishman ${hostile}` }],
} as unknown as Method
const listed = () => renderTraceList(document, subject, (name) => (name === method.name ? method : undefined))
const item = (root: Element, name: string) => root.querySelector(`li[data-name="${name}"]`) as Element
const effectOf = (name: string, more: Partial<TraceStep>) =>
  subject.effect({ ...step(name, { value: 500 }), ...more }).replaceAll('\u202f', ' ')

describe('trace in words', () => {
  test('effect() says what a step does, and what would wake it', () => {
    expect(effectOf('floor', {})).toBe('moves it')
    expect(effectOf('floor', { acts: 'inactive' })).toBe('does not move it, all else as it stands')
    expect(effectOf('floor', { acts: 'hardly' })).toBe('moves only digits that solving leaves open')
    expect(effectOf('floor', { acts: 'inactive', wakes: wakesFrom(320) })).toBe(
      'does not move it; would move it from 320 kg down',
    )
    expect(effectOf('floor', { acts: 'inactive', wakes: wakesFrom(900, 'floor', true) })).toBe(
      'does not move it; from 900 kg up it does not compute',
    )
    expect(effectOf('payload', { acts: 'inactive', wakes: wakesFrom(1, 'folded') })).toBe(
      'does not move it; would with folded at 1',
    )
    expect(effectOf('floor', { acts: 'moves', wakes: wakesFrom(520) })).toBe(
      'moves it, but not by 1 %: would move it from 520 kg up',
    )
    expect(effectOf('folded', { acts: 'not known' })).toBe('not tried')
    expect(effectOf('hover', { acts: 'not known', kind: 'other' })).toBe('')
    expect(effectOf('payload', { acts: 'not known' })).toBe('')
  })

  test('traceSentence() counts the assumptions by what they do', () => {
    expect(traceSentence(subject).replaceAll('\u202f', ' ')).toBe(
      'gross mass = 800 kg rests on 3 assumptions: 1 moves it, 1 does not, all else as it stands, 1 was not tried.',
    )
    const only = (steps: readonly TraceStep[], target = 'gross') =>
      traceSentence(new TraceSubject({ ...trace, target, steps }, view)).replaceAll('\u202f', ' ')
    const gross = inMass('gross', [], { kind: 'number', value: 800 })
    expect(only([gross])).toBe('gross mass = 800 kg rests on no assumption: every number in it is written in the text.')
    expect(only([step('payload', { value: 400 }), gross])).toBe(
      'gross mass = 800 kg rests on 1 assumption, which moves it.',
    )
    expect(only([step('payload', { value: 400 })], 'payload')).toBe(
      'payload = 400 kg is an assumption: nothing stands behind it but its source.',
    )
    expect(traceBasis(trace)).toContain('44 evaluations')
  })

  test('value() names what is no number', () => {
    const value = (more: object) =>
      new TraceSubject(
        trace,
        sheetView([
          cellView('mass', {
            result: resultOf('mass', { values: [{ name: 'hover', dimension: null, ...more }] as never }),
          }),
        ]),
      ).value(inMass('hover', []))
    expect(value({ value: { kind: 'text', text: 'x'.repeat(90) } })).toBe(`text "${'x'.repeat(60)}"`)
    expect(value({ value: { kind: 'truth', value: false } })).toBe('false')
    expect(value({ value: { kind: 'list', length: 3, items: [] } })).toBe('list of 3')
    expect(value({ value: { kind: 'record', entries: [], more: 0 } })).toBe('record')
    expect(value({ value: { kind: 'nothing' } })).toBe('')
    expect(subject.value(inMass('unheardOf', []))).toBe('')
  })
})

describe('renderTraceList()', () => {
  test('renderTraceList() opens each name once, what moves the number before what does not', () => {
    const root = listed()
    const top = item(root, 'gross').querySelector('details')?.lastElementChild as Element
    expect([...top.children].map((one) => one.getAttribute('data-name'))).toEqual([
      'hover',
      'payload',
      'folded',
      'floor',
    ])
    expect(plainText(item(root, 'gross').querySelector('summary'))).toMatch(/^from hover, payload, folded, /)
    const mentions = [...root.querySelectorAll('li[data-name="payload"]')].map((one) => plainText(one))
    expect(mentions).toHaveLength(3)
    expect(mentions.filter((text) => text.includes('as above'))).toHaveLength(2)
  })

  test('renderTraceList() leads from each step to its line and from each method to the catalogue', () => {
    const root = listed()
    expect(item(root, 'gross').querySelector('a')?.getAttribute('href')).toBe('#cell-mass-line-7')
    expect(plainText(item(root, 'gross').querySelector('.trace-head'))).toBe('gross mass 800 kg cell 2a, line 7')
    const called = root.querySelector('.trace-method') as Element
    expect(called.querySelector('a')?.getAttribute('href')).toBe('/methods#rotor.hover')
    expect(called.querySelector('.equation [role="math"]')).not.toBeNull()
    expect(plainText(called)).toContain('Valid for: hover')
    expect(plainText(called)).toContain('Source: Leishman')
  })

  test('renderTraceList() gives sources, the formula with its numbers, and advisories of the methods once', () => {
    const root = listed()
    expect(plainText(item(root, 'payload').querySelector('.trace-ground'))).toContain('assumption; source: <img')
    expect(plainText(item(root, 'floor').querySelector('.trace-ground'))).toBe('assumption; no source')
    expect(plainText(item(root, 'folded').querySelector('.trace-ground'))).toBe('assumption; no source')
    expect(item(root, 'gross').querySelector('.hand-line [role="math"]')?.getAttribute('aria-label')).toMatch(
      /2 · payload/,
    )
    const advisories = [...root.querySelectorAll('.advisory')].map((one) => plainText(one))
    expect(advisories).toHaveLength(1)
    expect(advisories[0]).toContain('figure of merit')
  })

  test('renderTraceList() without the catalogue still links the method', () => {
    const root = renderTraceList(document, subject, () => undefined)
    expect(root.querySelector('.trace-method a')?.getAttribute('href')).toBe('/methods#rotor.hover')
    expect(root.querySelector('.equation')).toBeNull()
  })

  test('renderTraceList() names apart what the text does not lead to', () => {
    const apart = {
      ...trace,
      steps: [step('folded', { apart: true }), ...trace.steps.slice(0, 2), inMass('gross', ['payload', 'floor'])],
    }
    const root = renderTraceList(document, new TraceSubject(apart, view), () => undefined)
    expect(plainText(root)).toMatch(/These move it by a way that the text does not show: ?folded/)
  })

  test('renderTraceList() and renderTraceGraph() show hostile text as text', () => {
    for (const root of [listed(), renderTraceGraph(document, subject) as Element]) {
      expect(root.querySelector('img')).toBeNull()
      expect(root.textContent).toContain('<img')
    }
  })

  test('traceOutline() of a chain of a thousand names goes no deeper than can be read', () => {
    const names = Array.from({ length: 1000 }, (_, at) => `n${at}`)
    const chain = names.map((name, at) => inMass(name, at === 0 ? [] : [`n${at - 1}`]))
    const { target } = traceOutline({ ...trace, target: 'n999', steps: chain }, view)
    let depth = 0
    let count = 0
    for (
      let level = target === undefined ? [] : [target];
      level.length > 0;
      level = level.flatMap(({ items }) => items)
    ) {
      depth += 1
      count += level.length
    }
    expect([depth <= 30, count]).toEqual([true, 1000])
  })
})

describe('traceGraph(trace)', () => {
  const wide = (count: number, more: (at: number) => Partial<TraceStep>): Trace => {
    const names = Array.from({ length: count }, (_, at) => `n${at}`)
    return {
      ...trace,
      steps: [...names.map((name, at) => step(name, more(at))), inMass('gross', names, { kind: 'number', value: 800 })],
    }
  }

  test('traceGraph() puts each step in a row of its own, farther to the right than what it is made from', () => {
    const { nodes, edges, layers, leftOut } = traceGraph(trace)
    expect(nodes.map(({ row }) => row)).toEqual([0, 1, 2, 3, 4, 5])
    expect(nodes.map(({ layer }) => layer)).toEqual([0, 0, 0, 1, 2, 3])
    for (const { from, to } of edges) expect(from.layer).toBeLessThan(to.layer)
    expect([edges.length, layers, leftOut]).toEqual([7, 4, ''])
  })

  test('traceGraph() leaves out what does not move the number first, then what is no number, and says so', () => {
    const idle = traceGraph(wide(40, (at) => ({ acts: at < 15 ? 'inactive' : 'moves' })))
    expect(idle.nodes).toHaveLength(6 + 1 + 1)
    expect(idle.leftOut).toBe('Left out of the graph: 15 that do not move it. The outline has them all.')
    const mixed = traceGraph(
      wide(50, (at) => ({ kind: at < 5 ? 'other' : 'number', acts: at === 9 ? 'inactive' : 'moves' })),
    )
    expect(mixed.nodes).toHaveLength(mostNodes)
    expect(mixed.nodes.at(-1)?.step.name).toBe('gross')
    expect(mixed.leftOut).toBe(
      'Left out of the graph: 1 that does not move it, 5 functions and records, 21 farther back. The outline has them all.',
    )
  })

  test('traceGraph() folds assumptions that the same names read beyond a few, and draws them as one', () => {
    const flat = wide(20, (at) => ({ acts: at < 3 ? 'inactive' : 'moves' }))
    const { nodes, edges, leftOut } = traceGraph(flat)
    const folded = nodes.filter((node) => node.folded.length > 0)
    expect(folded.map((node) => node.folded.map(({ name }) => name))).toEqual([
      Array.from({ length: 11 }, (_, at) => `n${at + 9}`),
    ])
    expect([nodes.length, edges.length, leftOut]).toEqual([3 + 6 + 1 + 1, 3 + 6 + 1, ''])
    const drawn = renderTraceGraph(document, new TraceSubject(flat, view))
    expect(plainText(drawn)).toContain('and 11 more that are read alike')
    expect(traceGraph(wide(8, () => ({}))).nodes).toHaveLength(9)
  })

  test('traceGraph() joins what is left by way of what is not shown', () => {
    const names = Array.from({ length: 40 }, (_, at) => `f${at}`)
    const chain: Trace = {
      ...trace,
      steps: [
        step('payload'),
        ...names.map((name, at) => inMass(name, [at === 0 ? 'payload' : `f${at - 1}`])),
        inMass('gross', ['f39'], { kind: 'number', value: 800 }),
      ],
    }
    const { nodes, edges } = traceGraph(chain)
    expect(nodes.map((node) => node.step.name)).toEqual(['payload', 'gross'])
    expect(edges).toHaveLength(1)
  })

  test('renderTraceGraph() keeps labels apart and within its width, links for the pointer, and is nothing for a number alone', () => {
    const figure = renderTraceGraph(document, subject) as Element
    const heights = [...figure.querySelectorAll('text')].map((text) => Number(text.getAttribute('y')))
    for (const [at, y] of heights.slice(1).entries()) expect(y - (heights[at] ?? 0)).toBeGreaterThanOrEqual(15)
    for (const text of figure.querySelectorAll('text'))
      expect(Number(text.getAttribute('x')) + 5.9 * (text.textContent ?? '').length).toBeLessThanOrEqual(381)
    expect(figure.querySelector('svg')?.getAttribute('aria-hidden')).toBe('true')
    const links = [...figure.querySelectorAll('a')]
    expect(links.map((link) => link.getAttribute('tabindex'))).toEqual(links.map(() => '-1'))
    expect(links.at(-1)?.getAttribute('href')).toBe('#cell-mass-line-7')
    expect(figure.querySelectorAll('[data-acts="inactive"] .trace-mark')).toHaveLength(1)
    expect(plainText(figure)).toContain('(does not move it)')
    expect(renderTraceGraph(document, new TraceSubject({ ...trace, steps: [inMass('gross', [])] }, view))).toBeNull()
  })
})
