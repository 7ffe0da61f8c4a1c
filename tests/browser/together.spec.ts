/** Two people in one notebook, by chance and by seed: both browsers end alike, no word goes unasked, undo takes back only one's own. */
import type { Page } from 'playwright'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { SocketBrowser, until } from '../api/process.js'
import { seededChance } from '../lab/index.js'
import { type Bench, openBench } from './bench.js'
import { Person } from './person.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

/** `HOVERFOLIO_BROWSER_SEEDS=40 npx vitest run --config tests/tooling/browser.config.ts together` tries forty. */
const seeds = Number(process.env.HOVERFOLIO_BROWSER_SEEDS ?? 1)
const steps = 10

const wordsOf = (text: string) => [...text.matchAll(/(?:ada|ben)\d+z/g)].map(String)

/** Cells with their words, as a browser shows them, set or being edited. */
const shown = (page: Page) =>
  page.locator('.cell').evaluateAll((cells) =>
    cells.map((cell) => {
      const area = cell.querySelector<HTMLTextAreaElement>('textarea.text-area')
      const text = area?.value ?? cell.querySelector('.view-lines, .source, .prose')?.textContent ?? ''
      return [(cell as HTMLElement).dataset.cell ?? '', ...(text.match(/(?:ada|ben)\d+z/g) ?? [])].join(' ')
    }),
  )

const stored = async (path: string) =>
  (await bench.stored(path)).cells.map(({ id, source }) => [id, ...wordsOf(source.join('\n'))].join(' '))

/** Words of the cells that are removed, by the cell. */
async function hiddenWords(path: string): Promise<ReadonlyMap<string, readonly string[]>> {
  const reader = new SocketBrowser(bench.address, path.split('/').at(-1) ?? '')
  const cells = reader.doc.getMap('cells')
  await until('the document is here', () => cells.size > 0)
  const hidden = [...cells].flatMap(([id, cell]): [string, string[]][] =>
    cell instanceof Y.Map && cell.get('removed') === true ? [[id, wordsOf(String(cell.get('source')))]] : [],
  )
  reader.close()
  return new Map(hidden)
}

/** All three end with the same cells and words; answers all words that are on the page or in cells removed on purpose. */
async function wordsInTheEnd(path: string, people: readonly Person[]): Promise<ReadonlySet<string>> {
  for (const person of people) await person.end()
  const [one, two] = people as [Person, Person]
  await expect
    .poll(async () => [await shown(one.page), await shown(two.page)], { timeout: 20_000 })
    .toEqual(await Promise.all([stored(path), stored(path)]))
  const words = new Set((await stored(path)).flatMap(wordsOf))
  const removed = new Set(people.flatMap((person) => [...person.removed]))
  for (const [id, inIt] of await hiddenWords(path)) if (removed.has(id)) for (const word of inIt) words.add(word)
  return words
}

async function workTogether(seed: number): Promise<void> {
  const chance = seededChance(seed)
  const lines = { a: 'first\nsecond\nthird', b: 'fourth\nfifth', c: 'sixth\nseventh', d: 'eighth' }
  const path = await bench.notebook(`Together ${seed}`, lines, seed % 2 === 0 ? 'sizing' : 'rationale')
  const people = await Promise.all(
    ['ada', 'ben'].map(async (name) => {
      const { page, context, complaints } = await bench.visit(path)
      const person = new Person(page, context, name, seededChance(chance.whole(2 ** 32)))
      await person.begin()
      return { person, complaints }
    }),
  )
  const persons = people.map(({ person }) => person)
  await Promise.all(
    persons.map(async (person) => {
      for (let step = 0; step < steps; step += 1) await person.act()
    }),
  )
  const words = await wordsInTheEnd(path, persons)
  for (const person of persons) {
    expect(
      person.kept.filter((word) => !words.has(word)),
      'words that were lost',
    ).toEqual([])
    expect(person.success, 'share of the words begun that were written').toBeGreaterThan(0.5)
  }
  const [one, two] = persons as [Person, Person]
  await one.undoAll()
  const left = await wordsInTheEnd(path, persons)
  expect(
    two.kept.filter((word) => !left.has(word)),
    'words that another person undid',
  ).toEqual([])
  for (const { complaints } of people)
    expect(complaints.filter((words) => !words.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([])
}

describe('two people at once', { timeout: 180_000 }, () => {
  it.each(Array.from({ length: seeds }, (_, index) => index + 1))(
    'lose no word, end alike, and undo only their own, seed %i',
    (seed) => workTogether(seed),
  )
})
