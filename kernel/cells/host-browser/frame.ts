/**
 * The page of the evaluator's frame: its address, its policy and its text, for the server to serve as they are.
 *
 * The policy makes the frame a place of its own (`sandbox`: opaque origin, no storage, no cookies, no parent) from which nothing can
 * be fetched or sent. There is no `'self'` anywhere in it, so that not even this server can be asked for a file. The worker inside
 * is made from a Blob and inherits the policy. `'unsafe-eval'` is what the harness compiles cells with; cells cannot reach it.
 */
import { sha256 } from '@noble/hashes/sha2.js'

/**
 * Waits for one message from its parent (the worker's text, a port for the worker, a port of its own), starts the worker and
 * answers the parent's questions whether it is still there. No code of a cell ever runs here.
 */
const frameScript = `"use strict";
addEventListener("message", (event) => {
  if (event.source !== parent) return;
  const [workerPort, framePort] = event.ports;
  const worker = new Worker(URL.createObjectURL(new Blob([event.data], { type: "text/javascript" })));
  worker.onerror = (fault) => { fault.preventDefault(); framePort.postMessage("fault " + fault.message); };
  framePort.onmessage = () => framePort.postMessage("alive");
  worker.postMessage("", [workerPort]);
}, { once: true });
`

export interface FramePage {
  /** Path at which the page must be served. */
  readonly path: string
  readonly html: string
  /** Value of the header `content-security-policy`. */
  readonly policy: string
  readonly headers: Readonly<Record<string, string>>
}

/** The page and the headers to serve it with. */
export function evaluatorFrame(): FramePage {
  const policy = [
    'sandbox allow-scripts',
    "default-src 'none'",
    `script-src 'sha256-${digest(frameScript)}' 'unsafe-eval' blob:`,
    'worker-src blob:',
    "connect-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'self'",
  ].join('; ')
  return {
    path: '/sandbox.html',
    html: `<!doctype html><html lang="en"><meta charset="utf-8"><title>Evaluator</title><script>${frameScript}</script></html>\n`,
    policy,
    headers: {
      'content-type': 'text/html; charset=utf-8',
      'content-security-policy': policy,
      'permissions-policy': 'camera=(), microphone=(), geolocation=()',
      'referrer-policy': 'no-referrer',
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-cache',
    },
  }
}

function digest(text: string): string {
  return btoa(String.fromCharCode(...sha256(new TextEncoder().encode(text))))
}
