/**
 * Starts one of our module workers by way of a Blob address, so that it works under the page's policy: a worker fetched by its own
 * address gets the policy of that answer, which for files forbids everything.
 */
export function startWorker(address: string): Worker {
  const absolute = new URL(address, location.href).href
  const text = `import ${JSON.stringify(absolute)}`
  return new Worker(URL.createObjectURL(new Blob([text], { type: 'text/javascript' })), { type: 'module' })
}
