/**
 * A notebook of 200 cells with 60 figures in Chromium: how long until it can be read and edited, how evenly it scrolls, and what an edit that
 * every cell depends on does to the page. Frames that took long are named by the script that took them; the plainest page is measured beside it.
 */
import { longNotebook } from './long-notebook.js'
import { openPage } from './open-page.js'
import { median, milliseconds, quantile } from './statistics.js'

const visits = 5

const { server, browser, close } = await openPage()
try {
  const path = await addLongNotebook()
  await measureOpening(path)
  await measureScrolling(path)
  await measureRun(path)
} finally {
  await close()
}

/** Stored and computed, so that its reader finds results. */
async function addLongNotebook() {
  const reply = await fetch(`${server.address}api/notebooks`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ notebook: longNotebook() }),
  })
  const { id } = await reply.json()
  const page = await browser.newPage()
  await page.goto(`${server.address}notebooks/${id}`, { waitUntil: 'commit', timeout: 120_000 })
  await page.waitForFunction(
    () => [...document.querySelectorAll('.cell[data-kind="sizing"]')].every((cell) => cell.dataset.state === 'current'),
    undefined,
    { timeout: 120_000 },
  )
  await page.close()
  await untilStored(id)
  return `notebooks/${id}`
}

/** The server holds a result for every sizing cell. */
async function untilStored(id) {
  const sizings = longNotebook().cells.filter((cell) => cell.kind === 'sizing').length
  for (let tries = 0; tries < 600; tries += 1) {
    const { results } = await (await fetch(`${server.address}api/notebooks/${id}/results`)).json()
    if (results.length >= sizings) return
    await new Promise((resolve) => setTimeout(resolve, 200))
  }
  throw new Error('the server did not get the results of every cell within two minutes')
}

async function open(path, before = async () => {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 1000 } })
  const page = await context.newPage()
  await page.addInitScript(watchFrames)
  await before(page)
  const workSoFar = await countWork(page)
  await page.goto(`${server.address}${path}`, { waitUntil: 'commit', timeout: 120_000 })
  return { context, page, workSoFar }
}

/** Asked in the page's own words: a search by the test's tools goes through the whole document in script, and would be counted with ours. */
async function untilEditable(page) {
  await page.waitForFunction(
    () => document.querySelector('.bar .saving')?.textContent.includes('all edits saved'),
    undefined,
    { timeout: 60_000, polling: 50 },
  )
}

/** Counts the page thread's work from before navigation on [ms]; counting that begins later has missed the opening. */
async function countWork(page) {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics')
    return 1000 * metrics.find(({ name }) => name === 'TaskDuration').value
  }
}

/** Runs in the page: long tasks from its first moment, and by the script that took them. */
function watchFrames() {
  window.long = []
  new PerformanceObserver((list) => {
    for (const frame of list.getEntries())
      window.long.push({
        start: frame.startTime,
        duration: frame.duration,
        blocking: frame.blockingDuration,
        scripts: frame.scripts.map((script) => ({
          duration: script.duration,
          source:
            script.sourceURL
              .split('/')
              .at(-1)
              ?.replace(/-[\w-]{8}(?=\.js)/, '') || script.invoker,
        })),
      })
  }).observe({ type: 'long-animation-frame', buffered: true })
}

async function measureOpening(path) {
  const begun = performance.now()
  const before = process.cpuUsage()
  const first = await (await fetch(`${server.address}${path}`)).text()
  const { user, system } = process.cpuUsage(before)
  const figure = (text) => (text.match(/<figure/g) ?? []).length
  const cells = (text) => (text.match(/<section /g) ?? []).length
  const reply = performance.now()
  console.log(
    `the page: ${cells(first)} cells, ${figure(first)} figures, ${(first.length / 1e6).toFixed(2)} MB, served in ${(reply - begun).toFixed(0)} ms, ${((user + system) / 1000).toFixed(0)} ms of it work`,
  )
  const painted = []
  const usable = []
  const work = []
  const plain = []
  const blocked = []
  for (let visit = 0; visit < visits; visit += 1) {
    plain.push(await paintTime('cautions'))
    const { context, page, workSoFar } = await open(path)
    await untilEditable(page)
    work.push(await workSoFar())
    const times = await page.evaluate(() => ({
      painted: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? performance.now(),
      usable: performance.now(),
      blocked: Math.max(0, ...window.long.map((frame) => frame.blocking)),
    }))
    painted.push(times.painted)
    usable.push(times.usable)
    blocked.push(times.blocked)
    await context.close()
  }
  console.log(`readable after navigation:            ${milliseconds(painted)}`)
  console.log(`every cell can be edited:             ${milliseconds(usable)}`)
  console.log(`work of the page's thread until then: ${milliseconds(work)}`)
  console.log(`longest that the page was blocked:    ${milliseconds(blocked)}`)
  console.log(`the plainest page:                    ${milliseconds(plain)}`)
  console.log(`ratio of readable to the plainest page: ${(median(painted) / median(plain)).toFixed(2)}`)
}

async function paintTime(path) {
  const { context, page } = await open(path)
  await page.waitForFunction(() => performance.getEntriesByName('first-contentful-paint').length > 0)
  const painted = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0].startTime)
  await context.close()
  return painted
}

/** Down and up through the whole sheet by steps of a wheel; frames as the page sees them. */
async function measureScrolling(path) {
  const { context, page } = await open(path)
  await untilEditable(page)
  await page.waitForTimeout(5000)
  const still = await frames(page, 0)
  for (const [name, step] of [
    ['scrolling down', 120],
    ['scrolling up', -120],
  ]) {
    const { times, long } = await frames(page, step)
    console.log(
      `${name}: frames median ${median(times).toFixed(1)}, p99 ${quantile(times, 0.99).toFixed(1)}, longest ${Math.max(...times).toFixed(1)} ms (n ${times.length})`,
    )
    console.log(`  our scripts in long frames: ${scriptWords(long)}`)
    console.log(
      `  ratio of p99 to that of a page at rest: ${(quantile(times, 0.99) / quantile(still.times, 0.99)).toFixed(2)}`,
    )
  }
  await context.close()
}

function frames(page, step) {
  return page.evaluate(
    (by) =>
      new Promise((resolve) => {
        window.long.length = 0
        const times = []
        let last = performance.now()
        const next = (now) => {
          times.push(now - last)
          last = now
          window.scrollBy(0, by)
          if (times.length < 400) requestAnimationFrame(next)
          else resolve({ times: times.slice(2), long: window.long })
        }
        requestAnimationFrame(next)
      }),
    step,
  )
}

/** `sheet.js 132 ms in 3 frames`: what the scripts of the page took of the frames that were long. */
function scriptWords(long) {
  const bySource = new Map()
  for (const { scripts } of long)
    for (const { source, duration } of scripts) {
      const known = bySource.get(source) ?? { duration: 0, count: 0 }
      bySource.set(source, { duration: known.duration + duration, count: known.count + 1 })
    }
  const words = [...bySource].map(([source, { duration, count }]) => `${source} ${duration.toFixed(0)} ms in ${count}`)
  return words.length === 0 ? `none (${long.length} long frames)` : `${words.join(', ')} (${long.length} long frames)`
}

/** Everything computed anew: how long the page was blocked meanwhile. */
async function measureRun(path) {
  const { context, page } = await open(path)
  await untilEditable(page)
  await page.waitForTimeout(5000)
  await page.evaluate(() => {
    window.long.length = 0
  })
  const begun = performance.now()
  await page.getByRole('button', { name: 'Compute all' }).click()
  const long = await page.evaluate(
    () =>
      new Promise((resolve) => {
        const times = []
        let last = performance.now()
        const settled = () =>
          [...document.querySelectorAll('.cell[data-kind="sizing"]')].every((cell) => cell.dataset.state === 'current')
        const next = (now) => {
          times.push(now - last)
          last = now
          if ((times.length > 30 && settled()) || times.length > 3000) resolve({ times, long: window.long })
          else requestAnimationFrame(next)
        }
        requestAnimationFrame(next)
      }),
  )
  console.log(
    `all cells computed anew in ${(performance.now() - begun).toFixed(0)} ms: frames p99 ${quantile(long.times, 0.99).toFixed(1)}, longest ${Math.max(...long.times).toFixed(1)} ms`,
  )
  console.log(`  our scripts in long frames: ${scriptWords(long.long)}`)
  await context.close()
}
