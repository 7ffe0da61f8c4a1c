import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  contentFingerprint,
  freezeText,
  hashOf,
  methodsOf,
  sealOf,
  textFingerprint,
} from '../../../../kernel/cells/revision/index.js'
import {
  canonicalJson,
  placeOfRevision,
  type RevisionContent,
  RevisionName,
  revisionNameAt,
} from '../../../../shared/contracts/index.js'
import { sampleNotebook } from '../../../lab/index.js'
import { graphOf } from '../analyse/support.js'

const content = (): RevisionContent => ({
  text: freezeText(sampleNotebook()),
  results: [],
  kernelHash: 'k',
  methods: ['rotor.hover'],
  unsettled: [],
})

/** The same data with the keys of every object in another order. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, entry]) => [key, reversed(entry)]),
  )
}

describe('fingerprints', () => {
  test('hashOf() of any data does not depend on the order of keys', () =>
    fc.assert(
      fc.property(fc.jsonValue(), (value) => hashOf(reversed(value)) === hashOf(value)),
      { numRuns: 200 },
    ))

  test('hashOf() of any two texts is the same only for line endings', () =>
    fc.assert(
      fc.property(fc.string(), fc.string(), (one, other) => {
        const plain = (text: string) => text.replace(/\r\n?/g, '\n')
        return (hashOf({ one }) === hashOf({ one: other })) === (plain(one) === plain(other))
      }),
      { numRuns: 200 },
    ))

  test('hashOf() is SHA-256, as another implementation has it, over keys in order and line feeds', () => {
    const spelling = '{"a":{"z":true},"b":["x\\ny",null,1.5]}'
    expect(canonicalJson({ b: ['x\r\ny', null, 1.5], gone: undefined, a: { z: true } })).toBe(spelling)
    expect(hashOf({ b: ['x\ry', null, 1.5], a: { z: true } })).toBe(createHash('sha256').update(spelling).digest('hex'))
  })

  test('contentFingerprint() changes with any character of text, kernel, methods and results', () => {
    const all = new Set([contentFingerprint(content())])
    const changes: ((changed: RevisionContent) => void)[] = [
      ({ text }) => (text.title += ' '),
      ({ text }) => (text.titleBlock.question = 'Why?'),
      ({ text }) => text.cells[0]?.source.push(''),
      ({ text }) => text.cells.reverse(),
      ({ methods }) => methods.push('rotor.trim'),
      (changed) => (changed.kernelHash = 'l'),
      ({ unsettled, text }) => unsettled.push({ cell: text.cells[1]?.id as never, number: '2', state: 'failed' }),
    ]
    for (const change of changes) {
      const changed = content()
      change(changed)
      all.add(contentFingerprint(changed))
    }
    expect(all.size).toBe(changes.length + 1)
  })

  test('textFingerprint() does not change when a sheet is prepared, checked, dated or its cells get other order keys', () => {
    const plain = sampleNotebook()
    const signed = sampleNotebook('Tern Watch', {
      titleBlock: { ...plain.titleBlock, prepared: 'A', checked: 'B', approved: 'C', date: 'today', revision: 'B' },
      cells: plain.cells.map((cell, index) => ({ ...cell, order: `a${index}` })),
    })
    expect(textFingerprint(freezeText(signed))).toBe(textFingerprint(freezeText(plain)))
    const windows = {
      ...plain,
      title: 'Tern Watch',
      cells: plain.cells.map((cell) => ({ ...cell, source: cell.source.join('\n') })),
    }
    expect(textFingerprint(freezeText(windows))).toBe(textFingerprint(freezeText(plain)))
  })

  test('sealOf() covers all of a record but the seal itself', () => {
    expect(sealOf({ a: 1, seal: 'x' })).toBe(sealOf({ seal: 'y', a: 1 }))
    expect(sealOf({ a: 1 })).not.toBe(sealOf({ a: 2 }))
  })
})

describe('revisionNameAt', () => {
  test('revisionNameAt() counts A ... Z, AA, AB ..., and placeOfRevision() counts back', () => {
    const names = [1, 2, 26, 27, 52, 53, 702, 703].map(revisionNameAt)
    expect(names).toEqual(['A', 'B', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA'])
    for (let place = 1; place < 2000; place += 1) expect(placeOfRevision(revisionNameAt(place))).toBe(place)
    expect(RevisionName.safeParse('../A').success).toBe(false)
  })
})

describe('methodsOf', () => {
  test('methodsOf() names what of the kernel the cells use, and nothing that they declare themselves', async () => {
    const graph = await graphOf({
      a: 'const hover = rotor.hover({ mass: 3 * u.kg }).power\nconst own = { air: { standard: 1 } }.air.standard',
      b: 'const drag = 3\nconst x = drag + air.standard(0).density + rotor["hover"](1)',
      c: 'const y = (',
    })
    expect(methodsOf(graph)).toEqual(['air.standard', 'rotor', 'rotor.hover'])
  })
})
