/** Drivers of a number: runs the engine on each assumption that can reach it. DOM-free. */
import { runDrivers } from '../../kernel/cells/evidence/index.js'
import type { Drivers } from '../../shared/contracts/index.js'
import { askable } from './askable.js'
import type { Asking } from './asking.js'
import { assumptionsOf, trialsOf } from './edition.js'
import { NumberWork } from './number-work.js'

export type DriversSources = Pick<Asking, 'view' | 'open' | 'say' | 'now'>

export class DriversWork extends NumberWork<Drivers> {
  readonly #sources: DriversSources

  constructor(sources: DriversSources, onChange: (what: 'found' | 'state') => void) {
    super(sources, 'Varying', onChange)
    this.#sources = sources
  }

  /** Varies each assumption that can reach the number. */
  async vary(target: string): Promise<void> {
    const view = this.#sources.view()
    await this.ask(target, async ({ signal, onProgress }, learn) => {
      const cell = askable(view, target)?.cell
      if (cell === undefined) throw new Error(`"${target}" is no number of this sheet any more.`)
      // The number alone: what its requirements need besides is not evaluated, and may fail without harm.
      const wanted = { names: [{ name: target, cell }], requirements: [] }
      const evaluator = await this.#sources.open(wanted, { signal })
      const assumptions = assumptionsOf(view).filter(({ name }) => evaluator.assumptions.includes(name))
      const base = trialsOf(assumptions)
      const onDrivers = (drivers: Drivers) => learn(drivers, Object.keys(base).length > 0)
      const tools = { evaluateMany: evaluator.evaluateMany, signal, onProgress, onDrivers }
      onDrivers(await runDrivers({ target, assumptions, base }, tools))
    })
  }
}
