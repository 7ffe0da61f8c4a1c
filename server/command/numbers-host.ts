/** Isolates for numbers alone, had for one call of the command. */
import { readFile } from 'node:fs/promises'
import { createNodeNumbersHost } from '../../kernel/cells/host-node/index.js'
import type { NumbersHost } from '../../kernel/cells/program/index.js'
import { kernelFolder } from '../toolchain.js'

/** Closes them whatever comes of it. */
export async function withNumbersHost<T>(use: (host: NumbersHost) => Promise<T>): Promise<T> {
  const host = createNodeNumbersHost({ sandboxText: await readFile(`${kernelFolder}sandbox.js`, 'utf8') })
  try {
    return await use(host)
  } finally {
    await host.close()
  }
}
