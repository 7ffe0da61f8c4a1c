/** Pages, and the forms of the list page. Forms answer with a redirect to what they made. */
import { z } from 'zod'
import { limits, type NotebookId, RenameNotebook } from '../../shared/contracts/index.js'
import { provenanceOf } from '../exports/index.js'
import { CellMarkup, cautionsPage, listPage, notebookPage, PageCache, plainStyle, wordsPage } from '../pages/index.js'
import { sizingCells } from '../results/index.js'
import { plainPagePolicy, sheetPolicy } from '../security/index.js'
import { type App, NotebookParams, type RouteParts, TextReply } from './parts.js'

/** Notebooks that come with the program and can be had anew, by the end of their form's address. */
const freshCopies = { starter: 'starter', worked: 'worked-sizing' } as const

const asText = (text: unknown) => String(text)
const SeeOther = { 303: z.null() }

export function pageRoutes(app: App, parts: RouteParts): void {
  const { notebooks, shelf, revisions, build, kernel } = parts
  const pages = new PageCache()
  const cells = new CellMarkup()

  app.get('/', { schema: { hide: true, response: { 200: TextReply } } }, async (_request, reply) => {
    const list = await notebooks.list()
    const page = listPage(list, await notebooks.guideFor(list), build)
    return reply
      .type('text/html; charset=utf-8')
      .header('content-security-policy', plainPagePolicy)
      .serializer(asText)
      .send(page)
  })

  for (const [address, page] of [
    ['/cautions', cautionsPage(build)],
    ['/words', wordsPage(build)],
  ] as const)
    app.get(address, { schema: { hide: true, response: { 200: TextReply } } }, async (_request, reply) =>
      reply
        .type('text/html; charset=utf-8')
        .header('content-security-policy', plainPagePolicy)
        .serializer(asText)
        .send(page),
    )

  app.get(
    '/notebooks/:id',
    { schema: { hide: true, params: NotebookParams, response: { 200: TextReply } } },
    async ({ params: { id } }, reply) => {
      const document = await notebooks.get(id)
      const shelved = await shelf.read(document)
      const { content, notebook } = document
      const formulas = (await kernel.formulas?.(sizingCells(document))) ?? new Map()
      const revision = await revisions.mark(id)
      const frozen = await revisions.live(id)
      const page = pages.get(content, shelved, revision, () => {
        const provenance = provenanceOf(frozen, notebook.titleBlock, revision)
        return notebookPage(
          { id, notebook, shelved, kernelHash: kernel.hash, formulas, revision, provenance },
          build,
          cells,
        )
      })
      return reply
        .type('text/html; charset=utf-8')
        .header('content-security-policy', sheetPolicy)
        .serializer(asText)
        .send(page)
    },
  )

  app.get('/style/pages.css', { schema: { hide: true, response: { 200: TextReply } } }, async (_request, reply) =>
    reply.type('text/css; charset=utf-8').header('cache-control', 'max-age=300').serializer(asText).send(plainStyle),
  )

  app.post(
    '/notebooks',
    { schema: { hide: true, body: RenameNotebook, response: SeeOther } },
    async ({ body }, reply) => {
      const { id } = await notebooks.begin(body.title)
      return reply.redirect(`/notebooks/${id}`, 303)
    },
  )

  app.post(
    '/notebooks/import',
    {
      bodyLimit: limits.notebookBytes + 64 * 1024,
      schema: {
        hide: true,
        body: z.strictObject({ file: z.instanceof(Buffer, { error: 'choose a file' }) }),
        response: SeeOther,
      },
    },
    async ({ body }, reply) => {
      const { id } = await notebooks.addFile(body.file)
      return reply.redirect(`/notebooks/${id}`, 303)
    },
  )

  for (const [address, name] of Object.entries(freshCopies))
    app.post(`/notebooks/${address}`, { schema: { hide: true, response: SeeOther } }, async (_request, reply) => {
      const { id } = await notebooks.addShipped(name)
      return reply.redirect(`/notebooks/${id}`, 303)
    })

  const listForms: Readonly<Record<string, (id: NotebookId) => Promise<unknown>>> = {
    copy: (id) => notebooks.copy(id),
    bin: (id) => notebooks.bin(id),
    restore: (id) => notebooks.restore(id),
    discard: (id) => notebooks.discard(id),
  }
  for (const [name, act] of Object.entries(listForms))
    app.post(
      `/notebooks/:id/${name}`,
      { schema: { hide: true, params: NotebookParams, response: SeeOther } },
      async ({ params }, reply) => {
        await act(params.id)
        return reply.redirect('/', 303)
      },
    )
}
