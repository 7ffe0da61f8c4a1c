/** Finds a Chromium for the browser tests: the environment's choice, the system's, or playwright's own. */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const names = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome']

/** The line that installs one, for people and for messages. */
export const installLine =
  'Debian or Ubuntu: apt-get install chromium-headless-shell (or chromium); elsewhere: npx playwright install chromium'

/** Path of a browser, or undefined when none is here. */
export async function findBrowser() {
  const chosen = process.env.HOVERFOLIO_BROWSER
  if (chosen !== undefined && chosen !== '') return existsSync(chosen) ? chosen : undefined
  for (const name of names)
    for (const folder of (process.env.PATH ?? '').split(delimiter))
      if (folder !== '' && existsSync(join(folder, name))) return join(folder, name)
  return playwrightBrowser()
}

/** Installs one where that can be done without asking: as root on a Debian system, else by playwright. */
export function installBrowser(say) {
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    say('Installing chromium-headless-shell by apt-get (once) ...')
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    spawnSync('apt-get', ['update', '-qq'], { env, stdio: 'ignore' })
    for (const name of ['chromium-headless-shell', 'chromium'])
      if (
        spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', name], { env, stdio: 'ignore' })
          .status === 0
      )
        return
  }
  say("Installing playwright's own Chromium (once) ...")
  spawnSync(process.execPath, ['node_modules/playwright/cli.js', 'install', 'chromium'], {
    stdio: 'ignore',
    timeout: 300_000,
  })
}

async function playwrightBrowser() {
  try {
    const { chromium } = await import('playwright')
    const path = chromium.executablePath()
    return existsSync(path) ? path : undefined
  } catch {
    return undefined
  }
}
