#!/usr/bin/env node
/** The command. A thin shim, so that it can say plainly when the project has not been built yet. */
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const command = new URL('../../.build/server/command/index.js', import.meta.url)
const kernel = new URL('../../.build/kernel/kernel.json', import.meta.url)

if (existsSync(fileURLToPath(command)) && existsSync(fileURLToPath(kernel))) {
  const { runCommand } = await import(command.href)
  process.exitCode = await runCommand(process.argv.slice(2))
} else {
  process.stderr.write('Hoverfolio is not built yet: run "npm start" (or "npm run build") in its folder once.\n')
  process.exitCode = 2
}
