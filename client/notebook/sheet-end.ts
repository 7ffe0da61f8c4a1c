/** Below the last cell: where the next one begins. */
import type { CellKind } from '../../shared/contracts/index.js'

export function makeSheetEnd(document: Document, add: (kind: CellKind) => void): HTMLElement {
  const end = document.createElement('div')
  end.className = 'sheet-end'
  const kinds: readonly (readonly [CellKind, string])[] = [
    ['rationale', 'Add rationale'],
    ['sizing', 'Add sizing'],
  ]
  for (const [kind, label] of kinds) {
    const button = document.createElement('button')
    button.type = 'button'
    button.className = 'small-button'
    button.dataset.add = kind
    button.textContent = label
    button.addEventListener('click', () => add(kind))
    end.append(button)
  }
  return end
}
