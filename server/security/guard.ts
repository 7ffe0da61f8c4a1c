/**
 * Who may talk to a server without login: a browser on this machine that was given the server's own address, and programs of
 * this machine. A page of another site can make a browser send requests here, and a name of its own can be made to point
 * here; both show in Host, Origin and Sec-Fetch-Site, which pages cannot forge. Every route and upgrade passes this check.
 */
import type { IncomingHttpHeaders } from 'node:http'
import { Trouble } from '../../shared/contracts/index.js'

export const loopbackNames = ['localhost', '127.0.0.1', '[::1]'] as const

export interface Arrival {
  readonly method: string
  /** Path without the query. */
  readonly path: string
  readonly headers: IncomingHttpHeaders
  /** The port this server listens on. */
  readonly port: number
}

const proxyHeaders = [
  'forwarded',
  'x-forwarded-for',
  'x-forwarded-host',
  'x-forwarded-proto',
  'x-real-ip',
  'via',
] as const

/** Throws HOST_REFUSED or ORIGIN_REFUSED. */
export function checkArrival(arrival: Arrival): void {
  const host = checkHost(arrival)
  checkOrigin(arrival, host)
  checkSite(arrival)
}

function checkHost({ headers, port }: Arrival): string {
  const host = headers.host ?? ''
  const proxy = proxyHeaders.find((name) => headers[name] !== undefined)
  if (proxy !== undefined) throw new Trouble('HOST_REFUSED', { host: `${host} (through a proxy: ${proxy})` })
  const known = loopbackNames.some(
    (name) => host.toLowerCase() === `${name}:${port}` || (port === 80 && host.toLowerCase() === name),
  )
  if (!known) throw new Trouble('HOST_REFUSED', { host: host.slice(0, 200) })
  return host.toLowerCase()
}

function checkOrigin({ headers }: Arrival, host: string): void {
  const { origin } = headers
  if (origin !== undefined && origin.toLowerCase() !== `http://${host}`)
    throw new Trouble('ORIGIN_REFUSED', { origin: origin.slice(0, 200) })
}

/** Following a link from elsewhere to a page is let through; everything else that another site starts is not. */
function checkSite({ method, path, headers }: Arrival): void {
  const site = headers['sec-fetch-site']
  if (site === undefined || site === 'same-origin' || site === 'none') return
  const followsLink =
    method === 'GET' &&
    headers['sec-fetch-mode'] === 'navigate' &&
    headers['sec-fetch-dest'] === 'document' &&
    !path.startsWith('/api/')
  if (!followsLink) throw new Trouble('ORIGIN_REFUSED', { origin: `another site (${String(site).slice(0, 40)})` })
}
