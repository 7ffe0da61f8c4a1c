/** The catalogue of methods, fetched when it is first asked for. */
import type { Method, MethodCatalogue } from '../../shared/contracts/method.js'

export const catalogueAddress = '/kernel/methods.json'

let loading: Promise<readonly Method[]> | undefined

/** A failed load is tried again at the next call. */
export function loadCatalogue(): Promise<readonly Method[]> {
  loading ??= load().catch((failure: unknown) => {
    loading = undefined
    throw failure
  })
  return loading
}

async function load(): Promise<readonly Method[]> {
  const reply = await fetch(catalogueAddress)
  if (!reply.ok) throw new Error(`the server answered ${reply.status}`)
  return ((await reply.json()) as MethodCatalogue).methods
}
