import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import type { EditingSurface, SurfaceOptions } from '../../../../client/editor/editing-surface.js'
import { plainUntilLoaded } from '../../../../client/editor/plain-until-loaded.js'
import { cellId } from './ids.js'

/** A surface that notes what is done to it. */
class NotedSurface implements EditingSurface {
  readonly options: SurfaceOptions
  readonly done: string[] = []
  place = { line: 1, column: 1 }
  focused = false

  constructor(options: SurfaceOptions) {
    this.options = options
  }

  focus(): void {
    this.focused = true
  }
  hasFocus(): boolean {
    return this.focused
  }
  caret() {
    return this.place
  }
  setFindings(): void {
    this.done.push('findings')
  }
  setDimensions(): void {
    this.done.push('dimensions')
  }
  dispose(): void {
    this.done.push('dispose')
  }
}

function sample() {
  const text = new Y.Doc().getText('cell')
  const container = new EventTarget() as HTMLElement
  const options: SurfaceOptions = {
    container,
    cell: cellId('a'),
    text,
    undo: new Y.UndoManager([text]),
    label: 'Cell 1, sizing',
    onLeave: () => undefined,
    onRefused: () => undefined,
  }
  const plains: NotedSurface[] = []
  const betters: NotedSurface[] = []
  const note = (list: NotedSurface[]) => (given: SurfaceOptions) => {
    const surface = new NotedSurface(given)
    list.push(surface)
    return surface
  }
  return { container, options, plains, betters, plain: note(plains), better: note(betters) }
}

const turns = () => new Promise((resolve) => setTimeout(resolve, 5))

function later() {
  let arrive = () => {}
  let fail = () => {}
  const promise = new Promise<void>((resolve, reject) => {
    arrive = resolve
    fail = () => reject(new Error('no network'))
  })
  return { promise, arrive, fail }
}

describe('plainUntilLoaded', () => {
  it('plainUntilLoaded(...) opens the better surface at once when it is loaded', async () => {
    const { options, plains, betters, plain, better } = sample()
    await plainUntilLoaded(plain, better, () => Promise.resolve())(options)
    expect([plains.length, betters.length]).toEqual([0, 1])
  })

  it('plainUntilLoaded(...) begins with plain text and changes over at the same caret, with findings and focus', async () => {
    const { options, plains, betters, plain, better } = sample()
    const load = later()
    const surface = await plainUntilLoaded(plain, better, () => load.promise)(options)
    surface.focus()
    surface.setFindings([])
    if (plains[0] !== undefined) plains[0].place = { line: 3, column: 7 }
    load.arrive()
    await turns()
    expect(plains[0]?.done).toEqual(['findings', 'dispose'])
    expect(betters[0]?.options).toMatchObject({ caret: { line: 3, column: 7 }, findings: [] })
    expect(betters[0]?.focused).toBe(true)
    surface.dispose()
    expect(betters[0]?.done).toContain('dispose')
  })

  it('plainUntilLoaded(...) keeps the plain text when the code cannot be loaded', async () => {
    const { options, plains, betters, plain, better } = sample()
    const load = later()
    const surface = await plainUntilLoaded(plain, better, () => load.promise)(options)
    load.fail()
    await turns()
    expect(betters).toHaveLength(0)
    expect(plains[0]?.done).toEqual([])
    surface.dispose()
    expect(plains[0]?.done).toEqual(['dispose'])
  })

  it('plainUntilLoaded(...) goes back to plain text when the better surface cannot open', async () => {
    const { options, plains, plain } = sample()
    const broken = () => {
      throw new Error('no canvas')
    }
    await plainUntilLoaded(plain, broken, () => Promise.resolve())(options)
    expect(plains).toHaveLength(1)
    const load = later()
    await plainUntilLoaded(plain, broken, () => load.promise)(options)
    load.arrive()
    await turns()
    expect(plains).toHaveLength(3)
  })

  it('plainUntilLoaded(...) never changes over in the middle of a composed character, nor after dispose()', async () => {
    const { container, options, betters, plain, better } = sample()
    const load = later()
    await plainUntilLoaded(plain, better, () => load.promise)(options)
    container.dispatchEvent(new Event('compositionstart'))
    load.arrive()
    await turns()
    expect(betters).toHaveLength(0)
    container.dispatchEvent(new Event('compositionend'))
    await turns()
    expect(betters).toHaveLength(1)
    const other = sample()
    const loadOther = later()
    const surface = await plainUntilLoaded(other.plain, other.better, () => loadOther.promise)(other.options)
    surface.dispose()
    loadOther.arrive()
    await turns()
    expect(other.betters).toHaveLength(0)
  })
})
