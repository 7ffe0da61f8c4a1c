/** `hoverfolio serve`: the notebook server on this machine's own address. */
import { once } from 'node:events'
import { fileURLToPath } from 'node:url'
import { cautionLine } from '../../shared/contracts/index.js'
import { readArguments, type Subcommand, WrongCall } from './subcommand.js'

const defaultPort = 4180

export const serve: Subcommand = {
  name: 'serve',
  usage: 'serve [--port NUMBER] [--data FOLDER]',
  about: 'serves notebooks to browsers on this machine',
  async run(args) {
    const { values } = readArguments({
      args: [...args],
      options: { port: { type: 'string' }, data: { type: 'string' }, host: { type: 'string' } },
    })
    const port = readPort(values.port ?? process.env.HOVERFOLIO_PORT)
    const dataFolder =
      values.data ?? process.env.HOVERFOLIO_DATA ?? fileURLToPath(new URL('../../../data', import.meta.url))
    // Loaded here, so that the other subcommands do not wait for a web server.
    const { serve: startServer } = await import('../serve.js')
    const server = await startServer({ port, dataFolder, host: values.host ?? '127.0.0.1' }).catch((error: unknown) => {
      process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`)
      return undefined
    })
    if (server === undefined) return 1
    process.stdout.write(
      `Hoverfolio is at ${server.address}\nNotebooks are kept in ${dataFolder}\n${cautionLine}\nCautions in full: ${server.address}cautions\n`,
    )
    await Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM')])
    await server.close()
    return 0
  },
}

function readPort(text: string | undefined): number {
  if (text === undefined) return defaultPort
  const port = Number(text)
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new WrongCall(`--port wants a whole number from 0 to 65535; it got "${text}".`)
  return port
}
