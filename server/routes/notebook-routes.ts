/** /api/notebooks: list, create, read, rename, title block, copy, bin, restore, download; /api/bin: delete for good. */
import { z } from 'zod'
import {
  ChangeTitleBlock,
  CreateNotebook,
  limits,
  Notebook,
  NotebookList,
  NotebookSummary,
  RenameNotebook,
  TitleBlock,
  writeNotebook,
} from '../../shared/contracts/index.js'
import { type App, NotebookParams, type RouteParts, refusals, replies, TextReply } from './parts.js'

export function notebookRoutes(app: App, { notebooks }: RouteParts): void {
  app.get(
    '/api/notebooks',
    { schema: { summary: 'Notebooks, bin and files that cannot be opened', response: replies(NotebookList) } },
    () => notebooks.list(),
  )

  app.post(
    '/api/notebooks',
    {
      bodyLimit: limits.notebookBytes + 1024,
      schema: {
        summary: 'Begins a notebook by title, or adds a whole one',
        body: CreateNotebook,
        response: replies(NotebookSummary),
      },
    },
    ({ body }) => ('title' in body ? notebooks.begin(body.title) : notebooks.add(body.notebook)),
  )

  app.get(
    '/api/notebooks/:id',
    { schema: { summary: 'The notebook as it stands', params: NotebookParams, response: replies(Notebook) } },
    async ({ params }) => (await notebooks.get(params.id)).notebook,
  )

  app.get(
    '/api/notebooks/:id/file',
    { schema: { summary: 'The notebook file as a download', params: NotebookParams, response: replies(TextReply) } },
    async ({ params }, reply) => {
      const { notebook } = await notebooks.get(params.id)
      reply.type('application/json; charset=utf-8')
      reply.header('content-disposition', `attachment; filename="${params.id}.json"`)
      reply.serializer((text) => String(text))
      return writeNotebook(notebook)
    },
  )

  app.patch(
    '/api/notebooks/:id',
    {
      schema: {
        summary: 'Renames a notebook',
        params: NotebookParams,
        body: RenameNotebook,
        response: replies(NotebookSummary),
      },
    },
    ({ params, body }) => notebooks.rename(params.id, body.title),
  )

  app.patch(
    '/api/notebooks/:id/title-block',
    {
      schema: {
        summary: 'Changes one field of the title block; answers when it is on disk',
        params: NotebookParams,
        body: ChangeTitleBlock,
        response: replies(TitleBlock),
      },
    },
    async ({ params, body }) => (await notebooks.get(params.id)).changeTitleBlock(body),
  )

  app.post(
    '/api/notebooks/:id/copy',
    { schema: { summary: 'Duplicates a notebook', params: NotebookParams, response: replies(NotebookSummary) } },
    ({ params }) => notebooks.copy(params.id),
  )

  app.delete(
    '/api/notebooks/:id',
    {
      schema: {
        summary: 'Moves a notebook to the bin',
        params: NotebookParams,
        response: { 204: z.null(), ...refusals },
      },
    },
    async ({ params }, reply) => {
      await notebooks.bin(params.id)
      return reply.code(204).send(null)
    },
  )

  app.post(
    '/api/notebooks/:id/restore',
    {
      schema: {
        summary: 'Takes a notebook out of the bin',
        params: NotebookParams,
        response: replies(NotebookSummary),
      },
    },
    ({ params }) => notebooks.restore(params.id),
  )

  app.delete(
    '/api/bin/:id',
    {
      schema: {
        summary: 'Deletes for good what is in the bin',
        params: NotebookParams,
        response: { 204: z.null(), ...refusals },
      },
    },
    async ({ params }, reply) => {
      await notebooks.discard(params.id)
      return reply.code(204).send(null)
    },
  )
}
