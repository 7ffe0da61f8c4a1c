import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { Figure } from '../../../../shared/contracts/index.js'
import { craft, day, sector, withBattery } from './craft.js'

const { figure, mission } = preloaded
const flown = mission.fly({ aircraft: craft, segments: sector, ...day })
const kindsOf = (drawn: Figure) => new Set(drawn.marks.map((mark) => mark.mark))

describe('figure.missionProfile(options)', () => {
  it.each([
    ['altitude', 'm'],
    ['power', 'kg m^2 s^-3'],
    ['charge', '1'],
  ] as const)('draws %s over time, with a rule and a name per segment', (show, dimension) => {
    const drawn = Figure.parse(figure.missionProfile({ flown, show }))
    expect(drawn.y.dimension).toBe(dimension)
    expect(drawn.x.dimension).toBe('s')
    expect(drawn.marks.filter((mark) => mark.mark === 'rule')).toHaveLength(sector.length - 1)
    expect(drawn.marks.flatMap((mark) => (mark.mark === 'text' ? [mark.text] : []))).toEqual(
      flown.rows.map((row) => row.name),
    )
  })

  it('draws over distance, and marks the limit that was met', () => {
    const short = mission.fly({ aircraft: withBattery({ parallel: 38 }), segments: sector, ...day })
    const drawn = Figure.parse(
      figure.missionProfile({ flown: short, against: 'distance', caption: 'C', description: 'D' }),
    )
    expect(drawn).toMatchObject({ caption: 'C', description: 'D' })
    expect(drawn.x.dimension).toBe('m')
    const [dot] = drawn.marks.filter((mark) => mark.mark === 'dot')
    expect(dot).toMatchObject({ names: [short.message], ink: 'warning' })
  })

  it('keeps within the marks of a figure for a mission of many segments', () => {
    const many = mission.fly({
      aircraft: craft,
      segments: Array.from({ length: 150 }, () => ({ kind: 'hover' as const, time: 1 })),
    })
    expect(Figure.parse(figure.missionProfile({ flown: many })).marks.length).toBeLessThanOrEqual(200)
  })

  it.each<[string, () => unknown]>([
    ['something that is no mission', () => figure.missionProfile({ flown: {} as typeof flown })],
    ['nothing', () => figure.missionProfile({ flown: undefined as unknown as typeof flown })],
    [
      'a mission of coarse steps',
      () =>
        figure.missionProfile({ flown: mission.fly({ aircraft: craft, segments: sector, ...day, steps: 'coarse' }) }),
    ],
    ['what it cannot show', () => figure.missionProfile({ flown, show: 'voltage' as 'charge' })],
    ['an axis it does not know', () => figure.missionProfile({ flown, against: 'charge' as 'time' })],
  ])('refuses %s', (_, call) => {
    expect(call).toThrow(InvalidInput)
  })
})

describe('figure.powerAgainstSpeed(options)', () => {
  it('draws all, rotors and propeller, with rules at stall, conversion and rating', () => {
    const drawn = Figure.parse(figure.powerAgainstSpeed({ curve: mission.powerAgainstSpeed({ aircraft: craft }) }))
    expect(drawn.marks.map((mark) => mark.mark)).toEqual(['line', 'line', 'line', 'rule', 'rule', 'rule'])
    const { battery: _, ...free } = { ...craft, cruise: { propellerEfficiency: 0.84, efficiency: 0.9 } }
    const curve = mission.powerAgainstSpeed({ aircraft: free })
    expect(figure.powerAgainstSpeed({ curve, description: 'D' }).marks).toHaveLength(5)
  })

  it('refuses something that is no curve', () => {
    expect(() => figure.powerAgainstSpeed({ curve: {} as ReturnType<typeof mission.powerAgainstSpeed> })).toThrow(
      InvalidInput,
    )
  })
})

describe('figure.conversionCorridor(options)', () => {
  it('draws the open space as a band between stall and rotor limit', () => {
    const corridor = mission.corridor({ aircraft: craft })
    const drawn = Figure.parse(figure.conversionCorridor({ corridor, description: 'D' }))
    expect(kindsOf(drawn)).toEqual(new Set(['band', 'line', 'rule']))
    const [band] = drawn.marks
    if (band?.mark !== 'band') throw new Error('the first mark is no band')
    band.low.forEach((low, at) => {
      expect(band.high[at]).toBeGreaterThanOrEqual(low)
    })
  })

  it('refuses something that is no corridor', () => {
    expect(() => figure.conversionCorridor({ corridor: {} as ReturnType<typeof mission.corridor> })).toThrow(
      InvalidInput,
    )
  })
})
