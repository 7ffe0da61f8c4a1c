/** Cell ids for tests. */
import { CellId } from '../../../../shared/contracts/index.js'

export const cellId = (id: string) => CellId.parse(id)
