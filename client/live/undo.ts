/** Undo and redo of this person's own edits, over title and cells alike, however many cells they touched. */
import * as Y from 'yjs'
import { cellsOf, ownEdit, titleOf } from './document.js'

/** Typing without a pause of this length is one step. [ms] */
const oneStep = 600

export function undoFor(doc: Y.Doc): Y.UndoManager {
  return new Y.UndoManager([titleOf(doc), cellsOf(doc)], {
    trackedOrigins: new Set([ownEdit]),
    captureTimeout: oneStep,
  })
}
