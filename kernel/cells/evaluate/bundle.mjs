/**
 * Bundles the inside of the isolation and the kernel into one classic script. Its value, when run, is the function `step`
 * of `protocol.ts`; it defines no global. The kernel's hash is the SHA-256 of this text. Used at build time only.
 */
import { createHash } from 'node:crypto'
import { mkdir, rename, writeFile } from 'node:fs/promises'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild-wasm'

const entry = fileURLToPath(new URL('./sandbox.ts', import.meta.url))

/**
 * @param {{ kernel?: string }} [options] `kernel`: path of another module with an export `preloaded`, for tests
 * @returns {Promise<{ text: string, hash: string }>}
 */
export async function bundleSandboxText(options = {}) {
  const { kernel } = options
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    format: 'iife',
    globalName: 'sandbox',
    target: 'es2023',
    legalComments: 'none',
    minifyWhitespace: true,
    plugins: kernel === undefined ? [] : [otherKernel(kernel)],
    // One expression: an immediately called strict function around the bundle's own variables.
    banner: { js: '(() => {"use strict";' },
    footer: { js: ';return sandbox.step})()' },
    logLevel: 'silent',
  })
  const text = outputFiles[0].text
  return { text, hash: createHash('sha256').update(text).digest('hex') }
}

function otherKernel(path) {
  return {
    name: 'other-kernel',
    setup({ onResolve }) {
      onResolve({ filter: /library\/preloaded\.js$/ }, () => ({ path }))
    },
  }
}

/**
 * Writes the bundle to `outFile`, by way of a temporary file so that nobody reads half of it.
 * @param {string} outFile
 * @returns {Promise<{ hash: string }>}
 */
export async function bundleSandbox(outFile) {
  const { text, hash } = await bundleSandboxText()
  await mkdir(dirname(outFile), { recursive: true })
  const temporary = `${outFile}.${process.pid}.tmp`
  await writeFile(temporary, text)
  await rename(temporary, outFile)
  return { hash }
}
