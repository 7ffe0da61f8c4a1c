/**
 * What the editor asks about the cells, and what comes back: plain data both ways, because the answers are worked out in the
 * worker that checks the cells. Offsets count UTF-16 units of one cell's source.
 */
import type { CellId } from '../../../shared/contracts/index.js'

/** A sizing cell as it stands at the moment of asking. */
export interface CellText {
  readonly id: CellId
  readonly source: string
}

/** A place in a cell. */
export interface At {
  readonly cell: CellId
  readonly offset: number
}

export interface Span {
  readonly start: number
  readonly end: number
}

/** What is known about a name, from its doc comment; `tags` in the order written. */
export interface Documentation {
  /** The name with its type: `rotor.hover(options: HoverByMeritOptions): Hover`. */
  readonly display: string
  readonly text: string
  readonly tags: readonly { readonly tag: string; readonly text: string }[]
}

export interface Proposal {
  readonly name: string
  readonly what: 'value' | 'function' | 'property' | 'type' | 'keyword' | 'text'
  /** 0 comes first: members and names of cells, then the kernel's, the language's, key words. */
  readonly rank: number
}

export interface SignatureHelp {
  readonly signatures: readonly {
    readonly label: string
    /** Where each parameter stands in the label. */
    readonly parameters: readonly { readonly label: readonly [start: number, end: number] }[]
    readonly documentation: Documentation
  }[]
  readonly activeSignature: number
  readonly activeParameter: number
}

export interface Meaning extends Documentation {
  readonly span: Span
  readonly name: string
  /** The cell that declares it at its top level; absent for the kernel's names and for names inside functions. */
  readonly declaredIn?: CellId
  /** Of a name that stands inside a function: its dimension in base units, and why it is not known. */
  readonly dimension?: string
  readonly why?: string
}

export interface DeclarationPlace {
  readonly cell: CellId
  readonly line: number
  readonly column: number
}

export interface CellEdit {
  readonly cell: CellId
  readonly at: number
  readonly removed: number
  readonly inserted: string
}

/** The name under the caret and where it stands, or a sentence why it cannot be renamed. */
export type RenameTarget =
  | { readonly ok: true; readonly name: string; readonly span: Span }
  | { readonly ok: false; readonly message: string }

export type Renaming =
  | { readonly ok: true; readonly edits: readonly CellEdit[] }
  | { readonly ok: false; readonly message: string }

/** A name declared at the top level of a cell; `end` is the offset just after it. */
export interface DeclaredName {
  readonly name: string
  readonly end: number
}

/** A mend of a wrong unit: `title` says what is written in place of the stretch. */
export interface UnitRepair extends Span {
  readonly marked: Span
  readonly title: string
  readonly text: string
}

/** Every question with its answer. `null`: nothing to say there. */
export interface LanguageQuestions {
  proposals: { question: At; answer: readonly Proposal[] }
  proposal: { question: At & { readonly name: string }; answer: Documentation | null }
  signature: { question: At; answer: SignatureHelp | null }
  meaning: { question: At; answer: Meaning | null }
  declaration: { question: At; answer: DeclarationPlace | null }
  renameTarget: { question: At; answer: RenameTarget }
  renaming: { question: At & { readonly newName: string }; answer: Renaming }
  repairs: { question: { readonly cell: CellId }; answer: readonly UnitRepair[] }
  declaredNames: { question: { readonly cell: CellId }; answer: readonly DeclaredName[] }
}

export type LanguageAsk = keyof LanguageQuestions
export type LanguageAnswer = LanguageQuestions[LanguageAsk]['answer']

/** One question as it travels: always with all cells as they are now, so that no answer is about an older text. */
export type LanguageCall = {
  [K in LanguageAsk]: {
    readonly ask: K
    readonly question: LanguageQuestions[K]['question']
    readonly cells: readonly CellText[]
  }
}[LanguageAsk]

/** Asks the worker. Rejects only when there is no worker to answer. */
export type AskLanguage = <K extends LanguageAsk>(
  ask: K,
  question: LanguageQuestions[K]['question'],
) => Promise<LanguageQuestions[K]['answer']>
