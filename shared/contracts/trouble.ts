/**
 * The registry of everything the server can refuse with: code, HTTP status, and the sentence built from the data.
 * `errors.md` beside this file lists the same codes; a test keeps both equal. A sentence says what came, what would be accepted
 * and, where there is one, the way out.
 */
import { z } from 'zod'

const registry = {
  NOTEBOOK_UNKNOWN: {
    status: 404,
    message: (d: { id: string }) => `There is no notebook "${d.id}"; the list page shows those there are.`,
  },
  NOTEBOOK_REFUSED: { status: 422, message: (d: { reason: string }) => d.reason },
  NOTEBOOK_EXISTS: {
    status: 409,
    message: (d: { id: string }) =>
      `A notebook with the id "${d.id}" exists already; choose another title or rename that one.`,
  },
  TITLE_BLOCK_CHANGED: {
    status: 409,
    message: (d: { field: string; now: string }) =>
      d.now === ''
        ? `"${d.field}" was cleared by someone else meanwhile; look at it and write it again.`
        : `"${d.field}" was changed to "${d.now}" by someone else meanwhile; look at it and write it again.`,
  },
  BODY_INVALID: { status: 400, message: (d: { problems: string }) => `The request was not understood: ${d.problems}.` },
  BODY_TOO_LARGE: {
    status: 413,
    message: (d: { bytes: number; limit: number }) =>
      `The request has ${d.bytes} bytes; at most ${d.limit} are accepted.`,
  },
  ADDRESS_UNKNOWN: {
    status: 404,
    message: (d: { method: string; path: string }) => `There is nothing at ${d.method} ${d.path}.`,
  },
  HOST_REFUSED: {
    status: 403,
    message: (d: { host: string }) =>
      `The host name "${d.host}" is not this server's own; open it by the address printed at start.`,
  },
  ORIGIN_REFUSED: {
    status: 403,
    message: (d: { origin: string }) =>
      `A page from "${d.origin}" may not talk to this server; open the notebook at the server's own address.`,
  },
  TOO_MANY_REQUESTS: {
    status: 429,
    message: (d: { seconds: number }) => `Too many requests; try again in ${d.seconds} s.`,
  },
  UPDATE_REFUSED: { status: 400, message: (d: { reason: string }) => `The edit was not taken: ${d.reason}.` },
  RESULT_STALE: {
    status: 409,
    message: (d: { cell: string }) =>
      `The result for cell "${d.cell}" belongs to another text of it; compute again and send the new one.`,
  },
  REVISION_UNKNOWN: {
    status: 404,
    message: (d: { name: string; known: string }) =>
      d.known === ''
        ? `There is no revision "${d.name}"; none has been issued yet.`
        : `There is no revision "${d.name}"; there are ${d.known}.`,
  },
  REVISION_UNSETTLED: {
    status: 409,
    message: (d: { cells: string }) =>
      `Not every cell has current values: ${d.cells}. Compute them first, or issue the revision with them; it then lists them.`,
  },
  REVISION_ALTERED: {
    status: 409,
    message: (d: { name: string; reason: string }) =>
      `Revision ${d.name} cannot be relied on: ${d.reason} It can be read, but not signed; issue a new one.`,
  },
  SIGNATURE_REFUSED: { status: 409, message: (d: { reason: string }) => `The signature was not taken: ${d.reason}` },
  METHOD_UNKNOWN: {
    status: 404,
    message: (d: { name: string; form: number }) =>
      `The kernel has no method "${d.name}" with a form ${d.form + 1}; the page of methods shows those there are.`,
  },
  STORE_UNAVAILABLE: {
    status: 503,
    message: (d: { reason: string }) =>
      `The data folder cannot be written (${d.reason}); the edit is kept in the page until it can.`,
  },
  SERVER_FAULT: {
    status: 500,
    message: (d: { reference: string }) =>
      `The server failed on its own account (reference ${d.reference}); nothing acknowledged is lost. Try again.`,
  },
} as const

export type TroubleCode = keyof typeof registry
export const troubleCodes = Object.keys(registry) as readonly TroubleCode[]
type TroubleData<C extends TroubleCode> = Parameters<(typeof registry)[C]['message']>[0]

/** What the wire carries for a refusal. */
export const TroubleBody = z.strictObject({
  code: z.enum(troubleCodes as [TroubleCode, ...TroubleCode[]]),
  message: z.string(),
})
export type TroubleBody = z.infer<typeof TroubleBody>

/** A refusal with its code and data; the server's error handler turns it into status and body. */
export class Trouble<C extends TroubleCode = TroubleCode> extends Error {
  override readonly name = 'Trouble'
  readonly code: C
  readonly data: TroubleData<C>
  readonly status: number

  constructor(code: C, data: TroubleData<C>) {
    const entry = registry[code]
    super((entry.message as (data: TroubleData<C>) => string)(data))
    this.code = code
    this.data = data
    this.status = entry.status
  }

  toBody(): TroubleBody {
    return { code: this.code, message: this.message }
  }
}
