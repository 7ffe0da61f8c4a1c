/** Every refusal leaves through here: one code, one sentence, as JSON to programs and as a page to people. */
import { randomUUID } from 'node:crypto'
import { hasZodFastifySchemaValidationErrors } from '@fastify/type-provider-zod'
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify'
import { Trouble } from '../shared/contracts/index.js'
import type { Log } from './log.js'
import { type ClientBuild, refusalPage } from './pages/index.js'
import { plainPagePolicy } from './security/index.js'

export function refuse(
  trouble: Trouble,
  request: FastifyRequest,
  reply: FastifyReply,
  build: ClientBuild,
): FastifyReply {
  reply.code(trouble.status)
  const wantsPage = !request.url.startsWith('/api/') && (request.headers.accept ?? '').includes('text/html')
  if (!wantsPage) return reply.type('application/json; charset=utf-8').serializer(JSON.stringify).send(trouble.toBody())
  return reply
    .type('text/html; charset=utf-8')
    .header('content-security-policy', plainPagePolicy)
    .serializer((text) => String(text))
    .send(refusalPage(trouble.message, build))
}

/** The Trouble that an error amounts to. What nobody foresaw is logged with a reference that the sentence repeats. */
export function troubleOf(error: FastifyError, request: FastifyRequest, log: Log): Trouble {
  if (error instanceof Trouble) return error
  if (hasZodFastifySchemaValidationErrors(error))
    return invalid(error.validation.map(({ instancePath, message }) => `${placeOf(instancePath)}${message}`).join('; '))
  if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE' || error.code === 'FST_REQ_FILE_TOO_LARGE')
    return new Trouble('BODY_TOO_LARGE', {
      bytes: Number(request.headers['content-length'] ?? 0),
      limit: request.routeOptions.bodyLimit ?? 0,
    })
  if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE')
    return invalid(`its content type is ${request.headers['content-type'] ?? 'missing'}; application/json is accepted`)
  if (error.statusCode !== undefined && error.statusCode >= 400 && error.statusCode < 500)
    return invalid(error.message.replace(/\.$/, ''))
  const reference = randomUUID().slice(0, 8)
  log.error({ error, reference, path: request.url }, 'a request failed')
  return new Trouble('SERVER_FAULT', { reference })
}

const invalid = (problems: string) => new Trouble('BODY_INVALID', { problems })

function placeOf(path: string): string {
  const place = path.replace(/^\//, '').replaceAll('/', ' ').slice(0, 120)
  return place === '' ? '' : `${place}: `
}
