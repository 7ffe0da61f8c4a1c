/** A server in a process of its own, so that a test can kill it: `node served-process.js DATA_FOLDER`. Computes with the lab's kernel. */
import { serve } from '../../server/serve.js'
import { labKernel } from './kernel.js'

const server = await serve({
  port: 0,
  dataFolder: process.argv[2] ?? '',
  openKernel: async () => ({ kernel: labKernel({ computes: true }), close: async () => undefined }),
})
process.stdout.write(`${server.address}\n`)
process.on('SIGTERM', () => void server.close().then(() => process.exit(0)))
