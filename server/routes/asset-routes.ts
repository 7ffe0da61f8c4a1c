/** Built files: the client's (named by their content, so kept for a year) and the kernel's (asked for anew each time). */
import { join } from 'node:path'
import fastifyStatic from '@fastify/static'
import { z } from 'zod'
import type { FramePage } from '../../kernel/cells/host-browser/index.js'
import { assetPolicy } from '../security/index.js'
import { type App, TextReply } from './parts.js'

export interface AssetParts {
  /** What vite built. */
  readonly clientFolder: string
  /** What the kernel build wrote: sandbox.js, kernel.json, declarations.json. */
  readonly kernelFolder: string
  /** The frame in which cells run, with the headers that make it a prison. */
  readonly framePage: FramePage
}

export async function assetRoutes(app: App, { clientFolder, kernelFolder, framePage }: AssetParts): Promise<void> {
  await app.register(fastifyStatic, {
    root: join(clientFolder, 'assets'),
    prefix: '/assets/',
    immutable: true,
    maxAge: '365d',
    preCompressed: true,
    index: false,
    decorateReply: false,
    schemaHide: true,
    setHeaders: (reply) => reply.header('content-security-policy', assetPolicy),
  })
  await app.register(fastifyStatic, {
    root: kernelFolder,
    prefix: '/kernel/',
    cacheControl: false,
    preCompressed: true,
    index: false,
    decorateReply: false,
    schemaHide: true,
    setHeaders: (reply) => reply.header('cache-control', 'no-cache'),
  })

  app.get(framePage.path, { schema: { hide: true, response: { 200: TextReply } } }, async (_request, reply) =>
    reply
      .headers(framePage.headers)
      .header('x-frame-options', 'SAMEORIGIN')
      .serializer((text) => String(text))
      .send(framePage.html),
  )

  app.get(
    '/healthz',
    { schema: { summary: 'Whether the server answers', response: { 200: z.object({ ok: z.literal(true) }) } } },
    () => ({
      ok: true as const,
    }),
  )
}
