/** Types are erased by whoever is ready: the server until the local compiler has started, and the local one from then on. */
import type { Eraser } from '../../kernel/cells/program/index.js'

/**
 * `local` starts loading at the first call of `start`; until it is ready `remote` answers. When the remote fails (no network)
 * the call waits for the local one instead.
 */
export function lateEraser(remote: Eraser, local: () => Promise<Eraser>): { readonly erase: Eraser; start(): void } {
  let ready: Eraser | undefined
  let loading: Promise<Eraser> | undefined
  const start = (): Promise<Eraser> => {
    loading ??= local().then((eraser) => {
      ready = eraser
      return eraser
    })
    loading.catch(() => {
      loading = undefined
    })
    return loading
  }
  return {
    erase: async (sources) => {
      if (ready !== undefined) return ready(sources)
      try {
        return await remote(sources)
      } catch (refusal) {
        const eraser = await start().catch(() => undefined)
        if (eraser === undefined) throw refusal
        return eraser(sources)
      }
    },
    start: () => {
      start().catch(() => undefined)
    },
  }
}
