/** The frame in which cells run in the browser: an opaque origin whose policy allows code and nothing else. */
import type { SandboxPage } from './routes/index.js'

export const sandboxPage: SandboxPage = {
  html: '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Cells</title></head><body></body></html>\n',
  policy:
    "sandbox allow-scripts; default-src 'none'; script-src 'self' 'unsafe-eval' blob:; worker-src blob:; connect-src 'none'; frame-ancestors 'self'; base-uri 'none'; form-action 'none'",
}
