/** The catalogue of methods as a page, and a new notebook with the example of one. */
import { z } from 'zod'
import { type Method, NotebookSummary, Trouble } from '../../shared/contracts/index.js'
import { exampleNotebook } from '../catalogue/index.js'
import { MethodsPage } from '../pages/index.js'
import { plainPagePolicy } from '../security/index.js'
import { type App, type RouteParts, replies, TextReply } from './parts.js'

const asText = (text: unknown) => String(text)
const form = z.coerce.number().int().min(0).max(20).default(0)

export function methodRoutes(app: App, { notebooks, methods, build }: RouteParts): void {
  const page = new MethodsPage(methods, build)

  app.get(
    '/methods',
    {
      schema: {
        hide: true,
        querystring: z.object({ find: z.string().max(1000).optional() }),
        response: { 200: TextReply },
      },
    },
    async ({ query }, reply) =>
      reply
        .type('text/html; charset=utf-8')
        .header('content-security-policy', plainPagePolicy)
        .serializer(asText)
        .send(page.page(query.find)),
  )

  app.post(
    '/methods/notebooks',
    {
      schema: { hide: true, body: z.strictObject({ method: z.string().max(200), form }), response: { 303: z.null() } },
    },
    async ({ body }, reply) => {
      const { id } = await notebooks.add(notebookFor(methods, body.method, body.form))
      return reply.redirect(`/notebooks/${id}`, 303)
    },
  )

  app.post(
    '/api/methods/:name/notebooks',
    {
      schema: {
        summary: 'Begins a notebook with the example of a method',
        params: z.object({ name: z.string().max(200) }),
        querystring: z.object({ form }),
        response: replies(NotebookSummary),
      },
    },
    ({ params, query }) => notebooks.add(notebookFor(methods, params.name, query.form)),
  )
}

function notebookFor(methods: readonly Method[], name: string, form: number) {
  const method = methods.find((one) => one.name === name)
  const notebook = method === undefined ? undefined : exampleNotebook(method, form)
  if (notebook === undefined) throw new Trouble('METHOD_UNKNOWN', { name, form })
  return notebook
}
