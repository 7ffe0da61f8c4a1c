/** A document without a browser, and builders of views for the renderer's tests. */
import { parseHTML } from 'linkedom'
import type { CellId, CellResult, Fingerprint, NamedValue } from '../../../shared/contracts/index.js'
import type { CellView, SheetView } from '../../../shared/rendering/index.js'

export function newDocument(): Document {
  return parseHTML('<!doctype html><html lang="en"><head></head><body></body></html>').document as unknown as Document
}

export const cellId = (id: string) => id as CellId

export function number(name: string, si: number, dimension: string | null, more: Partial<NamedValue> = {}): NamedValue {
  return { name, value: { kind: 'number', si }, dimension, ...more }
}

export function resultOf(cell: string, more: Partial<CellResult> = {}): CellResult {
  return {
    cell: cellId(cell),
    fingerprint: '0'.repeat(64) as Fingerprint,
    outcome: 'computed',
    values: [],
    figures: [],
    advisories: [],
    assumptions: [],
    requirements: [],
    log: [],
    ...more,
  }
}

export function cellView(id: string, more: Partial<CellView> = {}): CellView {
  return {
    id: cellId(id),
    kind: 'sizing',
    number: '1',
    source: '// Hover power\nconst a = 1 * u.m\n',
    state: 'current',
    findings: [],
    folded: true,
    firstFigure: 1,
    ...more,
  }
}

export function sheetView(cells: readonly CellView[], more: Partial<SheetView> = {}): SheetView {
  return { id: 'skerry', title: 'Skerry Link shuttle', titleBlock: {}, cells, ...more }
}

/** Text with the spaces that typesetting makes narrow written as plain ones. */
export function plainText(node: Node | null | undefined): string {
  return (node?.textContent ?? '').replace(/[\u202f\s]+/g, ' ').trim()
}
