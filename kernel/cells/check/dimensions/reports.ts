/** Collects findings, each place once, and lets a part of the work be tried without being heard. */
import type ts from 'typescript'
import type { Dimension } from '../../../../shared/contracts/index.js'

export interface Report {
  readonly node: ts.Node
  readonly message: string
  readonly severity: 'error' | 'warning'
  readonly mend?: Mend
}

/** What would have to have another dimension, and which: enough to offer its unit. */
export interface Mend {
  readonly node: ts.Node
  readonly wanted: Dimension
}

export class Reports {
  #sink: Map<ts.Node, Report> = new Map()
  readonly #heard = this.#sink
  #made = 0

  /** Says what is wrong at a node; a node speaks once. */
  add(node: ts.Node, message: string, severity: Report['severity'] = 'error', mend?: Mend): void {
    this.#made += 1
    if (!this.#sink.has(node))
      this.#sink.set(node, { node, message, severity, ...(mend === undefined ? {} : { mend }) })
  }

  /** Runs something and gives what it would have reported, instead of reporting it. */
  aside(work: () => void): readonly Report[] {
    const before = this.#sink
    const own = new Map<ts.Node, Report>()
    this.#sink = own
    try {
      work()
    } finally {
      this.#sink = before
    }
    return [...own.values()]
  }

  /** Runs something whose reports are heard whatever is being tried around it. */
  aloud(work: () => void): void {
    const before = this.#sink
    this.#sink = this.#heard
    try {
      work()
    } finally {
      this.#sink = before
    }
  }

  /** Reports made so far, heard or not: tells whether a piece of work had something to say. */
  get made(): number {
    return this.#made
  }

  /** Whether reports made now are heard in the end. */
  get loud(): boolean {
    return this.#sink === this.#heard
  }

  has(node: ts.Node): boolean {
    return this.#heard.has(node)
  }

  all(): readonly Report[] {
    return [...this.#heard.values()]
  }
}
