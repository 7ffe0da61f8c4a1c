import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' }).trim().split('\n')

test('the top level holds what the layout knows and nothing else', () => {
  const top = new Set(tracked.map((path) => path.split('/')[0] ?? '').filter((name) => !name.startsWith('.')))
  const allowed = ['README.md', 'DEVELOPERS.md', 'LICENSE', 'package.json', 'package-lock.json', 'tsconfig.json']
  const folders = ['server', 'client', 'kernel', 'notebooks', 'tests', 'shared']
  expect([...top].sort()).toEqual([...allowed, ...folders].sort())
})

test('package-lock.json names no place that packages are fetched from', () => {
  expect(readFileSync(`${root}package-lock.json`, 'utf8')).not.toMatch(/"resolved"/)
})
