/**
 * Undo and redo of this person's own edits, over title, cells and title block alike, however many cells they touched. The live document
 * is undone by Yjs, which leaves alone what others did; fields of the title block, which live outside it, take their turn among its steps.
 */
import * as Y from 'yjs'
import type { CellId, TitleBlockField } from '../../shared/contracts/index.js'
import { setInCell } from './cell-operations.js'
import { cellsOf, ownEdit, ownGroundwork, sourceOf, titleOf } from './document.js'

/** Typing without a pause of this length is one step. [ms] */
const oneStep = 600

/** A field of the title block that this person wrote. */
export interface FieldStep {
  readonly field: TitleBlockField
  readonly from: string
  readonly to: string
}

/** A cell that a step shows for the first time, with the text it came with. */
export interface AddedCell {
  readonly id: CellId
  readonly text: string
}

export interface UndoEvents {
  /** A step was taken back (or made again); its name, `null` when there was none. */
  onTaken(way: 'undo' | 'redo', name: string | null): void
  /** A cell stays although its adding was undone: someone else has written in it. */
  onKept(cell: CellId): void
  /** Writes a field of the title block; the sheet says so if it is refused. */
  writeField(step: FieldStep): void
}

const silent: UndoEvents = { onTaken() {}, onKept() {}, writeField() {} }

interface Timed<T> {
  readonly at: number
  readonly step: T
}

export class NotebookUndo extends Y.UndoManager {
  readonly #events: UndoEvents
  #fieldsDone: Timed<FieldStep>[] = []
  #fieldsUndone: Timed<FieldStep>[] = []
  /** Steps of both sorts in the order in which they were made. */
  #clock = 0
  #name = 'typing'
  #added: AddedCell | undefined

  constructor(doc: Y.Doc, events: UndoEvents = silent) {
    super([titleOf(doc), cellsOf(doc)], { trackedOrigins: new Set([ownEdit]), captureTimeout: oneStep })
    this.#events = events
    this.on('stack-item-added', ({ stackItem, type, origin }) => {
      this.#clock += 1
      stackItem.meta.set('at', this.#clock)
      stackItem.meta.set('name', this.#name)
      if (this.#added !== undefined) stackItem.meta.set('added', this.#added)
      if (type === 'undo' && origin !== this) this.#fieldsUndone = []
    })
  }

  /** Does something as one step under a name that completes "Undone: ". `added` names the cell it shows, if any. */
  step<T>(name: string, make: () => T, added?: (made: T) => AddedCell | undefined): T {
    this.stopCapturing()
    this.#name = name
    try {
      const made = make()
      const cell = added?.(made)
      if (cell !== undefined) this.undoStack.at(-1)?.meta.set('added', cell)
      return made
    } finally {
      this.#name = 'typing'
      this.stopCapturing()
    }
  }

  /** A field of the title block was written. */
  wroteField(step: FieldStep): void {
    this.stopCapturing()
    this.clear(false, true)
    this.#fieldsUndone = []
    this.#clock += 1
    this.#fieldsDone.push({ at: this.#clock, step })
    this.emit('stack-cleared', [{ undoStackCleared: false, redoStackCleared: true }])
  }

  override canUndo(): boolean {
    return super.canUndo() || this.#fieldsDone.length > 0
  }

  override canRedo(): boolean {
    return super.canRedo() || this.#fieldsUndone.length > 0
  }

  override undo(): ReturnType<Y.UndoManager['undo']> {
    if (newest(this.#fieldsDone) > timeOf(this.undoStack)) return this.#takeField('undo')
    const item = this.#carryName('undo', () => super.undo())
    const added: AddedCell | undefined = item?.meta.get('added')
    if (added !== undefined) this.#keepForOthers(added)
    return item
  }

  override redo(): ReturnType<Y.UndoManager['redo']> {
    if (newest(this.#fieldsUndone) > timeOf(this.redoStack)) return this.#takeField('redo')
    return this.#carryName('redo', () => super.redo())
  }

  /** The opposite step, which is made meanwhile, bears the same name. */
  #carryName(way: 'undo' | 'redo', take: () => ReturnType<Y.UndoManager['undo']>): ReturnType<Y.UndoManager['undo']> {
    const item = take()
    const opposite = (way === 'undo' ? this.redoStack : this.undoStack).at(-1)
    if (item !== null)
      for (const key of ['name', 'added']) if (item.meta.has(key)) opposite?.meta.set(key, item.meta.get(key))
    this.stopCapturing()
    this.#events.onTaken(way, item === null ? null : String(item.meta.get('name') ?? 'typing'))
    return item
  }

  #takeField(way: 'undo' | 'redo'): null {
    const [from, into] =
      way === 'undo' ? [this.#fieldsDone, this.#fieldsUndone] : [this.#fieldsUndone, this.#fieldsDone]
    const taken = from.pop()
    if (taken === undefined) return null
    const { field, from: before, to: after } = taken.step
    this.#clock += 1
    into.push({ at: this.#clock, step: taken.step })
    this.#events.writeField(way === 'undo' ? { field, from: after, to: before } : taken.step)
    this.#events.onTaken(way, `the field ${field}`)
    this.emit('stack-cleared', [{ undoStackCleared: false, redoStackCleared: false }])
    return null
  }

  /** Undoing an added cell hides it; one in which someone else has written stays. */
  #keepForOthers({ id, text }: AddedCell): void {
    const cell = cellsOf(this.doc).get(id)
    const source = cell instanceof Y.Map ? cell.get('source') : undefined
    if (sourceOf(this.doc, id) !== undefined || !(source instanceof Y.Text) || source.toString() === text) return
    this.doc.transact(() => setInCell(this.doc, id, 'removed', false), ownGroundwork)
    this.#events.onKept(id)
  }
}

const newest = (steps: readonly Timed<unknown>[]) => steps.at(-1)?.at ?? 0
const timeOf = (stack: Y.UndoManager['undoStack']) => Number(stack.at(-1)?.meta.get('at') ?? 0)

export function undoFor(doc: Y.Doc, events?: UndoEvents): NotebookUndo {
  return new NotebookUndo(doc, events)
}
