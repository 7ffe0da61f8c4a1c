import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'

const { authority, limits } = preloaded

function refuses<O extends object>(call: (options: O) => unknown, right: O, rows: readonly [string, object, RegExp][]) {
  it.each(rows)('refuses %s', (_, wrong, message) => {
    const run = () => call({ ...right, ...wrong } as O)
    expect(run).toThrow(InvalidInput)
    expect(run).toThrow(message)
  })
}

describe('limits.failureTable(options)', () => {
  const one = { failure: 'lift rotor', phase: 'hover', outcome: 'lands at once' } as const
  const right = { cases: [one] }

  it('has a row for every failure in every phase, and shows what nobody has considered', () => {
    const table = limits.failureTable({
      phases: ['hover', 'transition', 'cruise'],
      cases: [
        {
          failure: 'cruise motor',
          phase: 'cruise',
          outcome: 'diverts',
          sizes: 'height',
          remains: 'glide',
          source: 'x',
        },
        { ...one, margin: 0.1 },
        { failure: 'lift rotor', phase: 'transition', needs: 'a trim at speed' },
      ],
    })
    expect(table.rows.map((row) => [row.failure, row.phase, row.outcome])).toEqual([
      ['cruise motor', 'hover', 'not considered'],
      ['cruise motor', 'transition', 'not considered'],
      ['cruise motor', 'cruise', 'diverts'],
      ['lift rotor', 'hover', 'lands at once'],
      ['lift rotor', 'transition', 'not evaluated'],
      ['lift rotor', 'cruise', 'not considered'],
    ])
    expect(table.rows[4]?.remains).toBe('needs a trim at speed')
    expect(table.rows[3]).toMatchObject({ margin: 0.1, remains: 'not stated', source: 'not stated' })
    expect(table).toMatchObject({ open: 4, lost: 0 })
    expect(table.matrix[1]).toEqual({
      failure: 'lift rotor',
      hover: 'lands at once',
      transition: 'not evaluated',
      cruise: 'not considered',
    })
  })

  it('makes rotor-out rows of what authority.trim answers: kept axes land, lost axes are a loss', () => {
    const spins = [1, -1, 1, -1, 1, -1] as const
    const rotors = spins.map((spin, index) => ({
      x: 2 * Math.cos((Math.PI / 3) * index),
      y: 2 * Math.sin((Math.PI / 3) * index),
      spin,
      maxThrust: 8e3,
      torqueRatio: 0.1,
    }))
    const lost = (hold: readonly ('lift' | 'roll' | 'pitch' | 'yaw')[]) =>
      authority.trim({ rotors, weight: 16e3, hold, lost: [0] })
    const withoutYaw = lost(['lift', 'roll', 'pitch'])
    expect(withoutYaw.feasible).toBe(true)
    const table = limits.failureTable({
      cases: [
        { failure: 'rotor 1, yaw given up', phase: 'hover', trim: withoutYaw },
        { failure: 'rotor 2', phase: 'hover', trim: { feasible: false, cannotHold: ['yaw'] }, sizes: 'cant' },
        { failure: 'rotor 3', phase: 'hover', trim: { feasible: false }, outcome: 'continues' },
        { failure: 'rotor 4', phase: 'hover', trim: { feasible: true }, outcome: 'diverts', margin: -0.1 },
        { failure: 'rotor 5', phase: 'hover', trim: { feasible: false }, outcome: 'not evaluated' },
      ],
    })
    expect(table.rows[0]).toMatchObject({
      outcome: 'lands at once',
      remains: 'all held axes',
      source: 'authority.trim',
    })
    expect(table.rows[0]?.sizes).toMatch(/^lift motor: 0\.\d+ of the weight on one rotor$/)
    expect(table.rows.slice(1).map((row) => [row.outcome, row.sizes, row.remains])).toEqual([
      ['lost', 'cant', 'cannot hold yaw'],
      ['lost', 'not stated', 'cannot hold its axes'],
      ['diverts', 'lift motor', 'all held axes'],
      ['not evaluated', 'not stated', 'cannot hold its axes'],
    ])
    expect(table).toMatchObject({ open: 1, lost: 2 })
  })

  it('says what a row needs that nothing was worked out for', () => {
    const [row] = limits.failureTable({ cases: [{ failure: 'bus', phase: 'hover' }] }).rows
    expect(row).toMatchObject({ outcome: 'not evaluated', remains: expect.stringContaining('authority.trim') })
  })

  refuses(limits.failureTable, right, [
    ['no cases', { cases: [] }, /at least one { failure, phase/],
    ['a case without failure', { cases: [{ ...one, failure: '' }] }, /cases\[0\]\.failure/],
    ['a case without phase', { cases: [{ failure: 'x' }] }, /cases\[0\]\.phase/],
    ['an empty text', { cases: [{ ...one, sizes: '' }] }, /cases\[0\]\.sizes/],
    ['an outcome it does not know', { cases: [{ ...one, outcome: 'dies' }] }, /"lost"/],
    ['a margin that is NaN', { cases: [{ ...one, margin: Number.NaN }] }, /margin/],
    [
      'a limit that is lacking while all continues',
      { cases: [{ ...one, outcome: 'continues', margin: -0.1 }] },
      /lacking/,
    ],
    ['a trim that is none', { cases: [{ ...one, trim: 5 }] }, /what authority.trim answers/],
    ['a peak that is NaN', { cases: [{ ...one, trim: { feasible: true, peakShare: Number.NaN } }] }, /peakShare/],
    ['a phase outside the list', { phases: ['cruise'] }, /cases\[0\]\.phase/],
    ['no phases', { phases: [] }, /at least one phase/],
    ['a nameless phase', { phases: ['hover', ''] }, /phases\[1\]/],
    ['the same case twice', { cases: [one, one] }, /given twice/],
    ['an unknown field', { cases: [{ ...one, size: 'x' }] }, /did you mean "sizes"/],
    ['an unknown option', { case: [] }, /did you mean "cases"/],
  ])
})

describe('limits.whatSizesWhat(options)', () => {
  const energy = { component: 'battery', limit: 'energy', size: 390, unit: 'kg' }
  const right = { limits: [energy] }

  it('names the active limit, the one behind and the gap, the closest race first', () => {
    const list = [
      { component: 'wing', limit: 'conversion', size: 15, unit: 'm^2' },
      { component: 'wing', limit: 'reserve', size: 12, unit: 'm^2' },
      { component: 'wing', limit: 'gust', size: 9, unit: 'm^2' },
      energy,
      { ...energy, limit: 'power', size: 412 },
      { component: 'boom', limit: 'frequency', size: 0.2 },
      { component: 'tail', limit: 'none', size: 0 },
    ]
    const rows = limits.whatSizesWhat({ limits: list })
    expect(rows.map((row) => [row.component, row.sizedBy, row.next])).toEqual([
      ['tail', 'none', 'nothing'],
      ['battery', 'power', 'energy'],
      ['wing', 'conversion', 'reserve'],
      ['boom', 'frequency', 'nothing'],
    ])
    expectClose(rows[1]?.gap ?? 0, 1 - 390 / 412, 1e-12)
    expect(rows[3]).toMatchObject({ gap: 1, nextSize: 0, unit: '1' })
    const given = limits.whatSizesWhat({ limits: list, order: 'given' }).map((row) => row.component)
    expect(given).toEqual(['wing', 'battery', 'boom', 'tail'])
  })

  refuses(limits.whatSizesWhat, right, [
    ['no limits', { limits: [] }, /at least one { component/],
    ['a nameless component', { limits: [{ ...energy, component: '' }] }, /limits\[0\]\.component/],
    ['a nameless limit', { limits: [{ ...energy, limit: '' }] }, /limits\[0\]\.limit/],
    ['a negative size', { limits: [{ ...energy, size: -1 }] }, /limits\[0\]\.size/],
    ['a unit that is none', { limits: [{ ...energy, unit: 'kq' }] }, /limits\[0\]\.unit/],
    ['units that differ', { limits: [energy, { ...energy, limit: 'b', unit: 'N' }] }, /"kg" as for the other limits/],
    [
      'units that come and go',
      {
        limits: [
          { ...energy, unit: '1' },
          { ...energy, limit: 'b' },
        ],
      },
      /"1" as for/,
    ],
    ['the same limit twice', { limits: [energy, energy] }, /named once for "battery"/],
    ['an order it does not know', { order: 'size' }, /"gap", "given"/],
    ['an unknown field', { limits: [{ ...energy, siz: 1 }] }, /did you mean "size"/],
    [
      'sizes beyond numbers',
      {
        limits: [
          { ...energy, size: 1.7e308 },
          { ...energy, component: 'b', size: 1.7e308 },
        ],
      },
      /range/,
    ],
    ['an unknown option', { limit: [] }, /did you mean "limits"/],
  ])
})

describe('limits.notModelled(options)', () => {
  it('lists what every subject leaves out, with sign, size and source', () => {
    const all = limits.notModelled()
    expect(all.length).toBeGreaterThan(25)
    for (const row of all) {
      expect(['flatters', 'penalises', 'either way']).toContain(row.effect)
      for (const text of Object.values(row)) expect(text).not.toBe('')
    }
    // Honest: most of what is left out makes an aircraft look better than it is.
    expect(all.filter((row) => row.effect === 'flatters').length).toBeGreaterThan(all.length / 2)
  })

  it('keeps to the subjects asked, drops what the notebook does model, and puts its own first', () => {
    const own = { notModelled: 'noise', on: 'rotors', effect: 'flatters', likelySize: 'unknown' } as const
    const rows = limits.notModelled({ subjects: ['rotor'], except: ['ground effect'], also: [own] })
    expect(rows[0]).toEqual({ ...own, subject: 'this notebook', source: 'house estimate' })
    expect(rows.slice(1).every((row) => row.subject === 'rotor')).toBe(true)
    expect(rows.map((row) => row.notModelled)).not.toContain('ground effect')
  })

  it('knows every subject of the kernel that has methods to leave something out', () => {
    const subjects = new Set<string>(limits.notModelled().map((row) => row.subject))
    for (const name of [
      'air',
      'rotor',
      'propeller',
      'wing',
      'drag',
      'mass',
      'battery',
      'powertrain',
      'mission',
      'sizing',
    ])
      expect(subjects).toContain(name)
  })

  refuses(limits.notModelled, {}, [
    ['no subjects', { subjects: [] }, /at least one subject/],
    ['a subject it does not know', { subjects: ['rotors'] }, /"rotor"/],
    ['an exception it does not know', { except: ['ground effects'] }, /"ground effect"/],
    ['exceptions that are no list', { except: 'ground effect' }, /except/],
    ['own rows that are no list', { also: 5 }, /also is 5/],
    ['an empty text', { also: [{ notModelled: '', on: 'x', effect: 'flatters', likelySize: 'x' }] }, /also\[0\]\.not/],
    [
      'an effect it does not know',
      { also: [{ notModelled: 'x', on: 'x', effect: 'good', likelySize: 'x' }] },
      /"flatters"/,
    ],
    ['an unknown field', { also: [{ notModeled: 'x' }] }, /did you mean "notModelled"/],
    ['an unknown option', { subject: [] }, /did you mean "subjects"/],
  ])
})
