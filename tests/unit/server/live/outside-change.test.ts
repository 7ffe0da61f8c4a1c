import { beforeEach, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { type LiveDocument, LiveDocuments } from '../../../../server/live/index.js'
import type { Log } from '../../../../server/log.js'
import { NotebookId, readNotebook, writeNotebook } from '../../../../shared/contracts/index.js'
import {
  LabBrowser,
  LabClock,
  LabFileSystem,
  labFolder,
  labStore,
  sampleNotebook,
  seededChance,
  settle,
} from '../../../lab/index.js'

const id = NotebookId.parse('tern-watch')
const file = `${labFolder}/${id}.json`

let files: LabFileSystem
let clock: LabClock
let documents: LiveDocuments
let warnings: string[]

beforeEach(async () => {
  files = new LabFileSystem(seededChance(1))
  clock = new LabClock()
  warnings = []
  const note = (_: unknown, message: string) => void warnings.push(message)
  const log: Log = { info() {}, warn: note, error: note }
  await files.makeFolder(labFolder)
  await files.writeOutside(file, writeNotebook(sampleNotebook()))
  documents = new LiveDocuments({ store: await labStore(files), clock, log })
})

async function connected(document: LiveDocument): Promise<LabBrowser> {
  const browser = new LabBrowser()
  browser.connect(document)
  browser.deliver()
  return browser
}

const kept = () => {
  const reading = readNotebook(files.textOf(file) ?? '')
  if (!reading.ok) throw new Error(reading.reason)
  return reading.notebook
}

describe('A file changed on disk', () => {
  const change = async (edit: (text: string) => string) => files.writeOutside(file, edit(files.textOf(file) ?? ''))

  it('comes in while the notebook is open, beside what is typed there', async () => {
    const browser = await connected(await documents.get(id))
    browser.source('masses').insert(0, '// typed\n')
    await change((text) => text.replace('const payload = 4', 'const payload = 5').replace('seabirds?', 'gulls?'))
    await browser.answered()
    clock.advance(1100)
    await settle()
    browser.deliver()
    expect(browser.source('masses').toString()).toBe('// typed\nconst payload = 5 * u.kg')
    clock.advance(500)
    await settle()
    expect(kept().cells[1]?.source).toEqual(['// typed', 'const payload = 5 * u.kg'])
    expect(kept().titleBlock?.question).toContain('gulls?')
  })

  it('is never overwritten by a pending write', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    browser.type(0, 'The ')
    await browser.answered()
    await change((text) => text.replace('Endurance.', 'Endurance and range.'))
    await document.flush()
    expect(kept().title).toBe('The Tern Watch')
    expect(kept().cells[0]?.source).toContain('Endurance and range.')
  })

  it('comes in at the next start, beside edits that had not reached the file', async () => {
    const browser = await connected(await documents.get(id))
    browser.source('masses').insert(0, '// typed\n')
    await browser.answered()
    files.cutPower()
    files = new LabFileSystem(seededChance(2), undefined, files.disk)
    await change((text) => text.replace('const payload = 4', 'const payload = 5'))
    documents = new LiveDocuments({ store: await labStore(files, 2), clock, log: { info() {}, warn() {}, error() {} } })
    const document = await documents.get(id)
    expect(document.content.cells[1]?.source).toBe('// typed\nconst payload = 5 * u.kg')
    await document.flush()
    await documents.close()
    expect((await documents.get(id)).content.cells[1]?.source).toBe('// typed\nconst payload = 5 * u.kg')
  })

  it('brings numbers of cells in, and those of the document are in the file', async () => {
    const document = await documents.get(id)
    const [about, masses] = sampleNotebook().cells
    if (about === undefined || masses === undefined) throw new Error('sample without cells')
    const cells = [
      { ...about, number: '1' },
      { ...masses, number: '1a' },
    ]
    await files.writeOutside(file, writeNotebook(sampleNotebook('Tern Watch', { cells })))
    await document.lookAtFile()
    expect(document.content.cells.map((cell) => cell.number)).toEqual(['1', '1a'])
    await files.writeOutside(
      file,
      writeNotebook(sampleNotebook('Tern Watch', { cells: [about, { ...masses, number: '2' }] })),
    )
    await document.lookAtFile()
    await document.flush()
    expect(kept().cells.map((cell) => cell.number)).toEqual([undefined, '2'])
  })

  it('numbers the cells of a document that was begun before documents held numbers', async () => {
    const cells = sampleNotebook().cells.map((cell, index) => ({ ...cell, number: `${index + 4}` }))
    await files.writeOutside(file, writeNotebook(sampleNotebook('Tern Watch', { cells })))
    const document = await documents.get(id)
    await document.edit((doc) => {
      for (const cell of doc.getMap('cells').values()) if (cell instanceof Y.Map) cell.delete('number')
    })
    await documents.close()
    await files.writeOutside(file, writeNotebook(sampleNotebook('Tern Watch', { cells })))
    expect((await documents.get(id)).notebook.cells.map((cell) => cell.number)).toEqual(['4', '5'])
  })

  it('adds, removes, moves and retypes cells', async () => {
    const document = await documents.get(id)
    const notebook = sampleNotebook()
    const [about, masses] = notebook.cells
    if (about === undefined || masses === undefined) throw new Error('sample without cells')
    const added = { ...masses, id: 'added' as typeof masses.id, source: ['const y = 1'] }
    await files.writeOutside(file, writeNotebook({ ...notebook, cells: [added, masses, { ...about, kind: 'sizing' }] }))
    await document.flush()
    await document.lookAtFile()
    expect(document.content.cells.map(({ id, kind }) => [id, kind])).toEqual([
      ['added', 'sizing'],
      ['masses', 'sizing'],
      ['about', 'sizing'],
    ])
    await files.writeOutside(file, writeNotebook({ ...notebook, cells: [masses] }))
    await document.lookAtFile()
    expect(document.content.cells.map(({ id }) => id)).toEqual(['masses'])
    await files.writeOutside(file, writeNotebook({ ...notebook, cells: [masses, about] }))
    await document.lookAtFile()
    expect(document.content.cells.map(({ id, source }) => [id, source])).toEqual([
      ['masses', 'const payload = 4 * u.kg'],
      ['about', '## Aim\n\nEndurance.'],
    ])
  })

  it('is left alone while it cannot be read, and nothing typed is lost meanwhile', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    const whole = files.textOf(file) ?? ''
    await files.writeOutside(file, '{"half')
    browser.type(0, 'The ')
    await browser.answered()
    clock.advance(3000)
    await settle()
    expect(files.textOf(file)).toBe('{"half')
    expect(warnings.join()).toContain('left alone')
    await files.writeOutside(file, whole)
    clock.advance(3000)
    await settle()
    expect(kept().title).toBe('The Tern Watch')
  })

  it('is written again when it was deleted while the notebook is open', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    await files.remove(file)
    browser.type(0, 'The ')
    await browser.answered()
    await document.flush()
    expect(kept().title).toBe('The Tern Watch')
  })
})
