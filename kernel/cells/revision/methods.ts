/** Which names of the kernel the cells use: another method for the same quantity is a choice that a signature covers. */
import { kernelUses } from '../analyse/index.js'
import type { Graph } from '../program/index.js'

/** `rotor.hover`, `sizing.close` ... in alphabetical order, over all cells that can be read. */
export function methodsOf({ cells, owner }: Graph): readonly string[] {
  const used = cells.flatMap(({ code, reads }) =>
    code === undefined
      ? []
      : kernelUses(
          code,
          reads.filter((name) => !owner.has(name)),
        ),
  )
  return [...new Set(used)].sort()
}
