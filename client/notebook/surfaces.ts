/** Which editing surface a cell opens in, by its kind: this is the one place to change when another surface takes over. */

import type { CellKind } from '../../shared/contracts/index.js'
import type { OpenSurface } from '../editor/editing-surface.js'
import { openTextArea } from '../sheet/text-area.js'

export function surfaceFor(kind: CellKind): OpenSurface {
  const manner = kind === 'rationale' ? 'prose' : 'code'
  return (options) => openTextArea({ ...options, manner })
}
