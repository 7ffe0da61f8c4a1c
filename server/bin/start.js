/** `npm start`: installs and builds what is missing, serves, prints the address. Options are those of `hoverfolio serve`. */
import { ensureBuilt } from './freshness.js'
import { ensureInstalled } from './preparation.js'

const say = (sentence) => process.stdout.write(`${sentence}\n`)

ensureInstalled(say)
await ensureBuilt(say)
const { runCommand } = await import('../../.build/server/command/index.js')
process.exitCode = await runCommand(['serve', ...process.argv.slice(2)])
