/**
 * What units cost while numbers run: nothing is the aim. A hover calculation written with units against the same with the factors written
 * out, and the closure of the worked problem evaluated where its cells were checked and where nobody
 * checked them; taken in turns, with the same numbers to the last digit.
 */
import { readFileSync } from 'node:fs'
import { u } from '../../.build/kernel/library/units.js'
import { openToolchain } from '../../.build/server/toolchain.js'
import { readNotebook } from '../../.build/shared/contracts/index.js'
import { median, milliseconds } from './statistics.js'

const calls = 2_000_000
const rounds = 15

const withUnits = (mass) => {
  const weight = mass * u.kg * 9.80665 * u.mps
  const area = 8 * Math.PI * (1.3 * u.m) ** 2
  return (weight * Math.sqrt(weight / (2 * ((1.1 * u.kg) / u.m3) * area))) / 0.72 / u.kW
}
const writtenOut = (mass) => {
  const weight = mass * 9.80665
  const area = 8 * Math.PI * 1.3 ** 2
  return (weight * Math.sqrt(weight / (2 * 1.1 * area))) / 0.72 / 1000
}

function timeOf(power) {
  let sum = 0
  const begin = performance.now()
  for (let call = 0; call < calls; call += 1) sum += power(1600 + (call & 255))
  return { elapsed: performance.now() - begin, sum }
}

const times = { units: [], plain: [] }
for (let round = -3; round < rounds; round += 1) {
  const [first, second] = [timeOf(withUnits), timeOf(writtenOut)]
  if (first.sum !== second.sum) throw new Error('units changed a number')
  if (round < 0) continue
  times.units.push(first.elapsed)
  times.plain.push(second.elapsed)
}

const { notebook } = readNotebook(readFileSync(new URL('../../notebooks/worked-sizing.json', import.meta.url), 'utf8'))
const cells = notebook.cells
  .filter((cell) => cell.kind === 'sizing')
  .map((cell) => ({ id: cell.id, source: cell.source.join('\n') }))
const checked = await openToolchain()
const unchecked = await openToolchain()
await checked.pipeline.check(cells)

async function closure({ pipeline }, payload) {
  const program = await pipeline.read(cells)
  const begin = performance.now()
  const { results } = await pipeline.evaluate(program, { payload }, ['closure'])
  const elapsed = performance.now() - begin
  return { elapsed, numbers: JSON.stringify(results.map(({ values }) => values)) }
}

const runs = new Map([
  [checked, []],
  [unchecked, []],
])
for (let round = -5; round < 100; round += 1) {
  const order = round % 2 === 0 ? [checked, unchecked] : [unchecked, checked]
  const numbers = []
  for (const toolchain of order) {
    // Another value each time: an evaluation in which nothing changed would run nothing.
    const run = await closure(toolchain, 350 + round / 2)
    numbers.push(run.numbers)
    if (round >= 0) runs.get(toolchain).push(run.elapsed)
  }
  if (numbers[0] !== numbers[1]) throw new Error('the checker changed a number')
}
await checked.close()
await unchecked.close()
const [on, off] = [runs.get(checked), runs.get(unchecked)]

console.log(`hover power ${calls / 1e6} million times, with units: ${milliseconds(times.units)}`)
console.log(`the same with factors written out:      ${milliseconds(times.plain)}`)
console.log(`ratio of units to factors written out: ${(median(times.units) / median(times.plain)).toFixed(2)}; aim: 1`)
console.log(`closure of the worked problem, cells checked: ${milliseconds(on)}`)
console.log(`the same, not checked:                        ${milliseconds(off)}`)
console.log(`ratio of checked to not checked: ${(median(on) / median(off)).toFixed(2)}; aim: 1`)
