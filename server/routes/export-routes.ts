/** What is taken away of a notebook: the sheet as one file, register and compliance as tables, and the words that all of them carry. */
import { type NotebookId, Provenance } from '../../shared/contracts/index.js'
import { assumptionRows, requirementRows } from '../../shared/rendering/index.js'
import { complianceCsv, exportedNotebook, registerCsv, sheetFile } from '../exports/index.js'
import { type App, NotebookParams, type RouteParts, replies, TextReply } from './parts.js'

export function exportRoutes(app: App, parts: RouteParts): void {
  const { methods } = parts
  const exported = (id: NotebookId) => exportedNotebook(id, parts)

  app.get(
    '/api/notebooks/:id/provenance',
    {
      schema: {
        summary: 'Title, revision and fingerprint that every export carries',
        params: NotebookParams,
        response: replies(Provenance),
      },
    },
    async ({ params }) => (await exported(params.id)).provenance,
  )

  const files: readonly (readonly [
    name: string,
    type: string,
    summary: string,
    make: (id: NotebookId) => Promise<string>,
  ])[] = [
    [
      'sheet.html',
      'text/html; charset=utf-8',
      'The sheet as one file that opens without a network',
      async (id) => sheetFile({ ...(await exported(id)), methods }),
    ],
    [
      'register.csv',
      'text/csv; charset=utf-8',
      'The register of assumptions as a table',
      async (id) => {
        const { view, readers, provenance } = await exported(id)
        return registerCsv(assumptionRows(view, readers), provenance)
      },
    ],
    [
      'compliance.csv',
      'text/csv; charset=utf-8',
      'The requirements as a table',
      async (id) => {
        const { view, provenance } = await exported(id)
        return complianceCsv(requirementRows(view), provenance)
      },
    ],
  ]
  for (const [name, type, summary, make] of files)
    app.get(
      `/api/notebooks/:id/${name}`,
      { schema: { summary, params: NotebookParams, response: replies(TextReply) } },
      async ({ params: { id } }, reply) => {
        const text = await make(id)
        return reply
          .type(type)
          .header('content-disposition', `attachment; filename="${id}-${name}"`)
          .serializer((given) => String(given))
          .send(text)
      },
    )
}
