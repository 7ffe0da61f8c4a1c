/** The propeller and what drives it. */
import { requirePositive, requireShare } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Force, Power, Ratio } from '../quantity.js'

export interface CruiseSystemOptions {
  /** Thrust power over shaft power in wing-borne flight. */
  readonly propellerEfficiency: Ratio
  /** From the battery to the shaft. */
  readonly efficiency: Ratio
  /** Rating at the shaft [W]; no limit when left out. */
  readonly powerLimit?: Power | undefined
  /** Thrust at rest with the rating [N]; no limit of thrust when left out. */
  readonly staticThrust?: Force | undefined
}

export type CruiseSystem = CruiseSystemOptions

const known = new Set(['propellerEfficiency', 'efficiency', 'powerLimit', 'staticThrust'])

export function readCruiseSystem(method: string, options: CruiseSystemOptions): CruiseSystem {
  checkOptions(`${method} cruise`, options, known)
  requireShare(method, 'cruise.propellerEfficiency', options.propellerEfficiency)
  requireShare(method, 'cruise.efficiency', options.efficiency)
  if (options.powerLimit !== undefined) requirePositive(method, 'cruise.powerLimit', options.powerLimit, 'W')
  if (options.staticThrust !== undefined) requirePositive(method, 'cruise.staticThrust', options.staticThrust, 'N')
  const { propellerEfficiency, efficiency, powerLimit, staticThrust } = options
  return { propellerEfficiency, efficiency, powerLimit, staticThrust }
}
