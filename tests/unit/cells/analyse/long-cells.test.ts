/** What is said about a cell in which thousands of lines are wrong; how long that takes is `npm run benchmark -- long-cell`. */
import { expect, test } from 'vitest'
import { readStatements } from '../../../../kernel/cells/analyse/index.js'
import { graphOf } from './support.js'

const lines = (count: number, write: (index: number) => string) =>
  Array.from({ length: count }, (_, index) => write(index)).join('\n')

test('analyse(cells) names every one of a thousand unknown names, and proposes others for the first hundred', async () => {
  const graph = await graphOf({ a: lines(1000, (index) => `const x${index} = airr${index === 0 ? '' : index}`) })
  const messages = graph.findings.map(({ message }) => message)
  expect(messages).toHaveLength(1000)
  expect(messages[0]).toContain('did you mean "air"')
  expect(messages.filter((message) => message.includes('did you mean')).length).toBeLessThanOrEqual(100)
})

test('readStatements(code) gives each statement its own names only, also where one is declared twice', () => {
  const code = 'var a = b\nvar a = c, d = a\nrows.push(d)\n{ d }'
  expect(readStatements(code).map(({ declares, reads }) => [declares, reads])).toEqual([
    [['a'], ['b']],
    [
      ['a', 'd'],
      ['c', 'a'],
    ],
    [[], ['rows', 'd']],
    [[], ['d']],
  ])
})
