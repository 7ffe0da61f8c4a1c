/** `hoverfolio spread FILE NAME`: how sure a number is, all uncertain assumptions sampled together. */

import {
  drawSamples,
  EvidenceTrouble,
  fewestSamples,
  mostSamples,
  openEvaluator,
  runShares,
  runSpread,
  sliceProgram,
  spreadDefaults,
} from '../../kernel/cells/evidence/index.js'
import type { Reading } from '../../kernel/cells/index.js'
import type { NumbersHost, WantedNumbers } from '../../kernel/cells/program/index.js'
import { cautionLine, type Shares, type Spread } from '../../shared/contracts/index.js'
import { viewInUnits } from '../../shared/rendering/index.js'
import { type ComputedSheet, computeSheet, fileAndName, fileAndNameUsage, placeOfNumber } from './asked-number.js'
import { subjectInCode } from './asked-text.js'
import { computingOptions, computingUsage } from './computing-options.js'
import { readNotebookFile } from './notebook-input.js'
import { withNumbersHost } from './numbers-host.js'
import { showProgress } from './progress.js'
import { describeSpread } from './spread-text.js'
import { readArguments, type Subcommand, WrongCall } from './subcommand.js'
import { readUnits } from './units-option.js'
import { readWholeNumber } from './whole-number.js'

export const spread: Subcommand = {
  name: 'spread',
  usage: `spread ${fileAndNameUsage} [--samples NUMBER] [--seed NUMBER] [--shares] ${computingUsage}`,
  about: 'says how sure a number is: percentiles, requirements met, and with --shares what the variance comes from',
  async run(args) {
    const { values, positionals } = readArguments({
      args: [...args],
      allowPositionals: true,
      options: {
        ...computingOptions,
        samples: { type: 'string', default: String(spreadDefaults.count) },
        seed: { type: 'string', default: String(spreadDefaults.seed) },
        shares: { type: 'boolean', default: false },
      },
    })
    const [file, name] = fileAndName(positionals, 'spread')
    const units = readUnits(values.units)
    const count = readWholeNumber('--samples', values.samples, fewestSamples, mostSamples)
    const seed = readWholeNumber('--seed', values.seed, 0, 2 ** 32 - 1)
    const sheet = await computeSheet(await readNotebookFile(file), values.set)
    const { view, overrides } = sheet
    refuseSampled(sheet)
    const asked = { name, count, seed, shares: values.shares }
    try {
      const found = await withNumbersHost((host) => sample(sheet, asked, host))
      const shown = viewInUnits(view, units)
      const { dimension, unit } = subjectInCode(shown, name)
      const { spread, shares } = found
      process.stdout.write(
        values.json
          ? `${JSON.stringify({ title: view.title, caution: cautionLine, overrides, dimension, unit, ...spread, shares }, null, 2)}\n`
          : describeSpread({ view: shown, spread, shares, trials: Object.keys(overrides) }),
      )
      return 0
    } catch (fault) {
      if (!(fault instanceof EvidenceTrouble)) throw fault
      process.stderr.write(`${fault.message}\n`)
      return 1
    }
  },
}

/** A single value has no place in what is sampled. */
function refuseSampled({ view, overrides }: ComputedSheet): void {
  const assumptions = view.cells.flatMap(({ result }) => result?.assumptions ?? [])
  const sampled = assumptions.find(
    ({ name, distribution }) => distribution !== undefined && Object.hasOwn(overrides, name),
  )
  if (sampled !== undefined)
    throw new WrongCall(
      `--set ${sampled.name}: it states a distribution and is sampled, so a single value has no place there. Values can be set of assumptions without one.`,
    )
}

interface Asked {
  readonly name: string
  readonly count: number
  readonly seed: number
  readonly shares: boolean
}

async function sample(
  sheet: ComputedSheet,
  { name, count, seed, shares }: Asked,
  host: NumbersHost,
): Promise<{ readonly spread: Spread; readonly shares: Shares | undefined }> {
  const { view, reading, overrides: base } = sheet
  const target = placeOfNumber(sheet, name)
  const requirements = view.cells.flatMap(({ id, result }) => ((result?.requirements.length ?? 0) > 0 ? [id] : []))
  const request = {
    target: name,
    assumptions: view.cells.flatMap(({ result }) => result?.assumptions ?? []),
    base,
    count,
    seed,
  }
  const samples = drawSamples(request)
  const evaluator = await openEvaluator(reading, { names: [target], requirements }, host, { probes: [base] })
  const found = await runSpread(request, samples, {
    ...evaluator,
    onProgress: showProgress('Sampling', process.stderr),
  })
  if (!shares || found.sampled.length === 0) return { spread: found, shares: undefined }
  const onProgress = showProgress('Sharing out the variance', process.stderr)
  const reaching = reachingOf(reading, { names: [target], requirements: [] })
  return { spread: found, shares: await runShares({ target: name, reaching }, samples, { ...evaluator, onProgress }) }
}

/** Assumptions that can reach the number itself, without those that only its requirements need. */
function reachingOf(reading: Reading, wanted: WantedNumbers): readonly string[] {
  return sliceProgram(reading, wanted).cells.flatMap(({ assumptions }) => assumptions)
}
