/** Which rows of the sheet use which methods. */
import type { CellId } from '../../shared/contracts/index.js'
import { type SheetView, usedMethods } from '../../shared/rendering/page.js'

export interface MethodUse {
  readonly method: string
  readonly rows: readonly { readonly cell: CellId; readonly number: string }[]
}

/** In the order in which the sheet comes to them. */
export function methodUses(view: SheetView): readonly MethodUse[] {
  const own = new Set(view.cells.flatMap(({ result }) => (result?.values ?? []).map(({ name }) => name)))
  const uses = new Map<string, MethodUse['rows'][number][]>()
  for (const { id, number, kind, source } of view.cells) {
    if (kind !== 'sizing') continue
    for (const method of usedMethods(source, (name) => own.has(name))) {
      const rows = uses.get(method) ?? []
      rows.push({ cell: id, number })
      uses.set(method, rows)
    }
  }
  return [...uses].map(([method, rows]) => ({ method, rows }))
}
