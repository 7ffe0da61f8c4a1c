/** What every group of routes is given, and the shapes they share. */
import type { ZodTypeProvider } from '@fastify/type-provider-zod'
import type {
  FastifyBaseLogger,
  FastifyInstance,
  RawReplyDefaultExpression,
  RawRequestDefaultExpression,
  RawServerDefault,
} from 'fastify'
import { z } from 'zod'
import { type Method, NotebookId, TroubleBody } from '../../shared/contracts/index.js'
import type { Clock } from '../clock.js'
import type { ServerKernel } from '../kernel.js'
import type { LiveDocuments } from '../live/index.js'
import type { Log } from '../log.js'
import type { Notebooks } from '../notebooks.js'
import type { ClientBuild } from '../pages/index.js'
import type { ResultShelf } from '../results/index.js'
import type { Revisions } from '../revisions/index.js'

export type App = FastifyInstance<
  RawServerDefault,
  RawRequestDefaultExpression,
  RawReplyDefaultExpression,
  FastifyBaseLogger,
  ZodTypeProvider
>

export interface RouteParts {
  readonly notebooks: Notebooks
  readonly documents: LiveDocuments
  readonly shelf: ResultShelf
  readonly revisions: Revisions
  readonly kernel: ServerKernel
  readonly build: ClientBuild
  /** The catalogue of methods; empty where the kernel was built without one. */
  readonly methods: readonly Method[]
  readonly clock: Clock
  readonly log: Log
}

export const NotebookParams = z.object({ id: NotebookId })

/** The refusals any route may give. */
export const refusals = { '4xx': TroubleBody, '5xx': TroubleBody } as const

/** Replies of a route: what it gives, and refusals. */
export function replies<T extends z.ZodType>(schema: T) {
  return { 200: schema, ...refusals }
}

/** A page or a file: not described by a schema beyond being text. */
export const TextReply = z.string()
