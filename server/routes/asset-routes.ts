/** Built files: the client's (named by their content, so kept for a year) and the kernel's (asked for anew each time). */
import { join } from 'node:path'
import fastifyStatic from '@fastify/static'
import { z } from 'zod'
import { type App, TextReply } from './parts.js'

export interface SandboxPage {
  readonly html: string
  readonly policy: string
}

export interface AssetParts {
  /** What vite built. */
  readonly clientFolder: string
  /** What the kernel build wrote: sandbox.js, kernel.json, declarations.json. */
  readonly kernelFolder: string
  readonly sandboxPage: SandboxPage
}

export async function assetRoutes(app: App, { clientFolder, kernelFolder, sandboxPage }: AssetParts): Promise<void> {
  await app.register(fastifyStatic, {
    root: join(clientFolder, 'assets'),
    prefix: '/assets/',
    immutable: true,
    maxAge: '365d',
    preCompressed: true,
    index: false,
    decorateReply: false,
    schemaHide: true,
  })
  await app.register(fastifyStatic, {
    root: kernelFolder,
    prefix: '/kernel/',
    cacheControl: false,
    preCompressed: true,
    index: false,
    decorateReply: false,
    schemaHide: true,
    setHeaders(reply, path) {
      reply.header('cache-control', 'no-cache')
      // The sandbox frame has an opaque origin: to it this file comes from elsewhere.
      if (path.includes('sandbox.js')) reply.header('cross-origin-resource-policy', 'cross-origin')
    },
  })

  app.get('/sandbox.html', { schema: { hide: true, response: { 200: TextReply } } }, async (_request, reply) =>
    reply
      .type('text/html; charset=utf-8')
      .header('content-security-policy', sandboxPage.policy)
      .header('x-frame-options', 'SAMEORIGIN')
      .header('cache-control', 'no-cache')
      .serializer((text) => String(text))
      .send(sandboxPage.html),
  )

  app.get(
    '/healthz',
    { schema: { summary: 'Whether the server answers', response: { 200: z.object({ ok: z.literal(true) }) } } },
    () => ({
      ok: true as const,
    }),
  )
}
