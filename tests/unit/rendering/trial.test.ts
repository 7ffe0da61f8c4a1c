import { parseHTML } from 'linkedom'
import { describe, expect, test } from 'vitest'
import { CellId, type CellResult, Fingerprint } from '../../../shared/contracts/index.js'
import { renderFigures, renderResult } from '../../../shared/rendering/sheet/index.js'
import type { CellView, TrialMarks } from '../../../shared/rendering/view.js'
import { powerCurve } from './figures.js'

const { document } = parseHTML('<!doctype html><html><body></body></html>')

const result: CellResult = {
  cell: CellId.parse('a'),
  fingerprint: Fingerprint.parse('0'.repeat(64)),
  outcome: 'computed',
  values: [
    { name: 'grossMass', value: { kind: 'number', si: 1702 }, dimension: 'kg' },
    { name: 'payload', value: { kind: 'number', si: 400 }, dimension: 'kg' },
    { name: 'closes', value: { kind: 'truth', value: true }, dimension: null },
    {
      name: 'legs',
      value: {
        kind: 'list',
        length: 1,
        items: [{ kind: 'record', entries: [['time', { kind: 'number', si: 1 }]], more: 0 }],
      },
      dimension: null,
    },
  ],
  figures: [powerCurve],
  advisories: [],
  assumptions: [],
  requirements: [
    { name: 'Heaviest', actual: 1702, atMost: 1800, margin: 98, met: true, unit: 'kg' },
    { name: 'Pad', actual: 12, atMost: 14, margin: 2, met: true, unit: 'm' },
  ],
  log: [],
}

function cell(trial?: TrialMarks): CellView {
  return {
    id: result.cell,
    kind: 'sizing',
    number: '2',
    source: '',
    state: 'current',
    result,
    findings: [],
    folded: true,
    firstFigure: 1,
    ...(trial === undefined ? {} : { trial }),
  }
}

const words = (element: Element | null | undefined) => (element?.textContent ?? '').replace(/[\u00a0\u202f]/g, ' ')

describe('a cell that shows trial values', () => {
  const trial: TrialMarks = {
    values: [{ name: 'grossMass', said: { kind: 'number', si: 1637 } }, { name: 'closes' }, { name: 'legs' }],
    requirements: ['Heaviest'],
    figures: true,
  }

  test('renderResult(document, cell) says in words which values are of a trial, and what the document says', () => {
    const drawn = renderResult(document, cell(trial))
    const row = (name: string) => drawn.querySelector(`.value[data-name="${name}"]`)
    expect(words(row('grossMass'))).toBe('gross mass trial; document 1 637 kg1 702 kg')
    expect(words(row('closes'))).toContain('closes trial')
    expect(row('payload')?.hasAttribute('data-trial')).toBe(false)
    expect([...drawn.querySelectorAll('.requirement[data-trial]')].map(words)).toEqual([
      '✓ Heaviest: met trial margin 98 kg (1 702 kg; at most 1 800 kg)',
    ])
    expect(words(drawn.querySelector('.state'))).toBe('current, with trial values')
  })

  test('renderFigures(document, cell) says of figures and tables that they are of a trial', () => {
    const drawn = renderFigures(document, cell(trial))
    expect(words(drawn.querySelector(':scope > .tried'))).toContain("not the document's")
    expect(words(drawn.querySelector('.record-table[data-trial] summary'))).toContain('trial')
  })

  test('renderResult(document, cell) without a trial marks nothing', () => {
    for (const drawn of [renderResult(document, cell()), renderFigures(document, cell())])
      expect(drawn.querySelectorAll('.tried, [data-trial]')).toHaveLength(0)
  })
})
