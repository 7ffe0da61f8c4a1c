/** Messages write `cell "ID"`; people know a cell by its number. */
import type { CellId } from '../../../shared/contracts/index.js'

export function withNumbers(message: string, numberOf: (cell: CellId) => string | undefined): string {
  return message.replace(/cell "([A-Za-z0-9_-]{1,64})"/g, (whole, id: string) => {
    const number = numberOf(id as CellId)
    return number === undefined ? whole : `cell ${number}`
  })
}
