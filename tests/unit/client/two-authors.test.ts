/** Two people and the server itself: whatever they do at once, all converge and nobody's words leave the page unasked. */
import { describe, expect, it } from 'vitest'
import type * as Y from 'yjs'
import {
  addCell,
  changeKind,
  joinWithNext,
  moveCellTo,
  renumber,
  splitCell,
} from '../../../client/live/cell-operations.js'
import { divide } from '../../../client/live/divide.js'
import { ownEdit, snapshotOf, sourceOf } from '../../../client/live/document.js'
import { undoFor } from '../../../client/live/undo.js'
import { type LiveDocument, LiveDocuments } from '../../../server/live/index.js'
import { silentLog } from '../../../server/log.js'
import { CellId, NotebookId, writeNotebook } from '../../../shared/contracts/index.js'
import {
  type Chance,
  LabBrowser,
  LabClock,
  LabFileSystem,
  labFolder,
  labStore,
  sampleNotebook,
  seededChance,
} from '../../lab/index.js'

const id = NotebookId.parse('tern-watch')
const cellId = (text: string) => CellId.parse(text)

async function open(sources: Readonly<Record<string, string>>): Promise<LiveDocument> {
  const files = new LabFileSystem(seededChance(1))
  await files.makeFolder(labFolder)
  const cells = Object.entries(sources).map(([name, source]) => ({
    id: cellId(name),
    kind: 'sizing' as const,
    source: source.split('\n'),
  }))
  await files.writeOutside(`${labFolder}/${id}.json`, writeNotebook(sampleNotebook('T', { cells })))
  return new LiveDocuments({ store: await labStore(files), clock: new LabClock(), log: silentLog }).get(id)
}

function join(document: LiveDocument): LabBrowser {
  const browser = new LabBrowser()
  browser.connect(document)
  browser.deliver()
  return browser
}

async function quiet(document: LiveDocument, ...browsers: LabBrowser[]): Promise<void> {
  for (let round = 0; round < 6; round += 1) {
    for (const browser of browsers) {
      await browser.answered()
      await document.flush()
      browser.deliver()
    }
  }
}

const sources = (doc: Y.Doc) => snapshotOf(doc).cells.map((cell) => cell.source)
const insert = (browser: LabBrowser, cell: string, at: number, text: string) =>
  browser.doc.transact(() => sourceOf(browser.doc, cellId(cell))?.insert(at, text), ownEdit)

describe('words typed into a cell at the moment its text goes elsewhere', () => {
  it('are carried into the cell it was joined with, once', async () => {
    const document = await open({ a: 'const a = 1', b: 'const b = 2' })
    const [one, two] = [join(document), join(document)]
    joinWithNext(one.doc, cellId('a'))
    insert(two, 'b', 11, ' * 3')
    await quiet(document, one, two)
    expect(sources(one.doc)).toEqual(['const a = 1\n\nconst b = 2 * 3'])
    expect(sources(two.doc)).toEqual(sources(one.doc))
    expect(document.notebook.cells[0]?.source).toEqual(['const a = 1', '', 'const b = 2 * 3'])
  })

  it('are carried over from an empty cell, and along two joins', async () => {
    const document = await open({ a: 'const a = 1', b: 'const b = 2', c: '' })
    const [one, two] = [join(document), join(document)]
    joinWithNext(one.doc, cellId('b'))
    joinWithNext(one.doc, cellId('a'))
    insert(two, 'c', 0, 'const c = 3')
    await quiet(document, one, two)
    expect(sources(two.doc)).toEqual(['const a = 1\n\nconst b = 2\nconst c = 3'])
  })

  it('are carried back when the split that made the cell is undone', async () => {
    const document = await open({ a: 'const a = 1\nconst b = 2' })
    const [one, two] = [join(document), join(document)]
    const undo = undoFor(one.doc)
    const lower = undo.step('splitting', () => splitCell(one.doc, cellId('a'), 11, 12))
    await quiet(document, one, two)
    insert(two, String(lower), 11, ' * 3')
    await quiet(document, one, two)
    undo.undo()
    await quiet(document, one, two)
    expect(sources(one.doc)).toEqual(['const a = 1\nconst b = 2 * 3'])
    expect(sources(two.doc)).toEqual(sources(one.doc))
  })

  it('stay in a cell that was plainly removed, where undo finds them', async () => {
    const document = await open({ a: 'const a = 1', b: 'const b = 2' })
    const [one, two] = [join(document), join(document)]
    const undo = undoFor(one.doc)
    undo.step('joining', () => joinWithNext(one.doc, cellId('a')))
    insert(two, 'b', 0, '// late\n')
    undo.undo()
    await quiet(document, one, two)
    expect(sources(two.doc)).toEqual(['const a = 1', '// late\nconst b = 2'])
  })
})

describe('people who divide a cell at the same line at the same instant', () => {
  const text = ['const a = 1', 'const b = 2', 'const c = 3', 'const d = 4']

  it.each(Array.from({ length: 16 }, (_, index) => index + 1))(
    'get its text once, and keep all they typed (seed %i)',
    async (seed) => {
      const chance = seededChance(seed)
      const document = await open({ a: text.join('\n') })
      const people = Array.from({ length: 2 + chance.whole(2) }, () => join(document))
      const division = divide(text.join('\n'), 'sizing', { line: 2 + chance.whole(3), column: 1 })
      if (!division.ok) throw new Error(division.message)
      const typed: string[] = []
      for (const [index, { doc }] of people.entries()) {
        const lower = splitCell(doc, cellId('a'), division.upperEnd, division.lowerStart)
        const word = `// <w${index}>\n`
        if (lower === null || chance.next() < 0.3) continue
        typed.push(word)
        const source = sourceOf(doc, lower)
        const breaks = [0, ...[...String(source).matchAll(/\n/g)].map((match) => match.index + 1)]
        doc.transact(() => source?.insert(chance.pick(breaks), word), ownEdit)
      }
      for (let turn = 0; turn < 6; turn += 1) {
        const person = chance.pick(people)
        await person.answered()
        person.deliver(chance.whole(4))
      }
      await quiet(document, ...people)
      const [first, ...others] = people.map((person) => sources(person.doc))
      for (const other of others) expect(other).toEqual(first)
      expect(first).toHaveLength(2)
      const all = (first ?? []).join('\n')
      expect(text.map((line) => all.split('\n').filter((other) => other === line).length)).toEqual([1, 1, 1, 1])
      expect(typed.filter((word) => !all.includes(word.trim()))).toEqual([])
    },
  )

  it('keep both cells of one who writes the same text again and divides there', async () => {
    const document = await open({ a: 'const a = 1\nconst b = 2' })
    const one = join(document)
    splitCell(one.doc, cellId('a'), 11, 12)
    insert(one, 'a', 11, '\nconst b = 2')
    splitCell(one.doc, cellId('a'), 11, 12)
    await quiet(document, one)
    expect(sources(one.doc)).toEqual(['const a = 1', 'const b = 2', 'const b = 2'])
  })
})

describe('two people at random', () => {
  const seeds = Array.from({ length: 12 }, (_, index) => index + 1)
  it.each(seeds)('converge and keep every word (seed %i)', async (seed) => {
    const chance = seededChance(seed)
    const document = await open({ a: 'start a', b: 'start b', c: 'start c' })
    const people = [join(document), join(document)].map((browser) => ({ browser, undo: undoFor(browser.doc) }))
    const typed: string[] = []
    for (let turn = 0; turn < 60; turn += 1) {
      const person = chance.pick(people)
      act(person.browser.doc, person.undo, chance, typed, turn)
      if (chance.next() < 0.3) {
        await person.browser.answered()
        person.browser.deliver(chance.whole(4))
      }
    }
    await quiet(document, ...people.map(({ browser }) => browser))
    const [one, two] = people.map(({ browser }) => snapshotOf(browser.doc))
    expect(one).toEqual(two)
    expect(document.notebook.cells.map((cell) => cell.source.join('\n'))).toEqual(one?.cells.map((cell) => cell.source))
    const all = one?.cells.map((cell) => cell.source).join('\n') ?? ''
    expect(typed.filter((word) => !all.includes(word))).toEqual([])
  })
})

/** One thing that a person may do; nothing here removes or undoes words, so every word typed must still be on the page. */
function act(doc: Y.Doc, undo: ReturnType<typeof undoFor>, chance: Chance, typed: string[], turn: number): void {
  const { cells } = snapshotOf(doc)
  const cell = chance.pick(cells)
  const text = sourceOf(doc, cell.id)
  const doing = chance.whole(9)
  if (doing <= 3 && text !== undefined) {
    const word = `<w${turn}>`
    typed.push(word)
    const breaks = [0, ...[...cell.source.matchAll(/\n/g)].map((match) => match.index + 1)]
    doc.transact(() => text.insert(chance.pick(breaks), `${word}\n`), ownEdit)
  } else if (doing === 4) {
    const line = 1 + chance.whole(cell.source.split('\n').length)
    const division = divide(cell.source, cell.kind, { line, column: 1 })
    if (division.ok) undo.step('split', () => splitCell(doc, cell.id, division.upperEnd, division.lowerStart))
  } else if (doing === 5) undo.step('join', () => joinWithNext(doc, cell.id))
  else if (doing === 6) undo.step('move', () => moveCellTo(doc, cell.id, chance.whole(cells.length)))
  else if (doing === 7) undo.step('add', () => addCell(doc, 'sizing', cell.id))
  else if (chance.next() < 0.5) undo.step('renumber', () => renumber(doc))
  else undo.step('kind', () => changeKind(doc, cell.id, cell.kind === 'sizing' ? 'rationale' : 'sizing'))
}
