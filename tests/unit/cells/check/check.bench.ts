/**
 * Time from an edit in one of twenty cells to a new report, warm. Prints only:
 * `npx vitest bench --run --config tests/tooling/vitest.config.ts tests/unit/cells/check`.
 */
import { bench, describe } from 'vitest'
import { checker, graphOf } from './notebook.js'

const cells: Record<string, string> = {}
for (let index = 0; index < 20; index += 1)
  cells[`cell${index}`] = [
    `const mass${index} = ${index === 0 ? '' : `mass${index - 1} + `}assumption('mass${index}', ${index + 10} * u.kg, { unit: 'kg' })`,
    `const air${index} = air.standard(${index * 100} * u.m, 15 * u.K)`,
    `const hover${index} = rotor.hover({ thrust: mass${index} * u.g0, diskArea: 40 * u.m2, density: air${index}.density, figureOfMerit: 0.7 })`,
    `const powers${index} = [1, 2, 3].map((n) => n * hover${index}.power)`,
    `const share${index} = powers${index}[0] / hover${index}.idealPower`,
  ].join('\n')

const graphs = await Promise.all(
  Array.from({ length: 10 }, (_, edit) =>
    graphOf({ ...cells, cell3: `${cells.cell3}\nconst edited = ${edit} * mass3` }),
  ),
)
let turn = 0

describe('check(twenty cells) after an edit in one', () => {
  bench('warm', () => {
    turn += 1
    checker.check(graphs[turn % graphs.length] as (typeof graphs)[number])
  })
})
