/** The documents tell the truth: links, paths, commands and error codes they name exist. */
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { troubleCodes } from '../../../shared/contracts/index.js'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const read = (path: string) => readFileSync(`${root}${path}`, 'utf8')
const documents = ['README.md', 'DEVELOPERS.md']

describe.each(documents)('%s', (document) => {
  const text = read(document)

  test('names only files and folders that exist', () => {
    const links = [...text.matchAll(/\]\(([^)#:]+)\)/g)].map((match) => match[1] ?? '')
    const paths = [...text.matchAll(/`((?:shared|kernel|server|client|notebooks|tests)\/[\w./-]*)`/g)].map(
      (match) => match[1] ?? '',
    )
    const missing = [...links, ...paths].filter((path) => !existsSync(`${root}${path}`))
    expect(missing).toEqual([])
  })

  test('names only npm scripts that exist', () => {
    const scripts = Object.keys(JSON.parse(read('package.json')).scripts)
    const named = [...text.matchAll(/npm run ([a-z]+)/g)].map((match) => match[1] ?? '')
    expect(named.filter((name) => !scripts.includes(name))).toEqual([])
  })
})

test('DEVELOPERS.md gives a reason for every dependency and names none that is gone', () => {
  const manifest = JSON.parse(read('package.json'))
  const installed = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies }).filter(
    (name) => !name.startsWith('@types/'),
  )
  const section = read('DEVELOPERS.md').split('## Dependencies')[1]?.split('\n## ')[0] ?? ''
  const named = [...section.matchAll(/^\| `([^`]+)`(?:, `([^`]+)`)*/gm)].flatMap((row) =>
    [...row[0].matchAll(/`([^`]+)`/g)].map((m) => m[1] ?? ''),
  )
  expect(named.filter((name) => !installed.includes(name))).toEqual([])
  expect(installed.filter((name) => !named.includes(name))).toEqual([])
})

test('errors.md lists exactly the refusals of the server', () => {
  const listed = [...read('shared/contracts/errors.md').matchAll(/^\| `([A-Z_]+)` +\|/gm)].map(
    (match) => match[1] ?? '',
  )
  expect([...listed].sort()).toEqual([...troubleCodes].sort())
})
