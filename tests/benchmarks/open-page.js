/** A built server on a free port with a folder of its own, and a Chromium: what the benchmarks of the page need. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium } from 'playwright'
import { serve } from '../../.build/server/serve.js'
import { findBrowser, installLine } from '../../server/bin/browser.js'

/** Server and browser with the way to close both; ends the process, with the reason, where no Chromium is found. */
export async function openPage() {
  const executablePath = await findBrowser()
  if (executablePath === undefined) {
    console.log(`not measured: no Chromium was found. ${installLine}`)
    process.exit(0)
  }
  const folder = await mkdtemp(join(tmpdir(), 'hoverfolio-benchmark-'))
  const server = await serve({ port: 0, dataFolder: folder })
  const browser = await chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  })
  console.log(`Chromium ${browser.version()}`)
  const close = async () => {
    await browser.close()
    await server.close()
    await rm(folder, { recursive: true, force: true })
  }
  return { server, browser, close }
}
