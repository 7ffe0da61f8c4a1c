/**
 * `npm test`: installs what is missing, then types, lint, layers, unit and API tests, published checks, browser journeys.
 * Stops at the first step that fails. `npm test -- unit` runs one step by its name.
 */

import { findBrowser, installBrowser, installLine } from '../server/bin/browser.js'
import { ensureBuilt } from '../server/bin/freshness.js'
import { ensureInstalled, runTool, stop } from '../server/bin/preparation.js'

const say = (sentence) => process.stdout.write(`${sentence}\n`)

const steps = [
  { name: 'types', about: 'TypeScript over every project', go: () => runTool('typescript/bin/tsc', ['-b']) },
  {
    name: 'lint',
    about: 'format and lint',
    go: () => runTool('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.']),
  },
  {
    name: 'layers',
    about: 'who may import whom',
    go: () =>
      runTool('dependency-cruiser/bin/dependency-cruise.mjs', [
        '--config',
        'tests/tooling/layers.cjs',
        'shared',
        'kernel',
        'server',
        'client',
        'tests',
      ]),
  },
  {
    name: 'unit',
    about: 'unit, published, property, API and isolation tests',
    go: () => vitest('tests/tooling/vitest.config.ts'),
  },
  { name: 'browser', about: 'journeys in Chromium', go: browserTests },
]

const wanted = process.argv.slice(2)
const unknown = wanted.find((name) => !steps.some((step) => step.name === name))
if (unknown !== undefined)
  stop(`There is no step "${unknown}"; the steps are ${steps.map((step) => step.name).join(', ')}.`)

ensureInstalled(say)
await ensureBuilt(say)
for (const step of steps) {
  if (wanted.length > 0 && !wanted.includes(step.name)) continue
  const start = Date.now()
  say(`\n== ${step.name}: ${step.about}`)
  await step.go()
  say(`== ${step.name}: good (${((Date.now() - start) / 1000).toFixed(0)} s)`)
}

function vitest(config, env = process.env) {
  runTool('vitest/vitest.mjs', ['run', '--config', config], { show: true, env })
}

async function browserTests() {
  let browser = await findBrowser()
  if (browser === undefined) {
    installBrowser(say)
    browser = await findBrowser()
  }
  if (browser === undefined)
    stop(`No Chromium was found and none could be installed. ${installLine}; then run "npm test" again.`)
  say(`Browser: ${browser}`)
  vitest('tests/tooling/browser.config.ts', { ...process.env, HOVERFOLIO_BROWSER: browser })
}
