import { parseHTML } from 'linkedom'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { keyTable, unitTable } from '../../shared/contracts/index.js'
import { type Harness, openHarness } from './harness.js'

let harness: Harness
let page: Document
beforeAll(async () => {
  harness = await openHarness()
  const reply = await harness.ask('GET', '/words', { headers: { accept: 'text/html' } })
  expect([reply.statusCode, reply.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8'])
  page = parseHTML(reply.body).document
})
afterAll(() => harness.app.close())

const texts = (selector: string) => [...page.querySelectorAll(selector)].map((each) => each.textContent)

describe('GET /words', () => {
  it('has every key of the table once, with what it does, and no other', () => {
    const engraved: Record<string, string> = {
      '↑': 'ArrowUp',
      '↓': 'ArrowDown',
      '←': 'ArrowLeft',
      '→': 'ArrowRight',
      Esc: 'Escape',
    }
    const rows = [...page.querySelectorAll('.keys tbody tr')].map((row) => {
      const combinations = [...row.querySelectorAll('.combination')].map((combination) =>
        [...combination.querySelectorAll('kbd')]
          .map(({ textContent }) => engraved[textContent ?? ''] ?? textContent)
          .join('+'),
      )
      return { keys: combinations.join(', '), does: row.querySelector('td:last-child')?.textContent }
    })
    const inOrder = (all: readonly { keys: string; does: string | null | undefined }[]) =>
      all.map(({ keys, does }) => `${keys}: ${does}`).sort()
    expect(inOrder(rows)).toEqual(inOrder(keyTable))
  })

  it('has a table for every place where a key works', () => {
    expect(page.querySelectorAll('.keys')).toHaveLength(new Set(keyTable.map(({ where }) => where)).size)
  })

  it('has every unit of the table once, with its name, under what it measures', () => {
    expect(texts('.units dd').sort()).toEqual(unitTable.map(({ symbol, name }) => `u.${symbol} ${name}`).sort())
    for (const quantity of texts('.units dt')) expect(quantity).toMatch(/^[A-Z][a-z]+/)
  })

  it('says every word in one sentence', () => {
    const meanings = texts('.terms dd')
    expect(meanings).toHaveLength(texts('.terms dt').length)
    for (const meaning of meanings) expect(meaning).toMatch(/^[A-Z][^.]*\.$/)
    for (const state of ['Current', 'Out of date', 'Computing', 'Failed', 'Held back'])
      expect(texts('.terms dt')).toContain(state)
  })

  it('leads to each of its sections, and names what each is for', () => {
    const links = [...page.querySelectorAll('.contents a')].map((link) => link.getAttribute('href')?.slice(1))
    expect(links).toEqual([...page.querySelectorAll('section')].map(({ id }) => id))
  })

  it('needs no script', () => {
    expect(page.querySelectorAll('script:not([src]), [onclick], [style]')).toHaveLength(0)
  })
})
