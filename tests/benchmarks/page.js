/**
 * The page in Chromium: from a keystroke in a cell of 30 lines to its result on the sheet, and from navigation to stored results that can be
 * read, against the server's plainest page in the same run.
 */
import { openPage } from './open-page.js'
import { median, milliseconds } from './statistics.js'

/** What the client waits for further typing before it computes [ms]; `typingPause` of client/compute/computation.ts. */
const typingPause = 80
const keystrokes = 40
const visits = 12

const { server, browser, close } = await openPage()
try {
  await measureReading()
  await measureTyping()
} finally {
  await close()
}

/** First paint that holds the stored gross mass; scripts may still be loading. */
async function measureReading() {
  const page = await browser.newPage()
  await page.goto(`${server.address}notebooks/worked-sizing`)
  await page.locator('[data-cell="closure"][data-state="current"] .value').first().waitFor({ timeout: 60_000 })
  await page.close()
  const sheet = []
  const plain = []
  for (let visit = 0; visit < visits; visit += 1) {
    plain.push(await paintTime('cautions', 'p'))
    sheet.push(await paintTime('notebooks/worked-sizing', '[data-cell="closure"] .value[data-name="grossMass"]'))
  }
  console.log(`stored results readable after navigation: ${milliseconds(sheet)}`)
  console.log(`the plainest page:                        ${milliseconds(plain)}`)
  console.log(`ratio: ${(median(sheet) / median(plain)).toFixed(2)}`)
}

async function paintTime(path, selector) {
  const context = await browser.newContext()
  const page = await context.newPage()
  await page.goto(`${server.address}${path}`, { waitUntil: 'commit' })
  await page.locator(selector).first().waitFor({ state: 'attached' })
  const painted = await page.evaluate(
    () =>
      new Promise((resolve) => {
        const known = performance.getEntriesByName('first-contentful-paint')[0]
        if (known !== undefined) resolve(known.startTime)
        else
          new PerformanceObserver((list) =>
            resolve(list.getEntriesByName('first-contentful-paint')[0]?.startTime),
          ).observe({ type: 'paint', buffered: true })
      }),
  )
  await context.close()
  return painted
}

/** Types a digit at the end of a number that the rest of the cell depends on, and takes it away again. */
async function measureTyping() {
  const lines = [
    'const start = 0.1',
    ...Array.from(
      { length: 28 },
      (_, line) => `const step${line} = ${line === 0 ? 'start' : `step${line - 1}`} * 1.01 + ${line} * u.m / u.m`,
    ),
    'const end = step27 / 2',
  ]
  const notebook = {
    format: 'hoverfolio notebook',
    version: 1,
    title: 'Thirty lines',
    cells: [{ id: 'long', kind: 'sizing', source: lines }],
  }
  const reply = await fetch(`${server.address}api/notebooks`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ notebook }),
  })
  const { id } = await reply.json()
  const page = await browser.newPage({ viewport: { width: 1280, height: 1000 } })
  await page.goto(`${server.address}notebooks/${id}`)
  await page.locator('.bar .saving', { hasText: 'all edits saved' }).waitFor({ timeout: 60_000 })
  await page.locator('[data-cell="long"]').focus()
  await page.keyboard.press('Enter')
  await page.waitForFunction(() =>
    document.querySelector('[data-cell="long"] .surface')?.contains(document.activeElement),
  )
  await page.keyboard.press('Control+Home')
  await page.keyboard.press('End')
  await page.waitForTimeout(5000)
  const times = []
  for (let stroke = 0; stroke < keystrokes + 10; stroke += 1) {
    const key = stroke % 2 === 1 ? 'Backspace' : String(1 + (stroke % 8))
    const elapsed = await timeStroke(page, key)
    if (stroke >= 10) times.push(elapsed)
  }
  console.log(`keystroke to result, 30 lines, warm: ${milliseconds(times)}`)
  console.log(
    `of which pause for further typing:   ${typingPause} ms; the rest ${(median(times) - typingPause).toFixed(1)} ms`,
  )
  console.log(`ratio of the whole to the pause: ${(median(times) / typingPause).toFixed(2)}`)
}

async function timeStroke(page, key) {
  await page.evaluate(() => {
    window.elapsed = new Promise((resolve) => {
      const cell = document.querySelector('[data-cell="long"]')
      const shown = () => cell.querySelector('.value[data-name="start"] dd')?.textContent
      const before = shown()
      let pressed
      cell.addEventListener(
        'keydown',
        () => {
          pressed ??= performance.now()
        },
        { capture: true, once: true },
      )
      const observer = new MutationObserver(() => {
        if (pressed === undefined || shown() === before) return
        observer.disconnect()
        resolve(performance.now() - pressed)
      })
      observer.observe(cell, { childList: true, subtree: true, characterData: true, attributes: true })
    })
  })
  await page.keyboard.press(key)
  return page.evaluate(() =>
    Promise.race([
      window.elapsed,
      new Promise((_, fail) => setTimeout(() => fail(new Error('no result in 10 s')), 10_000)),
    ]),
  )
}
