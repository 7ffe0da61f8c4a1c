import { requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside, requireChoice } from '../outside.js'
import type { Ratio } from '../quantity.js'

export interface BodyFormFactorOptions {
  /** Length over diameter; of the circle of equal frontal area where the body is not round. */
  readonly fineness: Ratio
  /** `'Raymer'` when left out. */
  readonly method?: BodyFormMethod
}

const caller = 'drag.bodyFormFactor'
const known = new Set(['fineness', 'method'])
const methods = ['Raymer', 'Raymer older', 'Torenbeek', 'Hoerner', 'nacelle'] as const
export type BodyFormMethod = (typeof methods)[number]

/**
 * Form factor of a body, boom, pod or nacelle: drag over that of a flat plate of the same wetted area.
 *
 * @equation Raymer: F = 0.9 + 5/f^1.5 + f/400; Raymer older: 1 + 60/f^3 + f/400; Torenbeek: 1 + 2.2/f^1.5 + 3.8/f^3; Hoerner: 1 +
 * 1.5/f^1.5 + 7/f^3; nacelle: 1 + 0.35/f
 * @param options - `fineness` f = length/diameter; optional `method` ('Raymer')
 * @returns the factor F
 * @throws InvalidInput for a fineness outside 1 to 100, an unknown method, and an unknown option
 * @method Regressions on smooth, streamlined bodies without separation.
 * @validity Fineness 3 to 20; outside an advisory: stubbier bodies separate, and the factors grow apart (at 5 they differ by 25 %).
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, section 12.5, newer form and nacelle read second-hand, older from
 * memory; Torenbeek, E., Synthesis of Subsonic Airplane Design, 1982, and Hoerner, S. F., Fluid-Dynamic Drag, 1965 (both from memory).
 * @example
 * drag.bodyFormFactor({ fineness: 5.5 }) // 1.301388
 */
export function bodyFormFactor(options: BodyFormFactorOptions): Ratio {
  checkOptions(caller, options, known)
  const { fineness, method = 'Raymer' } = options
  requireWithin(caller, 'fineness', fineness, '1', 1, 100)
  requireChoice(caller, 'method', method, methods)
  adviseOutside(fineness, {
    code: 'FORM_FACTOR_FINENESS',
    method: caller,
    quantity: 'fineness',
    low: 3,
    high: 20,
    because: 'form factors hold for streamlined bodies of 3 to 20 diameters length',
  })
  return bodyFactor(fineness, method)
}

/** The formula alone. */
export function bodyFactor(fineness: number, method: BodyFormMethod): number {
  const low = fineness ** 1.5
  const cube = fineness ** 3
  switch (method) {
    case 'Raymer':
      return 0.9 + 5 / low + fineness / 400
    case 'Raymer older':
      return 1 + 60 / cube + fineness / 400
    case 'Torenbeek':
      return 1 + 2.2 / low + 3.8 / cube
    case 'Hoerner':
      return 1 + 1.5 / low + 7 / cube
    case 'nacelle':
      return 1 + 0.35 / fineness
  }
}
