/** What the exports of a notebook carry: the fingerprint is the one that a revision issued now would have. */
import { contentFingerprint } from '../../kernel/cells/revision/index.js'
import {
  type Provenance,
  type RevisionContent,
  type RevisionMark,
  revisionWords,
  type TitleBlock,
} from '../../shared/contracts/index.js'

/** `mark` is of the latest revision; absent from a notebook that has none. */
export function provenanceOf(
  content: RevisionContent,
  titleBlock: TitleBlock | undefined,
  mark: RevisionMark | undefined,
): Provenance {
  const fingerprint = contentFingerprint(content)
  return { title: content.text.title, revision: revisionWords(titleBlock, mark, fingerprint), fingerprint }
}
