/** Content policies, one place. A page runs our scripts and nothing else; cells run in a frame that may do nothing but run. */

const join = (directives: Readonly<Record<string, string>>) =>
  Object.entries(directives)
    .map(([name, value]) => `${name} ${value}`.trim())
    .join('; ')

const nothing = { 'default-src': "'none'", 'base-uri': "'none'", 'frame-ancestors': "'none'" }

/**
 * The sheet. `wasm-unsafe-eval` compiles esbuild; inline styles are what the code editor and the figures need; workers from
 * Blob addresses are the editor's.
 */
const sheetDirectives = {
  ...nothing,
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self' 'unsafe-inline'",
  'font-src': "'self' data:",
  'img-src': "'self' data: blob:",
  'connect-src': "'self'",
  'worker-src': "'self' blob:",
  'frame-src': "'self'",
  'form-action': "'none'",
}

export const sheetPolicy = join(sheetDirectives)

/** A comparison: it computes like the sheet, and has a form that leads to another. */
export const comparePolicy = join({ ...sheetDirectives, 'form-action': "'self'" })

/** A revision to read: no script at all, inline styles of the figures, and a form that posts to this server. */
export const readingPolicy = join({
  ...nothing,
  'style-src': "'self' 'unsafe-inline'",
  'font-src': "'self' data:",
  'img-src': "'self' data: blob:",
  'form-action': "'self'",
})

/** List, cautions and refusals: readable without any script; their forms post to this server. */
export const plainPagePolicy = join({
  ...nothing,
  'script-src': "'self'",
  'style-src': "'self'",
  'font-src': "'self' data:",
  'img-src': "'self' data:",
  'connect-src': "'self'",
  'form-action': "'self'",
})

/**
 * Built files of the client. A worker lives under the policy of its own file: ours compile esbuild and fetch its wasm, the kernel's
 * declarations and each other's chunks, all from this server.
 */
export const assetPolicy = join({
  ...nothing,
  'script-src': "'self' 'wasm-unsafe-eval'",
  'connect-src': "'self'",
})

/** Whatever is not a page. */
export const dataPolicy = join({ ...nothing, sandbox: '' })

export const commonHeaders: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  // Not `no-referrer`: under it a browser says `Origin: null` for forms that work without script, and they would be refused as foreign.
  'referrer-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), midi=()',
  'x-frame-options': 'DENY',
}
