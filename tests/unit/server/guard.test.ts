import { describe, expect, it } from 'vitest'
import { checkArrival } from '../../../server/security/index.js'

const own = '127.0.0.1:4180'
const linkHeaders = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' }

type Row = [headers: Record<string, string>, method: string, path: string]
const check = ([headers, method, path]: Row, port = 4180) => checkArrival({ method, path, headers, port })

describe('checkArrival', () => {
  it.each<Row>([
    [{ host: own }, 'GET', '/'],
    [{ host: 'localhost:4180' }, 'GET', '/'],
    [{ host: 'LOCALHOST:4180' }, 'GET', '/'],
    [{ host: '[::1]:4180' }, 'GET', '/'],
    [{ host: own, origin: `http://${own}`, 'sec-fetch-site': 'same-origin' }, 'POST', '/api/notebooks'],
    [{ host: own, 'sec-fetch-site': 'none' }, 'GET', '/notebooks/a'],
    [{ host: own, ...linkHeaders }, 'GET', '/notebooks/a'],
  ])('checkArrival(%j, %s %s) lets through', (...row) => {
    expect(() => check(row)).not.toThrow()
  })

  it.each<Row>([
    [{}, 'GET', '/'],
    [{ host: '' }, 'GET', '/'],
    [{ host: '127.0.0.1' }, 'GET', '/'],
    [{ host: '127.0.0.1:80' }, 'GET', '/'],
    [{ host: 'rebound.example:4180' }, 'GET', '/'],
    [{ host: '127.0.0.1.rebound.example:4180' }, 'GET', '/'],
    [{ host: 'localhost.:4180' }, 'GET', '/'],
    [{ host: '0.0.0.0:4180' }, 'GET', '/'],
    [{ host: '192.168.1.5:4180' }, 'GET', '/'],
    [{ host: 'user@127.0.0.1:4180' }, 'GET', '/'],
    [{ host: own, 'x-forwarded-for': '10.0.0.1' }, 'GET', '/'],
    [{ host: own, forwarded: 'for=10.0.0.1' }, 'GET', '/'],
    [{ host: own, via: '1.1 proxy' }, 'GET', '/'],
  ])('checkArrival(%j, %s %s) refuses the host', (...row) => {
    expect(() => check(row)).toThrow(expect.objectContaining({ code: 'HOST_REFUSED', status: 403 }))
  })

  it.each<Row>([
    [{ host: own, origin: 'null' }, 'GET', '/kernel/sandbox.js'],
    [{ host: own, origin: 'null' }, 'POST', '/api/notebooks'],
    [{ host: own, origin: 'http://evil.example' }, 'GET', '/api/notebooks'],
    [{ host: own, origin: `https://${own}` }, 'GET', '/'],
    [{ host: own, origin: 'http://127.0.0.1:4181' }, 'POST', '/api/notebooks'],
    [{ host: own, origin: 'http://localhost:4180' }, 'POST', '/api/notebooks'],
    [{ host: own, 'sec-fetch-site': 'cross-site' }, 'GET', '/kernel/sandbox.js'],
    [{ host: own, 'sec-fetch-site': 'same-site' }, 'GET', '/api/notebooks'],
    [
      { host: own, 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'iframe' },
      'GET',
      '/',
    ],
    [{ host: own, ...linkHeaders }, 'POST', '/notebooks'],
    [{ host: own, ...linkHeaders }, 'GET', '/api/notebooks/a/file'],
  ])('checkArrival(%j, %s %s) refuses the origin', (...row) => {
    expect(() => check(row)).toThrow(expect.objectContaining({ code: 'ORIGIN_REFUSED', status: 403 }))
  })

  it('checkArrival lets the bare name through on port 80 only', () => {
    expect(() => check([{ host: 'localhost' }, 'GET', '/'], 80)).not.toThrow()
  })
})
