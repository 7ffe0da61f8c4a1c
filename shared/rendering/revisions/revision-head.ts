/** What stands above the sheet of a revision: which one it is, that it cannot be edited, who signed it, and the ways on. */
import type { RevisionSummary } from '../../contracts/index.js'
import { element } from '../dom.js'
import type { UnitSystem } from '../quantity/index.js'
import { addressInUnits } from './in-units.js'
import { renderSummary } from './summary.js'

export interface RevisionHead {
  readonly notebook: string
  readonly revision: RevisionSummary
  /** Names of all revisions, in the order in which they were issued. */
  readonly names: readonly string[]
  /** Of the reader; links keep them. */
  readonly units?: UnitSystem
}

export function renderRevisionHead(
  document: Document,
  { notebook, revision, names, units }: RevisionHead,
): HTMLElement {
  const here = `/notebooks/${notebook}`
  const before = names[names.indexOf(revision.name) - 1]
  const compareWith = (from: string, to: string) => addressInUnits(`${here}/compare?from=${from}&to=${to}`, units)
  const link = (href: string, words: string) => element(document, 'a', { href }, words)
  return element(
    document,
    'header',
    { class: 'revision-head' },
    element(document, 'p', { class: 'revision-title' }, `Revision ${revision.name}, read-only`),
    element(document, 'p', {}, 'What was frozen when it was issued. Nothing on this sheet changes or can be edited.'),
    renderSummary(document, revision),
    element(document, 'p', { class: 'stated' }, namesAreStated),
    element(
      document,
      'p',
      { class: 'ways' },
      link(here, 'The notebook as it stands'),
      ' ',
      link(compareWith(revision.name, 'live'), 'Compare with the text as it stands'),
      before === undefined ? null : [' ', link(compareWith(before, revision.name), `Compare with revision ${before}`)],
      ' ',
      element(
        document,
        'a',
        { href: `/api/notebooks/${notebook}/revisions/${revision.name}/file`, download: true },
        'Download as JSON',
      ),
    ),
    renderNewNotebookForm(document, notebook, revision.name),
  )
}

export const namesAreStated =
  'Names are stated, not proven: this server asks nobody who they are. A fingerprint shows that nothing was altered, not who signed.'

/** Works without script. */
export function renderNewNotebookForm(document: Document, notebook: string, name: string): HTMLElement {
  return element(
    document,
    'form',
    { method: 'post', action: `/notebooks/${notebook}/revisions/${name}/begin`, enctype: 'multipart/form-data' },
    element(document, 'button', { class: 'small-button' }, 'Begin a new notebook from this revision'),
  )
}
