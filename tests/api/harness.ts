/** An application on the lab's disk, asked by `inject`. */

import type { InjectOptions, LightMyRequestResponse } from 'fastify'
import { evaluatorFrame } from '../../kernel/cells/host-browser/index.js'
import { type Application, type ApplicationOptions, buildApplication } from '../../server/application.js'
import { LabFileSystem, labKernel, labStore, seededChance } from '../lab/index.js'

export const labPort = 4180
export const ownHost = `127.0.0.1:${labPort}`

type Method = NonNullable<InjectOptions['method']>

export interface Asked {
  readonly headers?: Record<string, string>
  readonly payload?: string | object
}

export interface Harness extends Application {
  readonly files: LabFileSystem
  ask(method: Method, url: string, options?: Asked): Promise<LightMyRequestResponse>
}

export async function openHarness(options: Partial<ApplicationOptions> = {}): Promise<Harness> {
  const files = new LabFileSystem(seededChance(1))
  const application = await buildApplication({
    store: await labStore(files),
    kernel: labKernel(),
    clientFolder: '/nowhere/client',
    kernelFolder: '/nowhere/kernel',
    framePage: evaluatorFrame(),
    port: labPort,
    ...options,
  })
  await application.app.ready()
  return {
    ...application,
    files,
    ask: (method, url, { headers, payload } = {}) =>
      application.app.inject({
        method,
        url,
        headers: { host: ownHost, ...headers },
        ...(payload === undefined ? {} : { payload }),
      }),
  }
}
