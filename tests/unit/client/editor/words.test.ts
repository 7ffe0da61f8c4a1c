import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyRenaming } from '../../../../client/editor/apply-renaming.js'
import { carryOffset, carrySelection } from '../../../../client/editor/binding/carry-selection.js'
import { applyEdits, editsOfDelta } from '../../../../client/editor/binding/text-delta.js'
import { dimensionInWords, unitTag } from '../../../../client/editor/language/dimension-words.js'
import { documentationMarkdown, fullMarkdown } from '../../../../client/editor/language/documentation-markdown.js'
import { meaningMarkdown } from '../../../../client/editor/language/meaning-markdown.js'
import { withNumbers } from '../../../../client/editor/language/message-numbers.js'
import { lineTokens } from '../../../../client/editor/look/line-tokens.js'
import { ownEdit } from '../../../../client/live/document.js'
import { cellId } from './ids.js'

describe('dimensionInWords', () => {
  it.each([
    ['kg m s^-2', 'a force, in N'],
    ['kg m^2 s^-3', 'a power, in W'],
    ['kg m^-3', 'a density, in kg/m³'],
    ['1', 'a pure number'],
    ['kg^2 m', 'in kg² m'],
  ])('dimensionInWords("%s") is "%s"', (dimension, words) => {
    expect(dimensionInWords(dimension)).toBe(words)
  })

  it('dimensionInWords of text that is no dimension is nothing', () => {
    expect(dimensionInWords('apples')).toBeUndefined()
  })

  it('unitTag is nothing for a pure number and for the unknown', () => {
    expect([unitTag('1'), unitTag(null), unitTag('kg m s^-2'), unitTag('m^2')]).toEqual([
      undefined,
      undefined,
      'N',
      'm²',
    ])
  })
})

describe('documentationMarkdown', () => {
  it('documentationMarkdown orders equation, arguments, results, validity and source whatever the order of tags', () => {
    const tags = [
      { tag: 'source', text: 'A book.' },
      { tag: 'param', text: 'options - `thrust` T [N]' },
      { tag: 'validity', text: 'Hover.' },
      { tag: 'equation', text: 'P = T v_i' },
    ]
    const markdown = documentationMarkdown({ text: 'Power.', tags })
    expect(markdown).toBe(
      'Power.\n\n**Equation:** `P = T v_i`\n\n**Takes:** `thrust` T [N]\n\n**Valid for:** Hover.\n\n**Source:** A book.',
    )
  })

  it('documentationMarkdown leads from a method of the kernel to its place in the catalogue, and from nothing else', () => {
    const of = (display: string) => documentationMarkdown({ display, text: 'Power.', tags: [] })
    expect(of('rotor.hover(options: HoverByMeritOptions): Hover')).toBe(
      'Power.\n\n[rotor.hover in the catalogue of methods](/methods#rotor.hover)',
    )
    for (const display of ['const rotor: number', 'rotor.hover', 'my.hover(a: number): number'])
      expect(of(display)).toBe('Power.')
  })

  it('fullMarkdown puts the name with its type first, in code', () => {
    expect(fullMarkdown({ display: 'const x: number', text: '', tags: [] })).toBe('```cell\nconst x: number\n```')
  })
})

describe('meaningMarkdown', () => {
  const meaning = { display: 'const thrust: number', text: '', tags: [], name: 'thrust', span: { start: 0, end: 6 } }

  it('meaningMarkdown says the dimension in words instead of the type "number"', () => {
    expect(meaningMarkdown(meaning, { dimension: 'kg m s^-2', declaredIn: 'cell 3' })).toBe(
      '**thrust**: a force, in N\n\nDeclared in cell 3; Ctrl and click goes there.',
    )
  })

  it('meaningMarkdown falls back to the type where no dimension is known', () => {
    expect(meaningMarkdown(meaning, { dimension: null })).toContain('const thrust: number')
  })

  it('meaningMarkdown says why a dimension is not known, and leads to what the checker cannot know', () => {
    const said = meaningMarkdown(meaning, { dimension: null, why: 'nothing says what JSON.parse gives' })
    expect(said).toContain('The dimension of thrust is not known: nothing says what JSON.parse gives.')
    expect(said).toContain('](/words#unit-limits)')
  })
})

describe('carryOffset', () => {
  it('carryOffset keeps a caret before text inserted exactly there, and after text replaced before it', () => {
    expect(carryOffset(3, [{ at: 3, removed: 0, inserted: 'abc' }])).toBe(3)
    expect(carryOffset(3, [{ at: 1, removed: 2, inserted: 'abcd' }])).toBe(5)
    expect(carryOffset(3, [{ at: 2, removed: 5, inserted: 'xy' }])).toBe(2)
  })

  it('carrySelection does not grow a selection by text inserted at its edges', () => {
    const edits = [
      { at: 2, removed: 0, inserted: '__' },
      { at: 5, removed: 0, inserted: '__' },
    ]
    expect(carrySelection({ anchor: 5, caret: 2 }, edits)).toEqual({ anchor: 7, caret: 4 })
  })
})

describe('editsOfDelta', () => {
  it('editsOfDelta joins neighbouring steps into one replacement and counts places in the old text', () => {
    const edits = editsOfDelta([{ retain: 2 }, { insert: 'xy' }, { delete: 3 }, { retain: 1 }, { delete: 1 }])
    expect(edits).toEqual([
      { at: 2, removed: 3, inserted: 'xy' },
      { at: 6, removed: 1, inserted: '' },
    ])
    expect(applyEdits('abcdefgh', edits)).toBe('abxyfh')
  })
})

describe('applyRenaming', () => {
  const notebook = () => {
    const doc = new Y.Doc()
    const texts = new Map([
      [cellId('a'), doc.getText('a')],
      [cellId('b'), doc.getText('b')],
    ])
    doc.getText('a').insert(0, 'const range = 1')
    doc.getText('b').insert(0, 'range * range')
    const undo = new Y.UndoManager([...texts.values()], { trackedOrigins: new Set([ownEdit]) })
    const edits = [
      { cell: cellId('a'), at: 6, removed: 5, inserted: 'sector' },
      { cell: cellId('b'), at: 0, removed: 5, inserted: 'sector' },
      { cell: cellId('b'), at: 8, removed: 5, inserted: 'sector' },
    ]
    const sources = () => [...texts.values()].map(String)
    return { doc, texts, undo, edits, sources }
  }

  it('applyRenaming changes all cells, and one undo takes all of it back', () => {
    const { texts, undo, edits, sources } = notebook()
    expect(applyRenaming(edits, 'range', (id) => texts.get(id), undo)).toBe(true)
    expect(sources()).toEqual(['const sector = 1', 'sector * sector'])
    undo.undo()
    expect(sources()).toEqual(['const range = 1', 'range * range'])
  })

  it('applyRenaming changes nothing when a cell is no longer what it was worked out for', () => {
    const { doc, texts, undo, edits, sources } = notebook()
    doc.getText('b').insert(0, '// ')
    expect(applyRenaming(edits, 'range', (id) => texts.get(id), undo)).toBe(false)
    expect(sources()).toEqual(['const range = 1', '// range * range'])
  })
})

describe('lineTokens', () => {
  it('lineTokens(...) carries a long comment and a text over lines from line to line', () => {
    expect(lineTokens('a /* b', '')).toMatchObject({ open: '/*' })
    expect(lineTokens('c */ 1', '/*')).toEqual({
      tokens: [
        { start: 0, kind: 'comment' },
        { start: 4, kind: 'plain' },
        { start: 5, kind: 'number' },
      ],
      open: '',
    })
    expect(lineTokens('const t = `one', '').open).toBe('`')
    expect(lineTokens('two \\` three', '`').open).toBe('`')
    expect(lineTokens('four`', '`').open).toBe('')
  })
})

describe('withNumbers', () => {
  it('withNumbers(...) names cells by number, and leaves one that is gone as it was', () => {
    const numberOf = (id: string) => (id === 'hover' ? '6' : undefined)
    expect(withNumbers('see cell "hover" and cell "gone"', numberOf)).toBe('see cell 6 and cell "gone"')
  })
})
