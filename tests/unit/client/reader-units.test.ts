import { parseHTML } from 'linkedom'
import { describe, expect, it } from 'vitest'
import { ReaderUnits, type UnitsMemory } from '../../../client/notebook/reader-units.js'
import type { UnitSystem } from '../../../shared/rendering/index.js'
import { cellView, number, resultOf, sheetView } from '../rendering/support.js'

const { document } = parseHTML('<!doctype html><html><body></body></html>')

function memory(kept: Record<string, string> = {}): UnitsMemory & { readonly kept: Record<string, string> } {
  return {
    kept,
    getItem: (key) => kept[key] ?? null,
    setItem: (key, value) => {
      kept[key] = value
    },
    removeItem: (key) => {
      delete kept[key]
    },
  }
}

function pressed(units: ReaderUnits): string[] {
  const buttons = [...units.element.querySelectorAll('button')]
  return buttons.filter((one) => one.getAttribute('aria-pressed') === 'true').map((one) => one.textContent ?? '')
}

describe('ReaderUnits', () => {
  it('ReaderUnits shows the units as written until a reader chooses others', () => {
    const units = new ReaderUnits(document as unknown as Document, memory(), () => {})
    const view = sheetView([cellView('a')])
    expect(units.of(view)).toBe(view)
    expect(pressed(units)).toEqual(['as written'])
  })

  it('ReaderUnits remembers a choice in this browser and tells it once', () => {
    const kept = memory()
    const told: UnitSystem[] = []
    const units = new ReaderUnits(document as unknown as Document, kept, (system) => told.push(system))
    units.choose('aviation')
    units.choose('aviation')
    expect(told).toEqual(['aviation'])
    const again = new ReaderUnits(document as unknown as Document, kept, () => {})
    expect(again.system).toBe('aviation')
    expect(pressed(again)).toEqual(['aviation'])
    const view = sheetView([cellView('a', { result: resultOf('a', { values: [number('mass', 1, 'kg')] }) })])
    expect(again.of(view).cells[0]?.result?.values[0]?.unit).toBe('lb')
    again.choose('as written')
    expect(kept.kept).toEqual({})
  })

  it('ReaderUnits works where the storage refuses or holds something else', () => {
    const refuse = () => {
      throw new Error('forbidden')
    }
    const units = new ReaderUnits(
      document as unknown as Document,
      { getItem: refuse, setItem: refuse, removeItem: refuse },
      () => {},
    )
    units.choose('SI')
    expect(units.system).toBe('SI')
    expect(new ReaderUnits(document as unknown as Document, undefined, () => {}).system).toBe('as written')
    expect(
      new ReaderUnits(document as unknown as Document, memory({ 'hoverfolio units': 'furlongs' }), () => {}).system,
    ).toBe('as written')
  })
})
