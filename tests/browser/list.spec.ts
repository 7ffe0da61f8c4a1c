/** The first screen: begin, import, rename, bin and take out, with refusals in words. */
import { readFile } from 'node:fs/promises'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { serious } from './axe.js'
import { type Bench, openBench } from './bench.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench('everything')
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

const file = (name: string, content: unknown) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(typeof content === 'string' ? content : JSON.stringify(content)),
})

describe('the list page', () => {
  it('leads a newcomer into a notebook in one step, and the sheet leads back', async () => {
    const { page, complaints } = await bench.visit('/')
    await page
      .locator('.first')
      .getByRole('link', { name: /^Open the (starter|worked sizing)$/ })
      .click()
    await page.waitForURL('**/notebooks/*')
    await page.locator('.bar').getByRole('link', { name: 'Words and keys' }).click()
    expect(await page.locator('h1').textContent()).toBe('Words and keys')
    await page.goBack()
    await page.locator('.bar').getByRole('link', { name: 'Hoverfolio' }).click()
    await page.getByRole('heading', { name: 'Notebooks' }).waitFor()
    expect(complaints).toEqual([])
  })

  it('begins a notebook by its title and opens it', async () => {
    const { page, complaints } = await bench.visit('/')
    await page.getByLabel('Title of a new notebook').fill('Tern Watch')
    await page.getByRole('button', { name: 'Begin' }).click()
    await page.waitForURL('**/notebooks/*')
    expect(await page.locator('h1').textContent()).toBe('Tern Watch')
    expect(complaints).toEqual([])
  })

  it('begins, duplicates and opens without any script', async () => {
    const { page } = await bench.visit('/', { javaScriptEnabled: false })
    await page.getByLabel('Title of a new notebook').fill('Without script')
    await page.getByRole('button', { name: 'Begin' }).click()
    expect(await page.locator('h1').textContent()).toBe('Without script')
    await page.goto(bench.address)
    await page.getByRole('button', { name: 'Duplicate: Without script' }).click()
    await page.getByRole('link', { name: 'Copy of Without script', exact: true }).waitFor()
  })

  it('refuses a file that is no notebook in words, beside the form', async () => {
    const { page } = await bench.visit('/')
    await page.getByLabel('Notebook from a file').setInputFiles(file('note.json', { format: 'something else' }))
    await page.getByRole('button', { name: 'Import' }).click()
    const refusal = page.getByRole('alert')
    await refusal.waitFor()
    expect(await refusal.textContent()).toContain('"format": "hoverfolio notebook"')
    expect(new URL(page.url()).pathname).toBe('/')
  })

  it('imports a notebook file, and gives it back as a download', async () => {
    const { page } = await bench.visit('/')
    const notebook = {
      format: 'hoverfolio notebook',
      version: 1,
      title: 'Imported',
      cells: [{ id: 'a', kind: 'sizing', source: ['const x = 1 * u.m'] }],
    }
    await page.getByLabel('Notebook from a file').setInputFiles(file('imported.json', notebook))
    await page.getByRole('button', { name: 'Import' }).click()
    await page.waitForURL('**/notebooks/*')
    await page.goto(bench.address)
    const row = page.locator('.notebooks > li', { hasText: 'Imported' })
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      row.getByRole('link', { name: 'Download' }).click(),
    ])
    const downloaded = JSON.parse(await readFile(await download.path(), 'utf8'))
    expect(downloaded).toMatchObject({ title: 'Imported', cells: [{ id: 'a', source: ['const x = 1 * u.m'] }] })
  })

  it('renames a notebook, moves it to the bin and takes it out again', async () => {
    await bench.notebook('Old name', { a: 'const a = 1' })
    const { page } = await bench.visit('/')
    await page.locator('.notebooks > li', { hasText: 'Old name' }).getByRole('button', { name: 'Rename' }).click()
    await page.keyboard.type('New name')
    await page.keyboard.press('Enter')
    const row = page.locator('.notebooks > li', { hasText: 'New name' })
    await row.waitFor()
    await row.getByRole('button', { name: 'Move to bin' }).click()
    await page.locator('.bin summary', { hasText: 'Bin (1)' }).click()
    await page.locator('.bin li', { hasText: 'New name' }).getByRole('button', { name: 'Take out' }).click()
    await row.waitFor()
  })

  it('teaches its first steps when it is empty, deletes from the bin only when asked twice, and opens a notebook that comes with it', async () => {
    const { page, complaints } = await bench.visit('/')
    for (let left = await page.locator('.notebooks > li').count(); left > 0; left -= 1) {
      await page.locator('.notebooks > li').first().getByRole('button', { name: 'Move to bin' }).click()
      await page.waitForFunction((count) => document.querySelectorAll('.notebooks > li').length === count, left - 1)
    }
    expect(await page.locator('.first').textContent()).toContain('A notebook is a calculation sheet')
    const count = await page.locator('.bin li').count()
    await page.locator('.bin > summary').click()
    const row = page.locator('.bin li').first()
    await row.locator('.for-good > summary').click()
    expect(await row.locator('.for-good').textContent()).toContain('nothing brings')
    expect(await serious(page), 'empty list, open bin').toEqual([])
    await row.getByRole('button', { name: 'Yes, delete it for good' }).click()
    await page.locator('.bin > summary', { hasText: `Bin (${count - 1})` }).waitFor()
    await page.getByRole('button', { name: /^Open the (starter|worked sizing)$/ }).click()
    await page.waitForURL('**/notebooks/*')
    expect(await page.locator('h1').textContent()).toContain('Skerry Link')
    expect(complaints).toEqual([])
  }, 120_000)
})
