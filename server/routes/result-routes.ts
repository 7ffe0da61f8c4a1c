/** Results by fingerprint, and types erased on request. */
import {
  EraseReply,
  EraseRequest,
  limits,
  PostResults,
  PostResultsReply,
  StoredResults,
} from '../../shared/contracts/index.js'
import { type App, NotebookParams, type RouteParts, replies } from './parts.js'

/** A notebook's results in one request; single results are bounded by their own limit. */
const resultsBodyBytes = 16 * 1024 * 1024

export function resultRoutes(app: App, { documents, shelf, kernel }: RouteParts): void {
  app.get(
    '/api/notebooks/:id/results',
    {
      schema: {
        summary: 'Stored results that match the live text',
        params: NotebookParams,
        response: replies(StoredResults),
      },
    },
    async ({ params }) => {
      const { current } = await shelf.read(await documents.get(params.id))
      return { results: [...current] }
    },
  )

  app.post(
    '/api/notebooks/:id/results',
    {
      bodyLimit: resultsBodyBytes,
      schema: {
        summary: 'Results computed in a browser; stale ones are named, not stored',
        params: NotebookParams,
        body: PostResults,
        response: replies(PostResultsReply),
      },
    },
    async ({ params, body }) => {
      const document = await documents.get(params.id)
      const { accepted, stale } = await shelf.add(document, body.results)
      document.shareResults(accepted)
      return { accepted: accepted.map((result) => result.cell), stale }
    },
  )

  app.post(
    '/api/erase',
    {
      bodyLimit: limits.notebookBytes,
      schema: { summary: 'TypeScript of cells in, JavaScript out', body: EraseRequest, response: replies(EraseReply) },
    },
    async ({ body }) => ({ erased: [...(await kernel.erase(body.sources))] }),
  )
}
