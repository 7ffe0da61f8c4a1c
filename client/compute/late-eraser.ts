/**
 * Types are erased by whoever is ready: the server until the local compiler has started, and the local one from then on. A source
 * that brings the local compiler down is judged by the server, whose compiler is guarded, and the next one finds a new local compiler.
 * Starting the local one takes seconds of a processor, so the page as it was opened is left to the server: who only reads never
 * starts it, and the first edit does.
 */
import type { Eraser } from '../../kernel/cells/program/index.js'

/** `local` starts a compiler, first at the call of `start` or at the second of `erase`, an edit; when `remote` fails (no network) a call waits for the local one instead. */
export function lateEraser(remote: Eraser, local: () => Promise<Eraser>): { readonly erase: Eraser; start(): void } {
  let ready: Eraser | undefined
  let loading: Promise<Eraser> | undefined
  let opened = false
  const start = (): Promise<Eraser> => {
    loading ??= local().then((eraser) => {
      ready = eraser
      return eraser
    })
    loading.catch(forget)
    return loading
  }
  const forget = () => {
    ready = undefined
    loading = undefined
  }
  const eraseHere = (eraser: Eraser, sources: readonly string[]) =>
    eraser(sources).catch((failure: unknown) => {
      forget()
      throw failure
    })
  const eraseThere = async (sources: readonly string[]) => {
    try {
      return await remote(sources)
    } catch (refusal) {
      const eraser = await start().catch(() => undefined)
      if (eraser === undefined) throw refusal
      return eraseHere(eraser, sources)
    }
  }
  return {
    erase: async (sources) => {
      if (opened) start().catch(() => undefined)
      opened = true
      if (ready === undefined) return eraseThere(sources)
      return eraseHere(ready, sources).catch(() => {
        start().catch(() => undefined)
        return remote(sources)
      })
    },
    start: () => {
      start().catch(() => undefined)
    },
  }
}
