import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { Figure } from '../../../../shared/contracts/index.js'
import { itRefuses } from '../wing/refusals.js'
import { ring } from './plans.js'

const { authority, figure, u } = preloaded
const weight = 16 * u.kN
const eight = ring('PNPNPNPN', 6 * u.kN)
const lost = authority.losses({ rotors: eight, weight })
const [first] = lost.cases

describe('figure.lossPlan(options)', () => {
  it('draws every disc to scale, fills it by its thrust, and crosses out what is lost, as a figure of the contract', () => {
    const drawn = figure.lossPlan({
      rotors: eight.map((rotor) => ({ ...rotor, radius: 1 })),
      trim: first as NonNullable<typeof first>,
      centreOfGravity: { x: 0.1, y: 0 },
      buses: [[0, 4]],
    })
    expect(Figure.parse(drawn)).toEqual(drawn)
    expect(drawn.toScale).toBe(true)
    const circles = drawn.marks.filter((mark) => mark.mark === 'circle')
    expect(circles.filter((mark) => mark.filled !== true).every((mark) => mark.radius === 1)).toBe(true)
    expect(drawn.marks.filter((mark) => mark.mark === 'text' && mark.text === 'lost')).toHaveLength(1)
    expect(drawn.description).toContain('rotor 1 ')
  })

  it('takes radii from the distances where there are none, and tells what is given up', () => {
    const trim = authority.trim({ rotors: ring('PNPN', 1e5), weight, lost: [0] })
    const drawn = figure.lossPlan({ rotors: ring('PNPN', 1e5), trim, lost: [0], description: 'Told.' })
    expect(drawn.description).toBe('Told.')
    expect(figure.lossPlan({ rotors: ring('PNPN', 1e5), trim }).caption).toBe('Thrust in normal hover')
    expect(figure.lossPlan({ rotors: ring('PNPN', 1e5), trim, lost: [0] }).description).toContain('Given up: yaw')
    const nothing = authority.trim({ rotors: [{ x: 0, y: 0, spin: 1, maxThrust: 0, torqueRatio: 0 }], weight })
    const alone = figure.lossPlan({ rotors: [{ x: 0, y: 0, spin: 1, maxThrust: 0, torqueRatio: 0 }], trim: nothing })
    expect(Figure.parse(alone)).toEqual(alone)
  })

  itRefuses(figure.lossPlan, { rotors: eight, trim: first } as Parameters<typeof figure.lossPlan>[0], [
    ['a trim of other rotors', { trim: authority.trim({ rotors: ring('PNPN', 1e5), weight }) }],
    ['no trim', { trim: null }],
    ['a place that is none', { lost: [9] }],
    ['a bus of rotors that are none', { buses: [[0, 8]] }],
    ['a centre of gravity that is no number', { centreOfGravity: { x: Number.NaN, y: 0 } }],
    ['a caption that is no text', { caption: 5 }],
  ])
})

describe('figure.peakPerLoss(options)', () => {
  it('has a bar per loss and says what is given up or on the edge', () => {
    const drawn = figure.peakPerLoss({ losses: lost, description: 'Alike.' })
    expect(Figure.parse(drawn)).toEqual(drawn)
    expect(drawn.marks[0]).toMatchObject({ names: lost.cases.map((_, at) => `rotor ${at + 1}`) })
    const names = (text: string) => {
      const [bar] = figure.peakPerLoss({ losses: authority.losses({ rotors: ring(text, 1e5), weight }) }).marks
      return bar?.mark === 'bar' ? bar.names : []
    }
    expect(names('PNPN')[0]).toBe('rotor 1 (no yaw)')
    expect(names('PNPNPN')[0]).toBe('rotor 1 (no steering)')
  })

  itRefuses(figure.peakPerLoss, { losses: lost }, [
    ['no losses', { losses: {} }],
    ['cases that are none', { losses: { ...lost, cases: [null] } }],
  ])
})

describe('figure.authorityMap(options)', () => {
  const intact = authority.attainable({ rotors: eight, weight })
  const less = authority.attainable({ rotors: eight, weight, lost: [1] })

  it('draws a polygon per map with the trim and what is required, and leaves out what has no corners', () => {
    const none = authority.attainable({ rotors: ring('PNPNPNPN', 100), weight })
    const drawn = figure.authorityMap({ maps: [intact, less, none], required: [[500, 0]], description: 'Shrinks.' })
    expect(Figure.parse(drawn)).toEqual(drawn)
    expect(drawn.marks.filter((mark) => mark.mark === 'polygon').map((mark) => mark.label)).toEqual([
      'intact',
      '1 lost',
    ])
    expect(drawn.marks.filter((mark) => mark.mark === 'dot')).toHaveLength(2)
    expect(figure.authorityMap({ maps: [intact], labels: ['as built'] }).marks[0]).toMatchObject({ label: 'as built' })
  })

  itRefuses(figure.authorityMap, { maps: [intact] }, [
    ['no maps', { maps: [] }],
    ['maps in two planes', { maps: [intact, { ...less, plane: ['pitch', 'yaw'] }] }],
    ['a required point that is no number', { required: [[1]] }],
    ['a label that is no text', { labels: [5] }],
  ])
})

describe('figure.countTrade(options) and figure.massAgainstLoss(options)', () => {
  const rows = authority.countTrade({
    counts: [6, 8, 10],
    arrangements: ['ring', 'rows'],
    footprint: { length: 9, width: 12 },
    weight,
    density: 1.1,
    figureOfMerit: 0.7,
    tipSpeed: 150,
    unitFailure: 1e-5,
  })

  it('draws hover power, rating, mass and parts over the count, each from 1, and marks counts that do not hold every loss', () => {
    const drawn = figure.countTrade({ rows, description: 'Six is the odd one.' })
    expect(Figure.parse(drawn)).toEqual(drawn)
    for (const mark of drawn.marks) if (mark.mark === 'line') expect(Math.min(...mark.y)).toBe(1)
    expect(drawn.marks.at(-1)).toMatchObject({ mark: 'dot', x: [6], label: 'not every loss held' })
    const held = figure.countTrade({ rows: rows.filter((row) => row.count > 6), arrangement: 'rows' })
    expect(held.marks.every((mark) => mark.mark === 'line')).toBe(true)
  })

  it('draws the front of mass against probability on a logarithmic axis', () => {
    const drawn = figure.massAgainstLoss({ rows, description: 'Eight.' })
    expect(Figure.parse(drawn)).toEqual(drawn)
    expect(drawn.y.scale).toBe('logarithmic')
    const front = drawn.marks.find((mark) => mark.mark === 'dot' && mark.label === 'not beaten')
    expect(front?.mark === 'dot' && (front.names?.length ?? 0)).toBeGreaterThan(0)
    const [only] = rows
    const single = figure.massAgainstLoss({ rows: [only as NonNullable<typeof only>], mass: 'gross' })
    expect(single.marks).toHaveLength(1)
  })

  itRefuses(figure.countTrade, { rows }, [
    ['no rows', { rows: [] }],
    ['rows of something else', { rows: [null] }],
    ['rows without a count', { rows: [{}] }],
    ['an arrangement that is not among them', { arrangement: 'booms' }],
    ['a power of 0', { rows: [{ ...rows[0], hoverPower: 0 }] }],
  ])

  itRefuses(figure.massAgainstLoss, { rows }, [
    ['rows without a probability', { rows: rows.map(({ lossOfLift, ...row }) => row) }],
    ['a mass that is neither', { mass: 'net' }],
    ['a mass that is no number', { rows: [{ ...rows[0], motorMass: Number.NaN }] }],
  ])
})
