/** Prose of a rationale cell: CommonMark with tables and TeX, as nodes. */
import { micromark } from 'micromark'
import { gfmTable, gfmTableHtml } from 'micromark-extension-gfm-table'
import { math } from 'micromark-extension-math'
import { mathToHtml } from './math.js'
import { rebuildHtml } from './rebuild.js'

const extensions = [gfmTable(), math()]
const htmlExtensions = [gfmTableHtml(), mathToHtml()]

/** Raw HTML in the source is shown as text; links go to http, https or places of this site; pictures are refused. */
export function setProse(document: Document, source: string): DocumentFragment {
  return rebuildHtml(document, micromark(source, { extensions, htmlExtensions }))
}
