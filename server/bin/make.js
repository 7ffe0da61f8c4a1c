/** `npm run build`: installs and builds what is missing or older than the sources, and serves nothing. */
import { ensureBuilt } from './freshness.js'
import { ensureInstalled } from './preparation.js'

const say = (sentence) => process.stdout.write(`${sentence}\n`)

ensureInstalled(say)
await ensureBuilt(say)
say('The build is up to date.')
