/** What hovering over a name says: its dimension in words first, then its type, documentation and owner. */
import { dimensionInWords } from './dimension-words.js'
import { documentationMarkdown, fullMarkdown } from './documentation-markdown.js'
import type { Meaning } from './protocol.js'

/** On the page of words and keys. */
const limitsAddress = '/words#unit-limits'

export interface MeaningFacts {
  /** From the checker: `null` where it does not know, absent for names that no cell declares. */
  readonly dimension?: string | null | undefined
  /** Why it does not know. */
  readonly why?: string | undefined
  /** `cell 3`, absent in the cell that declares the name. */
  readonly declaredIn?: string | undefined
}

export function meaningMarkdown(meaning: Meaning, { dimension, why, declaredIn }: MeaningFacts): string {
  const words = typeof dimension === 'string' ? dimensionInWords(dimension) : undefined
  const owner = declaredIn === undefined ? '' : `Declared in ${declaredIn}; Ctrl and click goes there.`
  const parts =
    words === undefined ? [fullMarkdown(meaning)] : [`**${meaning.name}**: ${words}`, documentationMarkdown(meaning)]
  const open =
    words === undefined && why !== undefined
      ? `The dimension of ${meaning.name} is not known: ${why}. [What the checker cannot know](${limitsAddress})`
      : ''
  return [...parts, open, owner].filter((part) => part !== '').join('\n\n')
}
