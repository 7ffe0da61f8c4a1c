/**
 * Cells as they were drawn last: a page that is drawn after one edit draws one cell anew. What a cell shows of others (their numbers, the
 * names it works with) is asked for while it is drawn, so the questions and their answers are kept with it, and it stands as long as they do.
 */
import { BoundedCache } from '../../kernel/cells/program/index.js'
import type { CellId } from '../../shared/contracts/index.js'
import { type CellView, type KnownName, renderCell, type SheetContext } from '../../shared/rendering/index.js'

/** What the renderer draws in; the types of a browser are not the server's. */
export type NewDocument = () => Parameters<typeof renderCell>[0]

/** Some ten kilobytes each. */
const cellsKept = 2000

interface Drawn {
  readonly view: CellView
  readonly numbers: ReadonlyMap<CellId, string | undefined>
  readonly names: ReadonlyMap<string, KnownName | undefined>
  readonly markup: string
}

export class CellMarkup {
  readonly #drawn = new BoundedCache<string, Drawn>(cellsKept)

  /** The cell of a sheet as HTML; `newDocument` gives what it is drawn in, when it has to be. */
  draw(sheet: string, view: CellView, context: SheetContext, newDocument: NewDocument): string {
    const key = `${sheet} ${view.id}`
    const known = this.#drawn.get(key)
    if (known !== undefined && sameView(known.view, view) && answersStand(known, context)) return known.markup
    const numbers = new Map<CellId, string | undefined>()
    const names = new Map<string, KnownName | undefined>()
    const listening: SheetContext = {
      numberOf: (id) => remember(numbers, id, context.numberOf(id)),
      known: (name) => remember(names, name, context.known(name)),
    }
    const markup = renderCell(newDocument(), view, listening).outerHTML
    this.#drawn.set(key, { view, numbers, names, markup })
    return markup
  }
}

function remember<K, V>(into: Map<K, V>, key: K, answer: V): V {
  into.set(key, answer)
  return answer
}

function answersStand({ numbers, names }: Drawn, context: SheetContext): boolean {
  for (const [id, number] of numbers) if (context.numberOf(id) !== number) return false
  for (const [name, known] of names) if (!sameName(known, context.known(name))) return false
  return true
}

function sameName(before: KnownName | undefined, now: KnownName | undefined): boolean {
  if (before === undefined || now === undefined) return before === now
  return before.state === now.state && before.trial === now.trial && sameData(before.value, now.value)
}

/** Results and formulas of an unchanged text are the same objects; only where they are not, their content is compared. */
function sameView(before: CellView, now: CellView): boolean {
  const { result: resultBefore, formulas: formulasBefore, ...restBefore } = before
  const { result, formulas, ...rest } = now
  return sameData(restBefore, rest) && sameData(resultBefore, result) && sameData(formulasBefore, formulas)
}

function sameData(before: unknown, now: unknown): boolean {
  return before === now || JSON.stringify(before) === JSON.stringify(now)
}
