/** The drawing queue with the browser's own clockwork, and the late parts of the renderer behind it. */
import { lateParts } from '../../shared/rendering/page.js'
import { DrawingQueue } from './drawing-queue.js'

/** Figures are drawn a screen before they are seen. */
const margin = '100% 0px'

export function openDrawingQueue(window: Window & typeof globalThis): DrawingQueue {
  const queue = new DrawingQueue({
    observe: (onChange) => {
      const observer = new IntersectionObserver(
        (entries) => {
          for (const { target, isIntersecting } of entries) onChange(target, isIntersecting)
        },
        { rootMargin: margin },
      )
      return { watch: (element) => observer.observe(element), leave: (element) => observer.unobserve(element) }
    },
    nextFrame: (call) => void window.requestAnimationFrame(call),
    whenIdle: (call) => {
      if (typeof window.requestIdleCallback === 'function')
        window.requestIdleCallback((deadline) => call(() => deadline.timeRemaining()))
      else setTimeout(() => call(oneTurn()), 200)
    },
    now: () => performance.now(),
  })
  window.addEventListener('beforeprint', () => queue.drawAll())
  return queue
}

/** Time enough for one drawing, for browsers that do not say when they are idle. */
function oneTurn(): () => number {
  const end = performance.now() + 6
  return () => end - performance.now()
}

let loading: Promise<unknown> | undefined

/** Loads what draws figures and sets prose; without a network it waits for one, and a failed load is tried again at the next call. */
export function loadLateParts(): Promise<unknown> {
  if (lateParts() !== undefined) return Promise.resolve()
  loading ??= loadOrWait().catch((failure: unknown) => {
    loading = undefined
    throw failure
  })
  return loading
}

async function loadOrWait(): Promise<unknown> {
  try {
    return await import('../../shared/rendering/all-parts.js')
  } catch (failure) {
    if (navigator.onLine) throw failure
    await new Promise((resolve) => window.addEventListener('online', resolve, { once: true }))
    return loadOrWait()
  }
}
