/**
 * Keeps a plain text control and a shared text the same, in both directions, by smallest differences: another person's typing
 * never moves this person's caret off its word, and never is overwritten. DOM-free: the control is an interface.
 */
import type * as Y from 'yjs'
import { rewrite } from '../live/document.js'
import { applyDifference, differenceOf, mapOffset } from '../live/text-difference.js'

export interface TextControl {
  value: string
  readonly selectionStart: number
  readonly selectionEnd: number
  setSelectionRange(start: number, end: number): void
}

export class TextSynchronizer {
  readonly #control: TextControl
  readonly #text: Y.Text
  readonly #onShown: () => void
  /** What the control showed when both sides last agreed. */
  #shown: string
  #held = false
  readonly #observer = () => this.#takeRemote()

  constructor(control: TextControl, text: Y.Text, onShown: () => void) {
    this.#control = control
    this.#text = text
    this.#onShown = onShown
    this.#shown = text.toString()
    control.value = this.#shown
    text.observe(this.#observer)
  }

  /** The person changed the control. */
  takeOwn(): void {
    const value = this.#control.value
    const own = differenceOf(this.#shown, value, this.#control.selectionEnd)
    if (own === null) return
    const now = this.#text.toString()
    const remote = differenceOf(this.#shown, now)
    this.#shown = value
    if (remote === null) {
      rewrite(this.#text, value, this.#control.selectionEnd)
      return
    }
    // Changes of others are held back while a character is being composed: mine is moved to where it belongs among them.
    const at = mapOffset(own.at, remote)
    const end = mapOffset(own.at + own.removed, remote)
    rewrite(this.#text, applyDifference(now, { at, removed: Math.max(0, end - at), inserted: own.inserted }))
  }

  /** Puts the control back to the shared text, for a change that is not taken. */
  revert(): void {
    this.#show(this.#text.toString())
  }

  /** While held, changes of others are not shown: the browser is composing a character. */
  hold(held: boolean): void {
    this.#held = held
    if (!held) this.#takeRemote()
  }

  close(): void {
    this.#text.unobserve(this.#observer)
  }

  #takeRemote(): void {
    const now = this.#text.toString()
    if (this.#held || now === this.#control.value) {
      if (!this.#held) this.#shown = now
      return
    }
    this.#show(now)
  }

  #show(now: string): void {
    const difference = differenceOf(this.#control.value, now)
    if (difference === null) return
    const start = mapOffset(this.#control.selectionStart, difference)
    const end = mapOffset(this.#control.selectionEnd, difference)
    this.#control.value = now
    this.#control.setSelectionRange(start, end)
    this.#shown = now
    this.#onShown()
  }
}
