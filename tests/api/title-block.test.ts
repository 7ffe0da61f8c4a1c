/** The title block is kept in the file alone, so a change counts only once it is there. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readNotebook, type TitleBlockField } from '../../shared/contracts/index.js'
import { LabBrowser, sampleNotebook } from '../lab/index.js'
import { type Harness, openHarness } from './harness.js'

const file = '/data/tern-watch.json'
const question = 'How long can a 32 kg aircraft watch seabirds?'

let harness: Harness
beforeEach(async () => {
  harness = await openHarness()
  await harness.ask('POST', '/api/notebooks', { payload: { notebook: sampleNotebook() } })
})
afterEach(() => harness.app.close())

const change = (field: TitleBlockField | string, from: string, to: string) =>
  harness.ask('PATCH', '/api/notebooks/tern-watch/title-block', { payload: { field, from, to } })

function kept() {
  const reading = readNotebook(harness.files.textOf(file) ?? '')
  if (!reading.ok) throw new Error(reading.reason)
  return reading.notebook
}

describe('PATCH /api/notebooks/:id/title-block', () => {
  it('answers when the change is in the file, with everything else untouched', async () => {
    const reply = await change('checked', '', '  R.\n Marsh ')
    expect(reply.json()).toEqual({ question, checked: 'R. Marsh' })
    expect(kept()).toMatchObject({
      titleBlock: { question, checked: 'R. Marsh' },
      threads: sampleNotebook().threads,
      revisions: sampleNotebook().revisions,
    })
    expect((await harness.ask('GET', '/api/notebooks/tern-watch')).json().titleBlock.checked).toBe('R. Marsh')
  })

  it('clears a field, and the page shows what stands there now', async () => {
    await change('project', '', 'Tern Watch survey')
    const page = () => harness.ask('GET', '/notebooks/tern-watch', { headers: { accept: 'text/html' } })
    expect((await page()).body).toContain('Tern Watch survey')
    expect((await change('project', 'Tern Watch survey', '')).json()).toEqual({ question })
    expect((await page()).body).not.toContain('Tern Watch survey')
  })

  it('refuses to replace words that the sender has not seen, and says what stands there', async () => {
    await change('prepared', '', 'A. Holm')
    const reply = await change('prepared', '', 'B. Voe')
    expect([reply.statusCode, reply.json().code]).toEqual([409, 'TITLE_BLOCK_CHANGED'])
    expect(reply.json().message).toContain('"prepared" was changed to "A. Holm"')
    expect((await change('prepared', '', 'A. Holm')).statusCode).toBe(200)
    await change('prepared', 'A. Holm', '')
    expect((await change('prepared', 'A. Holm', 'C. Ness')).json().message).toContain('was cleared')
  })

  it('takes changes of several people one after the other', async () => {
    const replies = await Promise.all([change('date', '', 'May'), change('date', '', 'June'), change('basis', '', 'B')])
    expect(replies.map((reply) => reply.statusCode).sort()).toEqual([200, 200, 409])
    expect(kept().titleBlock).toMatchObject({ basis: 'B' })
  })

  it.each([
    ['an unknown field', 'approvedBy', 'x'],
    ['a line beyond its limit', 'date', 'x'.repeat(201)],
    ['a question beyond its limit', 'question', 'x'.repeat(1001)],
  ])('refuses %s', async (_, field, to) => {
    const reply = await change(field, field === 'question' ? question : '', to)
    expect([reply.statusCode, reply.json().code]).toEqual([400, 'BODY_INVALID'])
    expect(kept().titleBlock).toEqual({ question })
  })

  it('is taken back and refused when the folder cannot be written', async () => {
    harness.files.plan = (operation) => (operation === 'rename' ? 'fail' : undefined)
    const reply = await change('checked', '', 'R. Marsh')
    expect([reply.statusCode, reply.json().code]).toEqual([503, 'STORE_UNAVAILABLE'])
    harness.files.plan = () => undefined
    expect((await harness.ask('GET', '/api/notebooks/tern-watch')).json().titleBlock).toEqual({ question })
    expect((await change('checked', '', 'R. Marsh')).statusCode).toBe(200)
  })

  it('is refused while the file is damaged from outside, and leaves those bytes alone', async () => {
    await harness.files.writeOutside(file, '{ damaged')
    const reply = await change('checked', '', 'R. Marsh')
    expect([reply.statusCode, reply.json().code]).toEqual([503, 'STORE_UNAVAILABLE'])
    expect(reply.json().message).toContain('cannot be read')
    expect(harness.files.textOf(file)).toBe('{ damaged')
  })

  it('keeps what someone changed in the file at the same moment', async () => {
    await change('project', '', 'Here')
    const outside = kept()
    await harness.files.writeOutside(
      file,
      JSON.stringify({ ...outside, titleBlock: { ...outside.titleBlock, basis: 'There' } }),
    )
    expect((await change('checked', '', 'R. Marsh')).json()).toMatchObject({
      project: 'Here',
      basis: 'There',
      checked: 'R. Marsh',
    })
    expect(kept().titleBlock).toMatchObject({ project: 'Here', basis: 'There', checked: 'R. Marsh' })
  })

  it('is told to every browser, and to one that joins later', async () => {
    const [document] = harness.documents.all
    if (document === undefined) throw new Error('the notebook is not open')
    const browser = new LabBrowser()
    browser.connect(document)
    await change('checked', '', 'R. Marsh')
    browser.deliver()
    const last = () => browser.heard.findLast(({ type }) => type === 'titleBlock')
    expect(last()).toEqual({ type: 'titleBlock', titleBlock: { question, checked: 'R. Marsh' } })
    const later = new LabBrowser()
    later.connect(document)
    later.deliver()
    expect(later.heard.some(({ type }) => type === 'titleBlock')).toBe(true)
  })
})
