/** Revisions of a notebook: list, issue, read, sign, compare, download, begin anew; and their pages. */
import { z } from 'zod'
import {
  ComparedName,
  IssueRevision,
  NotebookId,
  NotebookSummary,
  RevisionComparison,
  RevisionList,
  RevisionName,
  RevisionReading,
  RevisionSummary,
  SignRevision,
} from '../../shared/contracts/index.js'
import { comparePage } from '../pages/revisions/compare-page.js'
import { revisionPage } from '../pages/revisions/revision-page.js'
import { beginFrom, compareNamed, revisionFile, sidesOf } from '../revisions/index.js'
import { comparePolicy, readingPolicy } from '../security/index.js'
import { type App, NotebookParams, type RouteParts, replies, TextReply } from './parts.js'

const RevisionParams = z.object({ id: NotebookId, name: RevisionName })
const CompareQuery = z.object({ from: ComparedName, to: ComparedName })
/** In which units a page shows its numbers; as they were written where it does not say. */
const UnitsQuery = z.object({ units: z.enum(['SI', 'aviation']).optional() })
/** A page may leave out either side: the latest revision, and the text as it stands. */
const ComparePageQuery = UnitsQuery.extend({
  from: ComparedName.optional(),
  to: ComparedName.optional(),
  pictures: z.literal('1').optional(),
})

/** A hand check and a remark, each at most a page. */
const signatureBytes = 16 * 1024

const asText = (text: unknown) => String(text)

export function revisionRoutes(app: App, parts: RouteParts): void {
  const { revisions, notebooks, kernel, build } = parts

  app.get(
    '/api/notebooks/:id/revisions',
    {
      schema: {
        summary: 'Revisions with their signatures, verified as they are read',
        params: NotebookParams,
        response: replies(RevisionList),
      },
    },
    ({ params }) => revisions.list(params.id),
  )

  app.post(
    '/api/notebooks/:id/revisions',
    {
      schema: {
        summary: 'Issues a revision: freezes the text and its results; answers when it is on disk',
        params: NotebookParams,
        body: IssueRevision,
        response: replies(RevisionSummary),
      },
    },
    ({ params, body }) => revisions.issue(params.id, body),
  )

  app.get(
    '/api/notebooks/:id/revisions/:name',
    { schema: { summary: 'A revision with its content', params: RevisionParams, response: replies(RevisionReading) } },
    ({ params }) => revisions.reading(params.id, params.name),
  )

  app.get(
    '/api/notebooks/:id/revisions/:name/file',
    {
      schema: {
        summary: 'A revision and its signatures as a download',
        params: RevisionParams,
        response: replies(TextReply),
      },
    },
    async ({ params }, reply) => {
      const read = await revisions.read(params.id, params.name)
      reply.type('application/json; charset=utf-8')
      reply.header('content-disposition', `attachment; filename="${params.id}-${params.name}.json"`)
      reply.serializer(asText)
      return revisionFile(read)
    },
  )

  app.post(
    '/api/notebooks/:id/revisions/:name/signatures',
    {
      bodyLimit: signatureBytes,
      schema: {
        summary: 'Signs a revision as prepared, checked or approved, in this order',
        params: RevisionParams,
        body: SignRevision,
        response: replies(RevisionSummary),
      },
    },
    ({ params, body }) => revisions.sign(params.id, params.name, body),
  )

  app.post(
    '/api/notebooks/:id/revisions/:name/notebook',
    {
      schema: {
        summary: 'Begins a new notebook from a revision',
        params: RevisionParams,
        response: replies(NotebookSummary),
      },
    },
    async ({ params }) => notebooks.add(beginFrom(await revisions.read(params.id, params.name))),
  )

  app.get(
    '/api/notebooks/:id/compare',
    {
      schema: {
        summary: 'What differs between two revisions, or a revision and the text as it stands',
        params: NotebookParams,
        querystring: CompareQuery,
        response: replies(RevisionComparison),
      },
    },
    ({ params, query }) => compareNamed(revisions, params.id, query.from, query.to),
  )

  app.get(
    '/notebooks/:id/revisions/:name',
    { schema: { hide: true, params: RevisionParams, querystring: UnitsQuery, response: { 200: TextReply } } },
    async ({ params: { id, name }, query }, reply) => {
      const { units = 'as written' } = query
      const [read, list] = [await revisions.read(id, name), await revisions.list(id)]
      const page = await revisionPage(
        { id, read, names: list.revisions.map((each) => each.name), kernel, units },
        build,
      )
      return reply
        .type('text/html; charset=utf-8')
        .header('content-security-policy', readingPolicy)
        .serializer(asText)
        .send(page)
    },
  )

  app.post(
    '/notebooks/:id/revisions/:name/begin',
    { schema: { hide: true, params: RevisionParams, response: { 303: z.null() } } },
    async ({ params }, reply) => {
      const { id } = await notebooks.add(beginFrom(await revisions.read(params.id, params.name)))
      return reply.redirect(`/notebooks/${id}`, 303)
    },
  )

  app.get(
    '/notebooks/:id/compare',
    { schema: { hide: true, params: NotebookParams, querystring: ComparePageQuery, response: { 200: TextReply } } },
    async ({ params: { id }, query }, reply) => {
      const list = await revisions.list(id)
      const { from = list.revisions.at(-1)?.name ?? 'live', to = 'live', units = 'as written' } = query
      const sides = await sidesOf(revisions, id, from, to)
      const pictures = query.pictures !== undefined
      const page = comparePage({ id, list, from, to, sides, pictures, units, kernelHash: kernel.hash }, build)
      return reply
        .type('text/html; charset=utf-8')
        .header('content-security-policy', comparePolicy)
        .serializer(asText)
        .send(page)
    },
  )
}
