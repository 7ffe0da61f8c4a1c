/** Tables and sheets that are taken away: what they state, and that no field of a notebook can do more than be read. */
import { parseHTML } from 'linkedom'
import { describe, expect, it } from 'vitest'
import { complianceCsv, registerCsv, sheetFile } from '../../../server/exports/index.js'
import {
  type AssumptionRecord,
  cautionInFull,
  cautionLine,
  type Fingerprint,
  type Method,
  type Provenance,
  provenanceLine,
  type RequirementRecord,
  revisionWords,
} from '../../../shared/contracts/index.js'
import { assumptionRows, csvField, requirementRows, type SheetView, writeCsv } from '../../../shared/rendering/index.js'
import { cellId, cellView, number, resultOf, sheetView } from '../rendering/support.js'

const fingerprint = `4c1f90ae${'0'.repeat(56)}` as Fingerprint
const provenance: Provenance = { title: 'Skerry Link', revision: 'B, issued', fingerprint }

function viewWith(assumption: Partial<AssumptionRecord>, requirement: Partial<RequirementRecord> = {}): SheetView {
  const result = resultOf('a', {
    values: [number('packEnergy', 846_000, 'm^2 s^-2')],
    assumptions: [{ name: 'packEnergy', value: 846_000, unit: 'Wh/kg', ...assumption }],
    requirements: [
      { name: 'R1', actual: 1320, atLeast: 1200, margin: 120, met: true, unit: 'min', source: 'brief', ...requirement },
    ],
  })
  return sheetView([cellView('a', { number: '3a', result, source: '// Pack\nconst d = air.standard(0)' })])
}

/** Reads RFC 4180 back; not with the writer's own rules, but with the standard's. */
function readCsv(text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/y
  while (field.lastIndex < text.length) {
    const match = field.exec(text)
    if (match === null)
      throw new Error(`not RFC 4180 at ${JSON.stringify(text.slice(field.lastIndex, field.lastIndex + 40))}`)
    row.push(match[1]?.replaceAll('""', '"') ?? match[2] ?? '')
    if (match[3] === '\r\n') {
      rows.push(row)
      row = []
    }
  }
  return rows
}

function table(text: string): { head: string[]; rows: Record<string, string>[] } {
  const [head = [], heads = [], ...rows] = readCsv(text.replace(/^\ufeff/, ''))
  return { head, rows: rows.map((row) => Object.fromEntries(heads.map((name, index) => [name, row[index] ?? '']))) }
}

describe('csvField(cell)', () => {
  it('keeps a text that a spreadsheet would take for a formula from being one', () => {
    for (const text of ['=1+1', '+cmd', '-2+3', '@SUM(A1)', '\tx', '\rx', ' =1', '\u00a0=1', '＝1'])
      expect(readCsv(writeCsv([[text]]))).toEqual([[`'${text}`]])
  })

  it('leaves numbers numbers, and plain text plain', () => {
    expect([-1.5, 1e-7, '-1.5', '+3e4', 'a-b', ''].map(csvField)).toEqual(['-1.5', '1e-7', '-1.5', '+3e4', 'a-b', ''])
  })

  it('quotes commas, quotes and line breaks so that they read back', () => {
    const row = ['a,b', 'say "so"', 'two\r\nlines', 'ß ² \u202e', '']
    expect(readCsv(writeCsv([row]))).toEqual([row])
  })
})

describe('registerCsv(rows, provenance)', () => {
  it('has caution, revision and fingerprint in its first line, of as many fields as every other', () => {
    const text = registerCsv(assumptionRows(viewWith({})), provenance)
    expect(text.startsWith('\ufeff')).toBe(true)
    const { head } = table(text)
    expect(head.slice(0, 4)).toEqual([cautionLine, 'Skerry Link', 'revision B, issued', `fingerprint ${fingerprint}`])
    expect(new Set(readCsv(text.slice(1)).map((row) => row.length)).size).toBe(1)
  })

  it('states value and range in the unit of the author and in SI, the unit apart', () => {
    const view = viewWith({
      low: 720_000,
      high: 954_000,
      distribution: { kind: 'normal', mean: 846_000, deviation: 18_000 },
      correlated: { packMass: 0.4 },
      source: 'supplier letter',
      owner: 'battery group',
    })
    const { rows } = table(
      registerCsv(
        assumptionRows(view, () => [cellId('a')]),
        provenance,
      ),
    )
    expect(rows).toEqual([
      {
        name: 'packEnergy',
        value: '235',
        unit: 'Wh/kg',
        low: '200',
        high: '265',
        'SI value': '846000',
        'SI unit': 'J/kg',
        'SI low': '720000',
        'SI high': '954000',
        distribution: 'normal, deviation 5; correlated with packMass 0.4',
        source: 'supplier letter',
        note: '',
        owner: 'battery group',
        cell: '3a',
        'used in': '3a',
        state: 'current',
      },
    ])
  })

  it('says each kind of distribution in the unit of its row', () => {
    const kinds: readonly [AssumptionRecord['distribution'], string][] = [
      [{ kind: 'uniform', low: 720_000, high: 954_000 }, 'uniform, 200 to 265'],
      [{ kind: 'triangular', low: 720_000, mode: 846_000, high: 954_000 }, 'triangular, 200 to 265'],
      [{ kind: 'lognormal', median: 846_000, factor: 1.2 }, 'lognormal, factor 1.2'],
      [undefined, ''],
    ]
    for (const [distribution, words] of kinds) {
      const view = viewWith(distribution === undefined ? {} : { distribution })
      expect(table(registerCsv(assumptionRows(view), provenance)).rows[0]?.distribution).toBe(words)
    }
  })

  it('falls back to SI for a unit that cannot be read, and names what is not finite', () => {
    const { rows } = table(registerCsv(assumptionRows(viewWith({ unit: 'bananas', value: 'Infinity' })), provenance))
    expect([rows[0]?.value, rows[0]?.unit, rows[0]?.['SI value']]).toEqual(['Infinity', 'J/kg', 'Infinity'])
  })
})

describe('complianceCsv(rows, provenance)', () => {
  const rowOf = (requirement: Partial<RequirementRecord>) =>
    table(complianceCsv(requirementRows(viewWith({}, requirement)), provenance)).rows[0]

  it('states actual, limit and margin with the rule they answer', () => {
    expect(rowOf({ paragraph: 'MOC 2115', means: 'analysis', owner: 'performance' })).toMatchObject({
      requirement: 'R1',
      'rule paragraph': 'MOC 2115',
      means: 'analysis',
      cell: '3a',
      actual: '22',
      bound: 'at least',
      limit: '20',
      margin: '2',
      unit: 'min',
      'SI actual': '1320',
      'SI limit': '1200',
      'SI margin': '120',
      'SI unit': 's',
      met: 'met',
      source: 'brief',
      owner: 'performance',
    })
  })

  it('gives of two bounds the nearer, which the margin is measured from', () => {
    const both = { atLeast: 600, atMost: 1380, margin: 60 }
    expect(rowOf(both)).toMatchObject({ bound: 'at most', limit: '23', margin: '1' })
    expect(rowOf({ ...both, actual: 660 })).toMatchObject({ bound: 'at least', limit: '10' })
    expect(rowOf({ atMost: 1200, margin: -120, met: false })).toMatchObject({ met: 'not met' })
  })
})

describe('revisionWords(titleBlock, mark, fingerprint)', () => {
  const mark = { name: 'B' as never, fingerprint }

  it('names the issued revision only where what is exported is what was issued', () => {
    expect(revisionWords({ revision: 'C' }, mark, fingerprint)).toBe('B, issued')
    expect(revisionWords({ revision: 'C' }, mark, '0'.repeat(64) as Fingerprint)).toBe('after B, changed since')
    expect(revisionWords({}, { ...mark, altered: 'its file was changed' }, fingerprint)).toBe('after B, changed since')
  })

  it('says of what its author wrote that it was not issued', () => {
    expect(revisionWords({ revision: ' A, concept ' }, undefined, fingerprint)).toBe('A, concept (not issued)')
    expect(revisionWords(undefined, undefined, fingerprint)).toBe('draft (not issued)')
  })
})

describe('sheetFile(parts)', () => {
  const method: Method = {
    name: 'air.standard',
    subject: 'air',
    forms: [
      {
        summary: 'Air.',
        equation: 'p = p0',
        takes: [],
        arguments: [],
        gives: { name: '', kind: 'air', dimension: null, optional: false, text: '' },
        throws: [],
        method: 'Closed form.',
        validity: 'To 20 km.',
        source: 'ISO 2533.',
        example: { source: '', cell: '', values: [], advisories: [] },
      },
    ],
  }
  const made = async (view: SheetView, words: Provenance = provenance) => {
    const text = await sheetFile({ view, provenance: words, methods: [method], readers: () => [cellId('a')] })
    return { text, document: parseHTML(text).document as unknown as Document }
  }

  it('carries sheet, register, requirements, the methods used and the cautions in full', async () => {
    const { document } = await made(viewWith({ source: 'supplier letter' }))
    expect([...document.querySelectorAll('.appendix')].map(({ id }) => id)).toEqual([
      'register',
      'requirements',
      'methods',
      'cautions',
    ])
    expect(document.querySelector('#register tbody')?.textContent).toContain('supplier letter')
    expect(document.getElementById('cautions')?.textContent).toContain(cautionInFull[1])
    expect(document.querySelector('.appendix-end')?.textContent).toContain(provenanceLine(provenance))
    expect(document.querySelector('[data-field="fingerprint"] dd')?.textContent).toBe('4c1f 90ae')
    expect(document.querySelector('.references.methods a')?.getAttribute('href')).toBe('#method-air.standard')
    expect(document.getElementById('method-air.standard')).not.toBeNull()
  })

  it('leaves out what is not there', async () => {
    const { document } = await made(sheetView([]))
    expect([...document.querySelectorAll('.appendix')].map(({ id }) => id)).toEqual(['cautions'])
  })

  it('runs nothing, fetches nothing and leads to no place of the server', async () => {
    const { text, document } = await made(viewWith({}))
    expect(document.querySelector('meta[http-equiv="content-security-policy"]')?.getAttribute('content')).toContain(
      "default-src 'none'",
    )
    expect(document.querySelectorAll('script, link, img, iframe, form, [onclick], [onerror]')).toHaveLength(0)
    const addresses = [...document.querySelectorAll('[href], [src]')].map((each) => each.getAttribute('href') ?? '')
    expect(addresses.filter((address) => !address.startsWith('#'))).toEqual([])
    expect(text.match(/url\((?!data:)/g) ?? []).toEqual([])
    expect(text).not.toMatch(/@import/)
  })

  it('has the mathematics font only where there is a formula', async () => {
    const plain = sheetView([cellView('a', { kind: 'rationale', source: 'Prose.' })])
    const withFormula = sheetView([cellView('a', { kind: 'rationale', source: 'So $x$ is.' })])
    const [without, with_] = [(await made(plain)).text, (await made(withFormula)).text]
    expect(without).not.toContain('font-family: "Noto Sans Math"; font-weight')
    expect(with_).toContain('font-family: "Noto Sans Math"; font-weight')
    expect(without.length).toBeLessThan(420_000)
    expect(with_.length).toBeLessThan(800_000)
  })

  it('shows hostile text of every field as text', async () => {
    const hostile = '</title></style><script>alert(1)</script>"\'><img src=x onerror=alert(1)>\u202e"; } @import "x'
    const view = viewWith(
      { name: hostile, source: hostile, note: hostile, owner: hostile },
      { name: hostile, source: hostile, paragraph: hostile, means: hostile, owner: hostile },
    )
    const titled: SheetView = {
      ...view,
      title: hostile,
      titleBlock: { project: hostile, revision: hostile, question: hostile },
    }
    const { text, document } = await made(titled, { ...provenance, title: hostile, revision: hostile })
    expect(document.querySelectorAll('script, img')).toHaveLength(0)
    expect(document.querySelector('title')?.textContent).toBe(hostile)
    expect(document.querySelector('h1')?.textContent).toBe(hostile)
    expect(document.querySelectorAll('style')).toHaveLength(1)
    expect(text.slice(text.indexOf('<style>'), text.indexOf('</style>'))).not.toContain('@import')
    const csv = registerCsv(assumptionRows(titled), { ...provenance, title: hostile, revision: hostile })
    expect(table(csv).rows[0]?.source).toBe(hostile)
  })
})
