/**
 * Nobody waits for the code editor: while its code is on the way the cell is edited as plain text, and the better surface then
 * takes over at the same caret. If it cannot be loaded the plain text stays.
 */
import type { CaretPlace, EditingSurface, OpenSurface, SurfaceOptions } from './editing-surface.js'

/** Milliseconds in which a load that is nearly done (or already was) spares the person the change of surface. */
const worthWaiting = 60

type Plain = (options: SurfaceOptions) => EditingSurface

/** `plain` opens at once; `better` may take its time (`loaded` says when it is ready) and may fail. */
export function plainUntilLoaded(plain: Plain, better: OpenSurface, loaded: () => Promise<unknown>): OpenSurface {
  return async (options) => {
    const loading = loaded()
    const ready = await Promise.race([
      loading.then(
        () => true,
        () => false,
      ),
      new Promise<boolean>((resolve) => setTimeout(() => resolve(false), worthWaiting)),
    ])
    if (!ready) return new ChangingSurface(options, plain, better, loading)
    return tryOpening(better, options).catch(() => plain(options))
  }
}

class ChangingSurface implements EditingSurface {
  readonly #options: SurfaceOptions
  readonly #plain: Plain
  #current: EditingSurface
  #findings: SurfaceOptions['findings']
  #dimensions: SurfaceOptions['dimensions']
  #open = true

  constructor(options: SurfaceOptions, plain: Plain, better: OpenSurface, loading: Promise<unknown>) {
    this.#options = options
    this.#plain = plain
    this.#current = plain(options)
    this.#findings = options.findings
    this.#dimensions = options.dimensions
    const composed = watchComposition(options.container)
    loading
      .then(composed)
      .then(() => this.#change(better))
      // It could not be loaded: the plain text stays, and everything typed is in the document either way.
      .catch(() => undefined)
  }

  async #change(better: OpenSurface): Promise<void> {
    if (!this.#open) return
    const focused = this.#current.hasFocus()
    const caret = this.#current.caret()
    this.#current.dispose()
    const options = {
      ...this.#options,
      ...(this.#findings === undefined ? {} : { findings: this.#findings }),
      ...(this.#dimensions === undefined ? {} : { dimensions: this.#dimensions }),
      caret,
    }
    this.#current = await tryOpening(better, options).catch(() => this.#plain(options))
    if (!this.#open) return this.#current.dispose()
    if (focused) this.#current.focus(caret)
  }

  focus(caret?: CaretPlace): void {
    this.#current.focus(caret)
  }

  hasFocus(): boolean {
    return this.#current.hasFocus()
  }

  caret(): CaretPlace {
    return this.#current.caret()
  }

  setFindings(findings: Parameters<EditingSurface['setFindings']>[0]): void {
    this.#findings = findings
    this.#current.setFindings(findings)
  }

  setDimensions(names: Parameters<EditingSurface['setDimensions']>[0]): void {
    this.#dimensions = names
    this.#current.setDimensions(names)
  }

  dispose(): void {
    this.#open = false
    this.#current.dispose()
  }
}

/** A surface that throws at once fails like one that rejects. */
async function tryOpening(better: OpenSurface, options: SurfaceOptions): Promise<EditingSurface> {
  return better(options)
}

/** Resolves when no character is being composed: a change of surface would lose it. */
function watchComposition(container: HTMLElement): () => Promise<void> {
  let composing = false
  container.addEventListener('compositionstart', () => (composing = true))
  container.addEventListener('compositionend', () => (composing = false))
  return () =>
    composing
      ? new Promise((resolve) =>
          container.addEventListener('compositionend', () => setTimeout(resolve), { once: true }),
        )
      : Promise.resolve()
}
