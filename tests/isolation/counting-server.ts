/** A server that any attack may try to reach: it counts, per mark in the path, what arrives by HTTP or as a WebSocket upgrade. */
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'

export interface CountingServer {
  readonly http: string
  readonly webSocket: string
  /** Arrivals by mark. */
  readonly arrivals: ReadonlyMap<string, number>
  forget(): void
  close(): Promise<void>
}

export async function startCountingServer(): Promise<CountingServer> {
  const arrivals = new Map<string, number>()
  const count = (url: string | undefined) => {
    const mark = decodeURIComponent((url ?? '').slice(1))
    arrivals.set(mark, (arrivals.get(mark) ?? 0) + 1)
  }
  const server = createServer((request, response) => {
    count(request.url)
    // As open as a server can be, so that only the isolation stands in the way.
    response.writeHead(200, { 'access-control-allow-origin': '*', 'content-type': 'text/javascript' })
    response.end('')
  })
  server.on('upgrade', (request, socket) => {
    count(request.url)
    socket.destroy()
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const { port } = server.address() as AddressInfo
  return {
    http: `http://127.0.0.1:${port}`,
    webSocket: `ws://127.0.0.1:${port}`,
    arrivals,
    forget: () => arrivals.clear(),
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections()
        server.close(() => resolve())
      }),
  }
}
