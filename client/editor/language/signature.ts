/** The call around the caret: which arguments it takes, and which one is being written. */
import type ts from 'typescript'
import type { CellLanguage } from '../../../kernel/cells/check/index.js'
import { tagsOf, textOf } from './documentation.js'
import type { At, SignatureHelp } from './protocol.js'

export function signatureAt(cells: CellLanguage, { cell, offset }: At): SignatureHelp | null {
  const help = cells.service.getSignatureHelpItems(cells.fileOf(cell), offset, undefined)
  if (help === undefined) return null
  return {
    signatures: help.items.map(signatureOf),
    activeSignature: help.selectedItemIndex,
    activeParameter: help.argumentIndex,
  }
}

function signatureOf(item: ts.SignatureHelpItem): SignatureHelp['signatures'][number] {
  let label = textOf(item.prefixDisplayParts)
  const parameters = item.parameters.map((parameter, index) => {
    if (index > 0) label += textOf(item.separatorDisplayParts)
    const start = label.length
    label += textOf(parameter.displayParts)
    return { label: [start, label.length] as const }
  })
  label += textOf(item.suffixDisplayParts)
  return {
    label,
    parameters,
    documentation: { display: '', text: textOf(item.documentation), tags: tagsOf(item.tags) },
  }
}
