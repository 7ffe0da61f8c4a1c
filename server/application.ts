/** The application put together: guard, headers, limits, routes. Everything it needs is handed in; it opens nothing itself. */
import fastifyMultipart from '@fastify/multipart'
import fastifyRateLimit from '@fastify/rate-limit'
import fastifySwagger from '@fastify/swagger'
import {
  jsonSchemaTransform,
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from '@fastify/type-provider-zod'
import fastifyWebsocket from '@fastify/websocket'
import Fastify, { type FastifyError, type FastifyInstance } from 'fastify'
import type { FramePage } from '../kernel/cells/host-browser/index.js'
import { limits, Trouble } from '../shared/contracts/index.js'
import { readCatalogue } from './catalogue/index.js'
import { type Clock, systemClock } from './clock.js'
import type { ServerKernel } from './kernel.js'
import { LiveDocuments } from './live/index.js'
import { type Log, silentLog } from './log.js'
import { Notebooks } from './notebooks.js'
import { readClientBuild } from './pages/index.js'
import { refuse, troubleOf } from './refusals.js'
import { Background, ResultShelf } from './results/index.js'
import { Revisions } from './revisions/index.js'
import {
  type App,
  assetRoutes,
  exportRoutes,
  liveRoute,
  methodRoutes,
  notebookRoutes,
  pageRoutes,
  resultRoutes,
  revisionRoutes,
} from './routes/index.js'
import { frameBytes } from './routes/live-route.js'
import { checkArrival, commonHeaders, dataPolicy } from './security/index.js'
import type { ShippedNotebooks } from './shipped.js'
import type { Store } from './store/index.js'

export interface ApplicationOptions {
  /** Started; the application does not close it. */
  readonly store: Store
  readonly kernel: ServerKernel
  readonly clientFolder: string
  readonly kernelFolder: string
  readonly framePage: FramePage
  /** Port that the Host header must name while the server does not listen itself (tests). */
  readonly port?: number
  readonly clock?: Clock
  readonly log?: Log
  /** Nothing comes with the program when absent. */
  readonly shipped?: ShippedNotebooks
  /** Requests one address may make in a minute. */
  readonly requestsPerMinute?: number
}

export interface Application {
  readonly app: FastifyInstance
  readonly documents: LiveDocuments
  readonly background: Background
}

const smallBody = 256 * 1024

export async function buildApplication(options: ApplicationOptions): Promise<Application> {
  const { store, kernel, clock = systemClock, log = silentLog } = options
  const documents = new LiveDocuments({ store, clock, log })
  const shelf = new ResultShelf(store, kernel)
  const background = new Background({ documents, shelf, kernel, log })
  const notebooks = new Notebooks({ store, documents, shelf, background, shipped: options.shipped })
  const revisions = new Revisions({ store, documents, shelf, kernel, clock })
  const build = await readClientBuild(options.clientFolder)
  const methods = await readCatalogue(options.kernelFolder)

  const fastify = Fastify({
    bodyLimit: smallBody,
    routerOptions: { maxParamLength: 100 },
    // Slow senders do not hold a connection open for ever.
    requestTimeout: 60_000,
    forceCloseConnections: true,
  })
  const app: App = fastify.withTypeProvider<ZodTypeProvider>()
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)
  app.removeContentTypeParser('text/plain')
  app.setErrorHandler((error: FastifyError, request, reply) =>
    refuse(troubleOf(error, request, log), request, reply, build),
  )
  app.setNotFoundHandler((request, reply) =>
    refuse(
      new Trouble('ADDRESS_UNKNOWN', { method: request.method, path: pathOf(request.url) }),
      request,
      reply,
      build,
    ),
  )

  app.addHook('onRequest', async (request, reply) => {
    for (const [name, value] of Object.entries(commonHeaders)) reply.header(name, value)
    reply.header('content-security-policy', dataPolicy)
    if (request.url.startsWith('/api/')) reply.header('cache-control', 'no-store')
    const port = listeningPort(app) ?? options.port ?? 0
    checkArrival({ method: request.method, path: pathOf(request.url), headers: request.headers, port })
  })

  // A refused upgrade has left the server's keeping: nobody else would close its socket, and closing down would wait for it.
  app.addHook('onResponse', async ({ raw }, reply) => {
    if (raw.headers.upgrade !== undefined && reply.statusCode >= 400) raw.socket.end(() => raw.socket.destroy())
  })

  await app.register(fastifyRateLimit, {
    global: true,
    max: options.requestsPerMinute ?? 3000,
    timeWindow: 60_000,
    errorResponseBuilder: (_request, { ttl }) => new Trouble('TOO_MANY_REQUESTS', { seconds: Math.ceil(ttl / 1000) }),
  })
  await app.register(fastifySwagger, {
    openapi: {
      info: { title: 'Hoverfolio', version: '1', description: 'Notebooks of one data folder, served on this machine.' },
    },
    transform: jsonSchemaTransform,
  })
  await app.register(fastifyMultipart, {
    attachFieldsToBody: 'keyValues',
    throwFileSizeLimit: true,
    limits: { files: 1, fields: 4, parts: 5, fieldSize: 4096, fileSize: limits.notebookBytes },
  })
  await app.register(fastifyWebsocket, { options: { maxPayload: frameBytes, perMessageDeflate: false } })

  const parts = { notebooks, documents, shelf, revisions, kernel, build, methods, clock, log }
  await app.register(async (inner) => {
    const routes: App = inner.withTypeProvider<ZodTypeProvider>()
    notebookRoutes(routes, parts)
    resultRoutes(routes, parts)
    revisionRoutes(routes, parts)
    liveRoute(routes, parts)
    pageRoutes(routes, parts)
    methodRoutes(routes, parts)
    exportRoutes(routes, parts)
    await assetRoutes(routes, options)
    routes.get('/api/openapi.json', { schema: { hide: true } }, () => app.swagger())
  })

  // Before the server stops taking requests, so that everyone's last edit is in the file.
  app.addHook('preClose', async () => {
    background.close()
    await documents.close()
  })
  return { app: fastify, documents, background }
}

const pathOf = (url: string) => url.split('?', 1)[0] ?? url

function listeningPort(app: App): number | undefined {
  const address = app.server.address()
  return address === null || typeof address === 'string' ? undefined : address.port
}
