/**
 * `npm run nightly`: every property with 100,000 random inputs, and the laboratory of lost and cut writes with 40 seeds. It takes
 * hours. `npm run nightly -- tests/property/kernel/rotor.test.ts` runs one file; `HOVERFOLIO_RUNS` and `HOVERFOLIO_LAB_SEEDS` go before these numbers.
 * Each night has a seed of its own, which is printed; `HOVERFOLIO_SEED` runs a night again.
 */

import { ensureBuilt } from '../server/bin/freshness.js'
import { ensureInstalled, runTool } from '../server/bin/preparation.js'

const say = (sentence) => process.stdout.write(`${sentence}\n`)
const chosen = process.argv.slice(2)
const files = chosen.length > 0 ? chosen : ['tests/property', 'tests/api/durability.test.ts']
/** A night [ms]: no property is given up because it took long. */
const patience = 12 * 3600 * 1000
/** The day since 1970. */
const seed = process.env.HOVERFOLIO_SEED ?? String(Math.floor(Date.now() / 86_400_000))

say(`Seed of this night: ${seed}.`)
ensureInstalled(say)
await ensureBuilt(say)
runTool(
  'vitest/vitest.mjs',
  ['run', '--config', 'tests/tooling/vitest.config.ts', '--testTimeout', String(patience), ...files],
  { show: true, env: { HOVERFOLIO_RUNS: '100000', HOVERFOLIO_LAB_SEEDS: '40', ...process.env, HOVERFOLIO_SEED: seed } },
)
