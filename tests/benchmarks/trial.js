/**
 * A slider of the register in Chromium: from a press of an arrow to the new value on the sheet, for a small notebook and for the worked sizing,
 * and the longest that the page lets a frame wait while the slider is dragged.
 */
import { openPage } from './open-page.js'
import { median, milliseconds, quantile } from './statistics.js'

/** What a person takes for at once [ms]: house convention. */
const atOnce = 100
const steps = 40
const warming = 8

const small = {
  needs: ["const payload = assumption('payload', 400 * u.kg, { range: [300 * u.kg, 500 * u.kg] })"],
  sums: ['const gross = 1200 * u.kg + payload / 0.75', 'const weight = gross * u.g0'],
}

const { server, browser, close } = await openPage()
try {
  await measure('small notebook', await notebook(small), 'payload', 'sums', 'gross')
  await measure('worked sizing', 'notebooks/worked-sizing', 'range', 'closure', 'grossMass')
} finally {
  await close()
}

async function notebook(cells) {
  const body = {
    format: 'hoverfolio notebook',
    version: 1,
    title: 'Small',
    cells: Object.entries(cells).map(([id, source]) => ({ id, kind: 'sizing', source })),
  }
  const reply = await fetch(`${server.address}api/notebooks`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ notebook: body }),
  })
  return `notebooks/${(await reply.json()).id}`
}

async function measure(what, path, assumption, cell, name) {
  const page = await browser.newPage({ viewport: { width: 1280, height: 1000 } })
  await page.goto(`${server.address}${path}#register`)
  await page.locator('.bar .saving', { hasText: 'all edits saved' }).waitFor({ timeout: 60_000 })
  await page.locator(`[data-cell="${cell}"][data-state="current"]`).waitFor({ timeout: 60_000 })
  const slider = page.getByRole('slider', { name: new RegExp(`^Trial value of ${assumption} `) })
  await slider.waitFor()
  await page.waitForTimeout(3000)
  await slider.focus()
  const times = []
  for (let step = 0; step < steps + warming; step += 1) {
    // Never back: a value that was tried before is remembered.
    const elapsed = await timeStep(page, 'ArrowLeft', cell, name)
    if (step >= warming) times.push(elapsed)
  }
  console.log(`${what}, step of a slider to the value: ${milliseconds(times)}`)
  console.log(`${what}, ratio to ${atOnce} ms: ${(median(times) / atOnce).toFixed(2)}`)
  const frames = await framesOfDrag(page, slider)
  console.log(
    `${what}, between frames of a drag: ${milliseconds(frames)}, longest ${quantile(frames, 1).toFixed(0)} ms`,
  )
  await page.close()
}

async function timeStep(page, key, cell, name) {
  await page.evaluate(
    ([id, value]) => {
      window.elapsed = new Promise((resolve) => {
        const section = document.querySelector(`[data-cell="${id}"]`)
        const shown = () => section.querySelector(`.value[data-name="${value}"] dd`)?.textContent
        const before = shown()
        let pressed
        const start = () => {
          pressed ??= performance.now()
        }
        document.addEventListener('keydown', start, { capture: true, once: true })
        const observer = new MutationObserver(() => {
          if (pressed === undefined || shown() === before) return
          observer.disconnect()
          resolve(performance.now() - pressed)
        })
        observer.observe(section, { childList: true, subtree: true, characterData: true })
      })
    },
    [cell, name],
  )
  await page.keyboard.press(key)
  return page.evaluate(() =>
    Promise.race([
      window.elapsed,
      new Promise((_, fail) => setTimeout(() => fail(new Error('no value in 30 s')), 30_000)),
    ]),
  )
}

/** Times between frames [ms]. */
async function framesOfDrag(page, slider) {
  const { x, y, width, height } = await slider.boundingBox()
  const middle = y + height / 2
  await page.evaluate(() => {
    window.drawnFrames = []
    let last = performance.now()
    const frame = () => {
      const now = performance.now()
      window.drawnFrames.push(now - last)
      last = now
      requestAnimationFrame(frame)
    }
    requestAnimationFrame(frame)
  })
  await page.mouse.move(x + width * 0.3, middle)
  await page.mouse.down()
  for (let at = 0; at <= 60; at += 1) {
    await page.mouse.move(x + width * (0.3 + at * 0.01), middle)
    await page.waitForTimeout(16)
  }
  await page.mouse.up()
  return page.evaluate(() => window.drawnFrames)
}
