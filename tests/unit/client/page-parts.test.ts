import { parseHTML } from 'linkedom'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { openPagePipeline } from '../../../client/compute/pipeline.js'
import { readImport } from '../../../client/list/read-import.js'
import { createNotebook, eraseAtServer, Refusal } from '../../../client/live/requests.js'
import { newsOf } from '../../../client/notebook/news.js'
import { readPageData, snapshotOfPage } from '../../../client/notebook/page-data.js'
import { Sheet } from '../../../client/sheet/sheet.js'
import type { PageData } from '../../../shared/contracts/index.js'
import { withCellNumbers } from '../../../shared/rendering/sheet/cell-numbers.js'
import type { CellState, CellView, SheetView } from '../../../shared/rendering/view.js'
import { failure, id } from './result-samples.js'

afterEach(() => vi.unstubAllGlobals())

function cell(name: string, state: CellState, message?: string): CellView {
  const result = message === undefined ? {} : { result: { ...failure(name, '1'), error: { code: 'THROWN', message } } }
  return {
    id: id(name),
    kind: 'sizing',
    number: name,
    source: '',
    state,
    findings: [],
    folded: true,
    firstFigure: 1,
    ...result,
  }
}

const sheet = (...cells: CellView[]): SheetView => ({ id: 'n', title: 'T', titleBlock: {}, cells })

describe('newsOf', () => {
  it('newsOf(before, after) says which cell failed and why, once', () => {
    const failed = sheet(cell('1', 'failed', 'no wing'))
    expect(newsOf(sheet(cell('1', 'current')), failed)).toBe('Cell 1 failed: no wing')
    expect(newsOf(failed, failed)).toBeNull()
  })

  it('newsOf(before, after) puts cells that failed for one reason in one sentence', () => {
    const before = sheet(cell('1', 'current'), cell('2', 'current'))
    const after = sheet(cell('1', 'failed', 'no wing'), cell('2', 'failed', 'no wing'))
    expect(newsOf(before, after)).toBe('Cells 1, 2 failed: no wing')
  })

  it('newsOf(before, after) only counts failures that are too many to listen to', () => {
    const after = sheet(cell('1', 'failed', 'a'), cell('2', 'failed', 'b'), cell('3', 'failed', 'c'))
    expect(newsOf(sheet(), after)).toBe('Cell 1 failed: a 2 other cells failed.')
  })

  it('newsOf(before, after) says when all cells are current again', () => {
    expect(newsOf(sheet(cell('1', 'out of date')), sheet(cell('1', 'current')))).toBe('All cells are current.')
    expect(newsOf(sheet(cell('1', 'current')), sheet(cell('1', 'out of date')))).toBeNull()
  })
})

describe('withCellNumbers', () => {
  it('withCellNumbers(text, numbers) names cells as the margin does and leaves unknown ones alone', () => {
    const numbers = new Map([['a', '3']])
    expect(withCellNumbers('also in cell "a", line 2 and cell "b".', numbers)).toBe(
      'also in cell 3, line 2 and cell "b".',
    )
  })
})

describe('the data of the page', () => {
  it('readPageData(document) reads what the server put there', () => {
    const { document } = parseHTML('<script type="application/json" id="page-data">{"id":"n"}</script>')
    expect(readPageData(document)).toEqual({ id: 'n' })
  })

  it('readPageData(document) says what to do when it is missing', () => {
    const { document } = parseHTML('<main></main>')
    expect(() => readPageData(document)).toThrow('load it again')
  })

  it('snapshotOfPage(data) gives the cells as the live document would', () => {
    const data = {
      notebook: { title: 'T', cells: [{ id: 'a', kind: 'sizing', source: ['x', 'y'], number: '3a' }] },
    } as unknown as PageData
    expect(snapshotOfPage(data)).toEqual({
      title: 'T',
      cells: [{ id: 'a', kind: 'sizing', source: 'x\ny', order: '', number: '3a' }],
      retired: [],
    })
  })

  it('new Sheet(main, view, commands) says when the page holds no sheet', () => {
    const { document } = parseHTML('<main></main>')
    const main = document.querySelector('main') as HTMLElement
    expect(() => new Sheet(main, sheet(), {} as never)).toThrow('holds no sheet')
  })
})

describe('requests', () => {
  const answering = (status: number, body: string) => vi.stubGlobal('fetch', async () => new Response(body, { status }))

  it('createNotebook(title) fails with the server’s own sentence', async () => {
    answering(422, JSON.stringify({ code: 'NOTEBOOK_REFUSED', message: 'This notebook cannot be opened: too deep.' }))
    await expect(createNotebook('T')).rejects.toThrow('too deep')
  })

  it('eraseAtServer(sources) says when the server cannot be reached, or answers without a reason', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('network')))
    await expect(eraseAtServer(['x'])).rejects.toThrow('could not be reached')
    answering(502, '<html>')
    await expect(eraseAtServer(['x'])).rejects.toThrow('status 502')
  })

  it('openPagePipeline().read(cells) says when the kernel cannot be fetched', async () => {
    answering(404, '')
    await expect(openPagePipeline().read([])).rejects.toThrow('/kernel/kernel.json could not be fetched (status 404)')
  })
})

describe('readImport', () => {
  const file = (text: string, size = text.length) => ({ name: 'mine.json', size, text: async () => text })

  it('readImport(file) gives the notebook in it', async () => {
    const notebook = { format: 'hoverfolio notebook', version: 1, title: 'T', cells: [] }
    expect(await readImport(file(JSON.stringify(notebook)))).toEqual(notebook)
  })

  it('readImport(file) refuses in words what is no notebook or too large', async () => {
    await expect(readImport(file('{}'))).rejects.toThrow('its format is missing')
    await expect(readImport(file('{}', 9e9))).rejects.toBeInstanceOf(Refusal)
  })
})
