/** The browser's WebSocket and timers, as a session uses them. */
import type { Clock, Socket } from './session.js'

export function openLiveSocket(notebook: string): Socket {
  const address = new URL(`/api/notebooks/${encodeURIComponent(notebook)}/live`, location.href)
  address.protocol = location.protocol === 'https:' ? 'wss:' : 'ws:'
  return new WebSocket(address) as Socket
}

export const browserClock: Clock = {
  after(milliseconds, call) {
    const timer = setTimeout(call, milliseconds)
    return () => clearTimeout(timer)
  },
  random: Math.random,
}
