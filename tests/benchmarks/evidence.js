/**
 * Where a number came from, what moves it and how sure it is: its trace, drivers over 30 assumptions and 2,000 samples of spread, of the starter's gross mass, in two
 * isolates as on the page. Against them, in the same run, one plain evaluation: the whole cells once, in one isolate.
 */
import { readFileSync } from 'node:fs'
import {
  drawSamples,
  openEvaluator,
  runDrivers,
  runSpread,
  traceNumber,
} from '../../.build/kernel/cells/evidence/index.js'
import { createNodeNumbersHost } from '../../.build/kernel/cells/host-node/index.js'
import { openToolchain } from '../../.build/server/toolchain.js'
import { readNotebook } from '../../.build/shared/contracts/index.js'
import { median, milliseconds } from './statistics.js'

const target = 'grossMass'
const asked = 30
const samplesAsked = 2000

const starter = new URL('../../notebooks/starter.json', import.meta.url)
const { notebook } = readNotebook(readFileSync(starter, 'utf8'))
const sizing = notebook.cells
  .filter((cell) => cell.kind === 'sizing')
  .map((cell) => ({ id: cell.id, source: cell.source.join('\n') }))

const toolchain = await openToolchain()
const sandboxText = readFileSync(new URL('../../.build/kernel/sandbox.js', import.meta.url), 'utf8')
const host = createNodeNumbersHost({ sandboxText })
try {
  const reading = await toolchain.pipeline.read(sizing)
  const { results } = await toolchain.pipeline.evaluate(reading, {}, 'all')
  const assumptions = results.flatMap((result) => result.assumptions)
  const cell = results.find(({ values }) => values.some(({ name }) => name === target)).cell
  const requirements = results.filter((result) => result.requirements.length > 0).map((result) => result.cell)
  const number = { names: [{ name: target, cell }], requirements: [] }
  await measure(reading, assumptions, number, { ...number, requirements })
} finally {
  await host.close()
  await toolchain.close()
}

async function measure(reading, assumptions, number, withRequirements) {
  const one = await openEvaluator(reading, number, host)
  const all = await openEvaluator(reading, withRequirements, host)
  const reaching = assumptions.filter(({ name }) => one.assumptions.includes(name)).slice(0, asked)
  const request = { target, assumptions, count: samplesAsked, seed: 1 }

  const plain = []
  const part = []
  const drivers = []
  const spread = []
  await one.evaluateMany([{}])
  await all.evaluateMany([{}])
  let runs = 0
  for (let round = 0; round < 3; round += 1) {
    for (let turn = 0; turn < 5; turn += 1) {
      const payload = 380 + 5 * round + turn
      plain.push(await time(() => host.evaluateNumbers(reading.program, [{ payload }], number)))
      part.push(await time(() => one.evaluateMany([{ payload }])))
    }
    drivers.push(
      await time(async () => {
        runs = (await runDrivers({ target, assumptions: reaching }, one)).runs
      }),
    )
  }
  const samples = drawSamples(request)
  spread.push(await time(() => runSpread(request, samples, all)))

  // Each with a payload of its own, so that no evaluation is remembered from another trace.
  const traces = []
  const told = []
  let traceRuns = 0
  const [wantedNumber] = number.names
  for (let round = 0; round < 3; round += 1) {
    const begin = performance.now()
    let movesKnown = 0
    const onTrace = ({ steps }) => {
      if (movesKnown === 0 && steps.filter(({ acts }) => acts === 'moves').length > steps.length / 2)
        movesKnown = performance.now() - begin
    }
    const trials = { payload: 411.5 + round }
    traces.push(
      await time(async () => {
        const options = { read: reading, target: wantedNumber, assumptions, trials, onTrace }
        traceRuns = (await traceNumber(options, host)).runs
      }),
    )
    told.push(movesKnown)
  }

  console.log(`one evaluation of the number, whole cells:      ${milliseconds(plain)}`)
  console.log(`one evaluation of the number, the part needed:  ${milliseconds(part)}`)
  console.log(
    `drivers over ${reaching.length} assumptions, ${runs} runs:          ${milliseconds(drivers)}; aim: under 1 s`,
  )
  console.log(
    `spread, ${samplesAsked} samples with all requirements:    ${milliseconds(spread)}; aim: under 10 s on 2 cores`,
  )
  console.log(`trace, ${traceRuns} runs:                              ${milliseconds(traces)}`)
  console.log(`    half of what moves it is known after:       ${milliseconds(told)}`)
  console.log(
    `ratio of trace to one plain evaluation:         ${(median(traces) / median(plain)).toFixed(1)} for ${traceRuns} runs`,
  )
  console.log(
    `ratio of drivers to one plain evaluation:       ${(median(drivers) / median(plain)).toFixed(1)} for ${runs} runs`,
  )
  console.log(
    `ratio of spread to one plain evaluation:        ${(median(spread) / median(plain)).toFixed(0)} for ${samplesAsked} runs`,
  )
}

async function time(act) {
  const begin = performance.now()
  await act()
  return performance.now() - begin
}
