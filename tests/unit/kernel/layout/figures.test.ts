import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { Figure, type Mark } from '../../../../shared/contracts/index.js'
import { figureToSvgText } from '../../../../shared/rendering/index.js'
import { newDocument } from '../../rendering/support.js'
import { skerryLink } from './skerry-link.js'

const { figure, layout, u } = preloaded
const checks = layout.checks(skerryLink, { footprint: 14 })
const loading = layout.loading({
  fixed: [{ name: 'empty', mass: 1500, x: 0, y: 0 }],
  loads: [
    { name: 'front seat', mass: 90, x: 1.3, y: 0 },
    { name: 'rear seat', mass: 90, x: -0.2, y: 0 },
  ],
})
const seen = layout.spinUp({ blades: 3, operating: [70, 130], modes: [{ name: 'boom', frequency: 12 }] })

const marksOf = <K extends Mark['mark']>(drawn: Figure, mark: K) =>
  drawn.marks.filter((one): one is Extract<Mark, { mark: K }> => one.mark === mark)

describe('figure.planView(options)', () => {
  it('is to scale and holds rotors with number and turn, parts, pad circle, dimensions, clearances and the centre of gravity', () => {
    const drawn = Figure.parse(figure.planView({ layout: skerryLink, centreOfGravity: { x: 0.1, y: 0 }, checks }))
    expect(drawn.toScale).toBe(true)
    const [pad, ...rotors] = marksOf(drawn, 'circle')
    expect(pad?.label).toBe('circle around turning rotors, 13.26 m')
    expect(rotors.map(({ x, y, broken }) => [x, y, broken === true])).toEqual(
      skerryLink.rotors.map(({ x, y, spin }) => [y, x, spin < 0]),
    )
    const words = marksOf(drawn, 'text').map(({ text }) => text)
    expect(words).toEqual([...'12345678', '12.85 m', '13.11 m', '2.6 m'])
    const dots = marksOf(drawn, 'dot')
    expect(dots.map(({ label }) => label)).toEqual(['least clearance', 'centre of gravity'])
    expect(dots[0]?.names).toContain('0.1 m')
    expect(drawn.description).toContain('8 rotors, 4 of them anticlockwise')
  })

  it('mirrors with the layout: what is drawn on the left is drawn on the right', () => {
    const { marks } = figure.planView({ layout: skerryLink })
    const outlines = marks
      .filter((mark) => mark.mark === 'polygon' && mark.filled === true)
      .flatMap((mark) => (mark.mark === 'polygon' ? mark.x : []))
    const sum = outlines.reduce((total, x) => total + x, 0)
    expect(Math.abs(sum)).toBeLessThan(1e-9)
  })

  it('turns its arrows the way the rotors turn, and marks the lost ones', () => {
    const drawn = figure.planView({ layout: layout.multirotor({ count: 4, rotorRadius: 1 }), lost: [2] })
    const arrows = marksOf(drawn, 'polygon').filter(({ x }) => x.length > 20 && x.length < 40)
    expect(arrows).toHaveLength(4)
    arrows.forEach(({ x }, index) => {
      // The arc lies over the hub, ahead of it: anticlockwise runs from right to left.
      const way = Math.sign((x[10] ?? 0) - (x[0] ?? 0))
      expect(way, String(index)).toBe(index % 2 === 0 ? -1 : 1)
    })
    expect(marksOf(drawn, 'circle').filter(({ label }) => label === 'lost')).toHaveLength(1)
  })

  it('leaves arrows out where there are too many rotors, and stays within the list of marks', () => {
    const many = layout.multirotor({ plan: 'grid', rows: 8, columns: 8, rotorRadius: 0.5 })
    const drawn = figure.planView({ layout: many, checks: layout.checks(many) })
    expect(() => Figure.parse(drawn)).not.toThrow()
  })
})

describe('figure.frontView(options)', () => {
  it('stands on the ground and shows disks leaning with their cant', () => {
    const plan = layout.record({
      rotors: [
        { x: 0, y: 2, z: -1, radius: 1, spin: 1, cant: { lateral: 0.2 } },
        { x: -3, y: 2, z: -1, radius: 1, spin: -1, role: 'tilt' },
      ],
      ground: 2,
    })
    const drawn = Figure.parse(figure.frontView({ layout: plan, centreOfGravity: { x: 0, y: 0 }, lost: [1] }))
    const [leaning] = marksOf(drawn, 'polygon').filter(({ ink }) => ink === 'accent')
    // Leaning to the right lowers the right rim, which is on the left as seen from ahead.
    expect(Math.max(...(leaning?.y ?? []))).toBeCloseTo(3 + Math.sin(0.2), 12)
    const lowest = leaning?.y.indexOf(Math.min(...leaning.y)) ?? 0
    expect(leaning?.x[lowest]).toBeLessThan(-2)
    expect(marksOf(drawn, 'text').map(({ text }) => text)).toContain('1 2')
    expect(marksOf(drawn, 'rule')).toHaveLength(1)
  })

  it('draws the Skerry Link with heights and span', () => {
    const drawn = Figure.parse(figure.frontView({ layout: skerryLink, checks }))
    expect(marksOf(drawn, 'text').map(({ text }) => text)).toEqual(
      expect.arrayContaining(['1 3 5 7', '2 4 6 8', '12.85 m', '2.39 m', '0.5 m']),
    )
  })
})

describe('figure.loadingEnvelope(options)', () => {
  const limits = [
    { label: 'one rotor lost', forward: 0.2, aft: -0.3 },
    { label: 'cruise', aft: -0.25 },
    { label: 'hover trim', mass: [1400, 1600, 1800], forward: [3, 2.5, 2], aft: [-3, -2.5, -2] },
  ]

  it('draws every loading order as a region, near limits as lines, far ones in words', () => {
    const drawn = Figure.parse(figure.loadingEnvelope({ loading, limits, greatestMass: 1700 }))
    const [region] = marksOf(drawn, 'polygon')
    expect(region).toMatchObject({ filled: true, label: 'every loading order' })
    expect(region?.x).toHaveLength(loading.forward.length + loading.aft.length)
    const labels = marksOf(drawn, 'dot').map(({ label }) => label ?? '')
    expect(labels.slice(0, 2)).toEqual(['one rotor lost', 'cruise'])
    expect(labels[2]).toMatch(/^hover trim, forward 2\.\d+ m away, aft 2\.\d+ m away$/)
    for (const { x, y } of [...marksOf(drawn, 'polygon'), ...marksOf(drawn, 'line')]) {
      expect(Math.min(...x)).toBeGreaterThanOrEqual(drawn.x.from ?? 0)
      expect(Math.max(...x)).toBeLessThanOrEqual(drawn.x.to ?? 0)
      expect(Math.max(...y)).toBeLessThanOrEqual((drawn.y.to ?? 0) + 1e-9)
    }
  })

  it('draws limits over mass, and loadings alone', () => {
    const near = [{ label: 'hover trim', mass: [1400, 1550, 1800], forward: [0.3, 0.25, 0.2] }]
    const [line, ...others] = marksOf(figure.loadingEnvelope({ loading, limits: near }), 'line')
    expect(others).toEqual([])
    expect(line?.broken).toBe(true)
    // At 1550 kg the limit lies 0.25 m ahead of the origin, on the left.
    expect(line?.x[line.y.indexOf(1550)]).toBeCloseTo(-0.25, 12)
    expect(marksOf(figure.loadingEnvelope({ loading }), 'line')).toEqual([])
  })
})

describe('figure.spinUp(options)', () => {
  it('draws modes, excitations, meetings and the range of work', () => {
    const drawn = Figure.parse(figure.spinUp({ spinUp: seen }))
    expect(marksOf(drawn, 'line').map(({ label }) => label)).toEqual(['1 per turn', '3 per turn', 'boom'])
    expect(marksOf(drawn, 'dot').map(({ label, names }) => [label, names])).toEqual([
      ['passed in spin-up', ['240 rpm']],
      ['meets while working', ['720 rpm']],
    ])
    expect(marksOf(drawn, 'band')[0]?.x).toEqual([70, 130])
  })
})

it.each([
  ['plan', figure.planView({ layout: skerryLink, checks })],
  ['front', figure.frontView({ layout: skerryLink, checks })],
  ['loading', figure.loadingEnvelope({ loading, limits: [{ label: 'trim', forward: 0.3, aft: -0.3 }] })],
  ['spin-up', figure.spinUp({ spinUp: seen })],
])('the %s figure is drawn wide and narrow without labels that are no numbers', (_, drawn) => {
  for (const width of [320, 720]) {
    const svg = figureToSvgText(newDocument(), drawn, { width })
    expect(svg).toContain('<svg')
    expect(svg).not.toMatch(/NaN|Infinity|undefined/)
  }
})

it.each<[string, () => unknown, RegExp]>([
  ['what is no layout', () => figure.planView({ layout: 5 as unknown as typeof skerryLink }), /layout is 5/],
  [
    'checks that are none',
    () => figure.planView({ layout: skerryLink, checks: {} as typeof checks }),
    /layout\.checks returns/,
  ],
  ['a lost rotor that is none', () => figure.frontView({ layout: skerryLink, lost: [8] }), /lost is \[8\].*0 to 7/],
  [
    'lost rotors that are no list',
    () => figure.planView({ layout: skerryLink, lost: 3 as unknown as [] }),
    /lost is 3/,
  ],
  [
    'a centre that is no place',
    () => figure.planView({ layout: skerryLink, centreOfGravity: { x: Number.NaN, y: 0 } }),
    /centreOfGravity\.x/,
  ],
  [
    'a height that is none',
    () => figure.frontView({ layout: skerryLink, centreOfGravity: { x: 0, y: 0, z: Number.NaN } }),
    /centreOfGravity\.z/,
  ],
  [
    'a caption that is no text',
    () => figure.planView({ layout: skerryLink, caption: 5 as unknown as string }),
    /caption/,
  ],
  ['what is no loading', () => figure.loadingEnvelope({ loading: {} as typeof loading }), /layout\.loading returns/],
  ['a greatest mass of nothing', () => figure.loadingEnvelope({ loading, greatestMass: 0 * u.kg }), /greatestMass/],
  ['what is no spin-up', () => figure.spinUp({ spinUp: {} as typeof seen }), /layout\.spinUp returns/],
  [
    'an unknown option',
    () => figure.spinUp({ spinUp: seen, title: 'x' } as unknown as { spinUp: typeof seen }),
    /option "title"/,
  ],
])('figures of layouts refuse %s', (_, call, message) => {
  expect(call).toThrow(InvalidInput)
  expect(call).toThrow(message)
})
