/** Prose of a rationale cell, or its plain text while what sets prose is still on its way. */
import { element } from '../dom.js'
import { lateParts } from '../late-parts.js'

export function renderProse(document: Document, source: string): DocumentFragment {
  const parts = lateParts()
  if (parts !== undefined) return parts.setProse(document, source)
  const plain = document.createDocumentFragment()
  const paragraphs = source.split(/\n\s*\n/).filter((text) => text.trim() !== '')
  plain.append(...paragraphs.map((text) => element(document, 'p', { class: 'unset' }, text.trim())))
  return plain
}
