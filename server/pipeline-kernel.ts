/** The server's use of the cell pipeline: fingerprints of live text, erased types, and a first computation. */
import { analyse } from '../kernel/cells/analyse/index.js'
import { formulasOf } from '../kernel/cells/formulas/index.js'
import { fingerprints } from '../kernel/cells/order/index.js'
import { readersOf, type SizingCell } from '../kernel/cells/program/index.js'
import { methodsOf } from '../kernel/cells/revision/index.js'
import type { CellId, CellResult, Fingerprint } from '../shared/contracts/index.js'
import type { ServerKernel } from './kernel.js'
import type { Toolchain } from './toolchain.js'

/** `compute` is what the toolchain does with all cells of a notebook. */
export function pipelineKernel(
  { kernel, erase }: Pick<Toolchain, 'kernel' | 'erase'>,
  compute: (cells: readonly SizingCell[]) => Promise<readonly CellResult[]>,
): ServerKernel {
  const names = new Set(kernel.names)
  const remembered = new LastAnswers<ReadonlyMap<CellId, Fingerprint>>(50)
  return {
    hash: kernel.hash,
    erase,
    compute,
    fingerprints: (cells) =>
      remembered.get(JSON.stringify(cells.map(({ id, source }) => [id, source])), async () =>
        fingerprints(await analyse(cells, erase, names), kernel.hash),
      ),
    methods: async (cells) => methodsOf(await analyse(cells, erase, names)),
    readers: async (cells) => {
      const graph = await analyse(cells, erase, names)
      return (name) => readersOf(name, graph)
    },
    formulas: async (cells) => formulasOf(await analyse(cells, erase, names)),
  }
}

/** Answers to the latest questions: the same text is asked about by every reader and every posted result. */
class LastAnswers<T> {
  readonly #answers = new Map<string, Promise<T>>()
  readonly #most: number

  constructor(most: number) {
    this.#most = most
  }

  get(question: string, answer: () => Promise<T>): Promise<T> {
    const known = this.#answers.get(question)
    this.#answers.delete(question)
    const given = known ?? answer()
    this.#answers.set(question, given)
    if (known === undefined) given.catch(() => this.#answers.delete(question))
    for (const oldest of this.#answers.keys()) {
      if (this.#answers.size <= this.#most) break
      this.#answers.delete(oldest)
    }
    return given
  }
}
