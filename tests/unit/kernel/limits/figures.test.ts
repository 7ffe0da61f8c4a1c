import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { Figure, type Mark } from '../../../../shared/contracts/index.js'

const { battery, drag, figure, limits, sizing } = preloaded
const polar = drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 })
const air = { density: 1.1 }
const diagram = sizing.constraintDiagram({
  polar,
  propellerEfficiency: 0.84,
  constraints: [
    { kind: 'stall', name: 'conversion', ...air, speed: 45, maximumLift: 1.5, margin: 1.2 },
    { kind: 'cruise', ...air, speed: 58 },
    { kind: 'climb', ...air, climbSpeed: 4 },
  ],
  design: { wingLoading: 1070, specificPower: 95 },
})
const room = sizing.diskLoadingWindow({ ...air, bounds: [{ kind: 'outwash', speed: 28 }], design: 398 })
const reach = sizing.payloadRange({
  mostPayload: 400,
  evaluate: (payload, range) => ({ energy: (1200 + payload) * range - 1.5e8, bay: range - 1.1e5 }),
})
const grid = limits.hotAndHigh({
  altitudes: [0, 1500, 3000],
  temperatureOffsets: [0, 20],
  margins: (there) => ({ hover: there.density - 1, cruise: 0.1 }),
})
const rows = limits.whatSizesWhat({ limits: [{ component: 'battery', limit: 'energy', size: 390, unit: 'kg' }] })
const route = limits.routeReach({
  length: 40e3,
  height: 450,
  liftToDrag: 12,
  sites: [{ name: 'south', along: 0, runway: true }],
})
const day = limits.day({
  cell: battery.cells.power18650,
  series: 200,
  parallel: 60,
  sectors: 2,
  sector: [{ power: 90e3, duration: 300 }],
  turnaround: 300,
  chargePower: 1e5,
  ambient: 300,
  conductance: 300,
})
const kinds = (drawn: Figure) => drawn.marks.map((mark) => mark.mark)
const labels = (drawn: Figure) => drawn.marks.map((mark: Mark) => ('label' in mark ? mark.label : undefined))

describe('figures of sizing and limits', () => {
  it.each<[string, Figure]>([
    ['figure.constraintDiagram', figure.constraintDiagram({ diagram, description: 'told' })],
    ['figure.diskLoadingWindow', figure.diskLoadingWindow({ window: room, description: 'told' })],
    ['figure.payloadRange', figure.payloadRange({ aircraft: { shuttle: reach }, description: 'told' })],
    ['figure.hotAndHigh', figure.hotAndHigh({ grid, description: 'told' })],
    ['figure.whatSizesWhat', figure.whatSizesWhat({ rows, description: 'told' })],
    ['figure.routeReach', figure.routeReach({ route, description: 'told' })],
    ['figure.day', figure.day({ day, description: 'told' })],
  ])('%s(options) is a figure of the contract, frozen, with what it was told', (_, drawn) => {
    expect(Figure.parse(drawn)).toEqual(drawn)
    expect(Object.isFrozen(drawn)).toBe(true)
    expect(drawn.description).toBe('told')
  })

  it('figure.constraintDiagram(options) shades what is allowed and marks design and least power', () => {
    const drawn = figure.constraintDiagram({ diagram })
    expect(kinds(drawn)).toEqual(['polygon', 'line', 'line', 'rule', 'dot'])
    const dots = drawn.marks.at(-1)
    expect(dots?.mark === 'dot' && dots.names).toEqual(['least power', 'design'])
    const [region] = drawn.marks
    if (region?.mark !== 'polygon') throw new Error('no region')
    expect(Math.max(...region.x)).toBe(diagram.greatestWingLoading)
    expect(Math.max(...region.y)).toBe(drawn.y.to)
  })

  it('figure.constraintDiagram(options) ends its lines at the picture, and has no region where nothing is allowed in it', () => {
    const low = figure.constraintDiagram({ diagram, upTo: diagram.best.specificPower * 0.5 })
    expect(kinds(low)).not.toContain('polygon')
    expect(kinds(low)).not.toContain('dot')
    const broken = sizing.constraintDiagram({
      polar,
      propellerEfficiency: 0.84,
      constraints: [50, 52, 54, 56, 58].map((speed) => ({ kind: 'cruise', name: `${speed}`, ...air, speed })),
      design: { wingLoading: 800, specificPower: 10 },
    })
    const drawn = figure.constraintDiagram({ diagram: broken })
    expect(drawn.marks.some((mark) => mark.mark === 'line' && mark.broken === true)).toBe(true)
    const dots = drawn.marks.at(-1)
    expect(dots?.mark === 'dot' && dots.names?.[1]).toBe('design (not met)')
  })

  it('figure.diskLoadingWindow(options) draws the design as a rule where there is one', () => {
    expect(kinds(figure.diskLoadingWindow({ window: room }))).toEqual(['bar', 'rule'])
    const { design: _design, ...open } = room
    expect(kinds(figure.diskLoadingWindow({ window: open }))).toEqual(['bar'])
  })

  it('figure.payloadRange(options) names the corners, with their limits where there is one aircraft', () => {
    const namesOf = (drawn: Figure) => drawn.marks.flatMap((mark) => (mark.mark === 'dot' ? (mark.names ?? []) : []))
    expect(namesOf(figure.payloadRange({ aircraft: { one: reach } }))).toEqual([
      'full payload: energy',
      'trade: bay',
      'ferry: bay',
    ])
    expect(namesOf(figure.payloadRange({ aircraft: { one: reach, two: reach } }))).toContain('trade')
    const [curve] = figure.payloadRange({ aircraft: { one: reach } }).marks
    if (curve?.mark !== 'line') throw new Error('no line')
    expect(curve.x[0]).toBe(0)
    expect(curve.x).toContain(reach.corners[1]?.range)
  })

  it('figure.hotAndHigh(options) has dots per limit, contours of a grid and the ceiling', () => {
    expect(kinds(figure.hotAndHigh({ grid }))).toEqual(['contour', 'dot', 'dot', 'line'])
    const one = limits.hotAndHigh({ altitudes: [0, 1000], temperatureOffsets: [0], margins: () => ({ hover: 1 }) })
    expect(kinds(figure.hotAndHigh({ grid: one }))).toEqual(['dot'])
  })

  it('figure.routeReach(options) shades gaps, and tells the glide from the rotors where there are any', () => {
    expect(labels(figure.routeReach({ route }))).toEqual(['out of reach', 'nearest site', 'glide'])
    const rotors = limits.routeReach({
      length: 40e3,
      height: 450,
      liftToDrag: 12,
      sites: [
        { name: 'south', along: 0 },
        { name: 'north', along: 40e3 },
      ],
      energyLeft: 1e8,
      rotorBorne: { power: 4e5, speed: 25, landingEnergy: 2e7 },
      points: 4,
    })
    expect(labels(figure.routeReach({ route: rotors }))).toContain('glide alone')
  })

  it('figure.day(options) draws temperature, charge or motors, with the limit', () => {
    expect(figure.day({ day, limit: 330 }).marks.map((mark) => mark.mark)).toEqual(['line', 'rule'])
    expect(figure.day({ day }).y.dimension).toBe('K')
    expect(figure.day({ day, quantity: 'state of charge' }).y.dimension).toBe('1')
    expect(figure.day({ day, quantity: 'motor heat' }).y.label).toContain('lift motors')
  })

  it.each<[string, () => unknown, RegExp]>([
    ['no diagram', () => figure.constraintDiagram({ diagram: 5 as never }), /what sizing.constraintDiagram returns/],
    ['a picture without height', () => figure.constraintDiagram({ diagram, upTo: 0 }), /upTo/],
    ['an option of no diagram', () => figure.constraintDiagram({ diagram, up: 1 } as never), /option "up"/],
    ['a caption that is no text', () => figure.constraintDiagram({ diagram, caption: 5 as never }), /caption/],
    ['no window', () => figure.diskLoadingWindow({ window: {} as never }), /what sizing.diskLoadingWindow returns/],
    ['an option of no window', () => figure.diskLoadingWindow({ windw: room } as never), /did you mean "window"/],
    ['no aircraft', () => figure.payloadRange({ aircraft: {} }), /a record of what sizing.payloadRange/],
    ['nothing', () => figure.payloadRange({ aircraft: null as never }), /aircraft is null/],
    ['an aircraft that is none', () => figure.payloadRange({ aircraft: { a: 5 as never } }), /aircraft\.a is 5/],
    ['an option of no aircraft', () => figure.payloadRange({ craft: {} } as never), /option "craft"/],
    ['no grid', () => figure.hotAndHigh({ grid: {} as never }), /what limits.hotAndHigh returns/],
    ['levels that are none', () => figure.hotAndHigh({ grid, levels: [Number.NaN] }), /levels\[0\]/],
    ['an option of no grid', () => figure.hotAndHigh({ grids: grid } as never), /did you mean "grid"/],
    ['no rows', () => figure.whatSizesWhat({ rows: [] }), /what limits.whatSizesWhat returns/],
    ['rows that are none', () => figure.whatSizesWhat({ rows: [5] as never }), /what limits.whatSizesWhat returns/],
    ['an option of no rows', () => figure.whatSizesWhat({ row: rows } as never), /did you mean "rows"/],
    ['no route', () => figure.routeReach({ route: 'x' as never }), /what limits.routeReach returns/],
    ['an option of no route', () => figure.routeReach({ rout: route } as never), /did you mean "route"/],
    ['no day', () => figure.day({ day: { history: {} } as never }), /what limits.day returns/],
    ['a quantity of no day', () => figure.day({ day, quantity: 'wear' as never }), /"motor heat"/],
    ['a limit that is NaN', () => figure.day({ day, limit: Number.NaN }), /limit/],
    ['an option of no day', () => figure.day({ days: day } as never), /did you mean "day"/],
  ])('refuse %s', (_, call, message) => {
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
