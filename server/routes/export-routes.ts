/** What is taken away of a notebook: the sheet as one file, register and compliance as tables, and the words that all of them carry. */
import { z } from 'zod'
import { type NotebookId, Provenance } from '../../shared/contracts/index.js'
import {
  assumptionRows,
  requirementRows,
  type UnitSystem,
  unitSystems,
  viewInUnits,
} from '../../shared/rendering/index.js'
import { complianceCsv, exportedNotebook, registerCsv, sheetFile } from '../exports/index.js'
import { type App, NotebookParams, type RouteParts, replies, TextReply } from './parts.js'

/** In which units a file shows its values. */
const UnitsWanted = z.strictObject({ units: z.enum(unitSystems).default('as written') })

export function exportRoutes(app: App, parts: RouteParts): void {
  const { methods } = parts
  const exported = async (id: NotebookId, units: UnitSystem = 'as written') => {
    const made = await exportedNotebook(id, parts)
    return { ...made, view: viewInUnits(made.view, units) }
  }

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
    make: (id: NotebookId, units: UnitSystem) => Promise<string>,
  ])[] = [
    [
      'sheet.html',
      'text/html; charset=utf-8',
      'The sheet as one file that opens without a network',
      async (id, units) => sheetFile({ ...(await exported(id, units)), methods }),
    ],
    [
      'register.csv',
      'text/csv; charset=utf-8',
      'The register of assumptions as a table',
      async (id, units) => {
        const { view, readers, provenance } = await exported(id, units)
        return registerCsv(assumptionRows(view, readers), provenance)
      },
    ],
    [
      'compliance.csv',
      'text/csv; charset=utf-8',
      'The requirements as a table',
      async (id, units) => {
        const { view, provenance } = await exported(id, units)
        return complianceCsv(requirementRows(view), provenance)
      },
    ],
  ]
  for (const [name, type, summary, make] of files)
    app.get(
      `/api/notebooks/:id/${name}`,
      { schema: { summary, params: NotebookParams, querystring: UnitsWanted, response: replies(TextReply) } },
      async ({ params: { id }, query: { units } }, reply) => {
        const text = await make(id, units)
        return reply
          .type(type)
          .header('content-disposition', `attachment; filename="${id}-${name}"`)
          .serializer((given) => String(given))
          .send(text)
      },
    )
}
