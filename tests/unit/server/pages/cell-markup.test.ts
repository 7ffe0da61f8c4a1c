import { describe, expect, it } from 'vitest'
import { CellMarkup, sheetMarkup } from '../../../../server/pages/index.js'
import type { Expression, Formula } from '../../../../shared/contracts/index.js'
import { type CellView, renderSheet, sheetContext } from '../../../../shared/rendering/index.js'
import { cellView, newDocument, number, resultOf, sheetView } from '../../rendering/support.js'

const name = (of: string): Expression => ({ kind: 'name', name: of, path: [] })

/** Cell `a` states a span; cell `b` works with it; cell `c` with neither. */
function cells(span: number): CellView[] {
  const formulas: Formula[] = [
    { name: 'width', expression: { kind: 'product', factors: [name('span'), name('span')] } },
  ]
  return [
    cellView('a', { result: resultOf('a', { values: [number('span', span, 'm', { stated: true })] }) }),
    cellView('b', {
      number: '2',
      formulas,
      result: resultOf('b', { values: [number('width', 24, 'm', { stated: true })] }),
    }),
    cellView('c', { number: '3', result: resultOf('c', { values: [number('chord', 1.5, 'm', { stated: true })] }) }),
  ]
}

/** Draws a sheet and says how many cells were drawn anew. */
function bench() {
  const markup = new CellMarkup()
  return (views: readonly CellView[]) => {
    let drawn = 0
    const context = sheetContext({ cells: views })
    const rows = views.map((view) =>
      markup.draw('skerry', view, context, () => {
        drawn += 1
        return newDocument()
      }),
    )
    return { drawn, rows }
  }
}

describe('CellMarkup', () => {
  it('draw(sheet, view, context, newDocument) draws nothing anew when nothing changed, be it the same object or a copy', () => {
    const draw = bench()
    const first = draw(cells(12))
    expect(first.drawn).toBe(3)
    const again = draw(structuredClone(cells(12)))
    expect(again).toEqual({ drawn: 0, rows: first.rows })
  })

  it('draw(sheet, view, context, newDocument) draws the cell that changed and the one that works with its value', () => {
    const draw = bench()
    const first = draw(cells(12))
    const after = draw(cells(13))
    expect(after.drawn).toBe(2)
    expect(first.rows[1]).toContain('12')
    expect(after.rows[1]).toContain('13')
    expect(after.rows[2]).toBe(first.rows[2])
  })

  it('draw(sheet, view, context, newDocument) draws a cell anew when one it names has another number', () => {
    const draw = bench()
    const held = (of: string) => [
      cellView('a', { number: of }),
      cellView('b', {
        number: '9',
        state: 'held back',
        result: resultOf('b', { outcome: 'held back', heldBackBy: 'a' as never }),
      }),
    ]
    draw(held('1'))
    const after = draw(held('7'))
    expect(after.drawn).toBe(2)
    expect(after.rows[1]).toContain('cell 7')
  })

  it('draw(sheet, view, context, newDocument) draws anew when a name begins to have a value, and keeps sheets apart', () => {
    const draw = bench()
    const [a, b] = cells(12)
    if (a === undefined || b === undefined) throw new Error('there are three cells')
    const { result: _, ...bare } = a
    draw([bare, b])
    expect(draw([a, b]).drawn).toBe(2)
    const markup = new CellMarkup()
    const alone = sheetContext({ cells: [a] })
    let drawn = 0
    const fresh = () => {
      drawn += 1
      return newDocument()
    }
    markup.draw('skerry', a, alone, fresh)
    markup.draw('tern', a, alone, fresh)
    expect(drawn).toBe(2)
  })
})

describe('sheetMarkup', () => {
  it('sheetMarkup(view, drawn) is what the renderer makes of the whole sheet, the first time and from memory', () => {
    const view = sheetView(cells(12), { title: 'A <!--cells--> title' })
    const whole = renderSheet(newDocument(), view).outerHTML
    const drawn = new CellMarkup()
    expect(sheetMarkup(view, drawn)).toBe(whole)
    expect(sheetMarkup(view, drawn)).toBe(whole)
  })

  it('sheetMarkup(view, drawn) of a sheet without cells says how to begin', () => {
    const view = sheetView([])
    expect(sheetMarkup(view, new CellMarkup())).toBe(renderSheet(newDocument(), view).outerHTML)
  })
})
