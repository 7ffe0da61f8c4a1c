/** Limits besides mass that a closed design must meet, as signed numbers: a solver sees by how much, a reader is told why. */
import { requireFinite, requireRepresentable, requireUnit } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'

/** What a build-up says of one limit. */
export type DeficitAnswer =
  | number
  | {
      /** Asked for less what there is [SI]: positive is lacking. */
      readonly lacking: number
      /** What is asked for [SI]; gives the share that is lacking. */
      readonly of?: number
      /** Unit text for sentences. */
      readonly unit?: string
    }

/** By the name of the limit. */
export type Deficits = Readonly<Record<string, DeficitAnswer>>

export interface Deficit {
  readonly limit: string
  /** [SI], positive is lacking, in the unit of the limit. */
  readonly lacking: number
  /** Of what is asked for; absent where that was not said. */
  readonly share?: number
  readonly unit?: string
}

const known = new Set(['lacking', 'of', 'unit'])

/** What was answered at a gross mass, checked, what lacks most (by share where shares are known) first. */
export function readDeficits(method: string, answer: Deficits, grossMass: number): Deficit[] {
  const at = `deficits at a gross mass of ${writeNumber(grossMass)} kg`
  if (typeof answer !== 'object' || answer === null || Array.isArray(answer))
    throw new InvalidInput({
      method,
      argument: at,
      value: describeValue(answer),
      accepted: 'a record of what is lacking by limit',
    })
  return Object.entries(answer)
    .map(([limit, one]) => readDeficit(method, `"${limit}" of ${at}`, limit, one))
    .sort((a, b) => rank(b) - rank(a))
}

export function lacksAny(deficits: readonly Deficit[]): boolean {
  return deficits.some((one) => one.lacking > 0)
}

function readDeficit(method: string, argument: string, limit: string, answer: DeficitAnswer): Deficit {
  if (typeof answer !== 'object' || answer === null) {
    requireFinite(method, argument, answer, '1')
    return { limit, lacking: answer }
  }
  checkOptions(`${method} ${argument}`, answer, known)
  const { lacking, of, unit } = answer
  requireFinite(method, argument, lacking, '1')
  if (of !== undefined) requireFinite(method, `of in ${argument}`, of, '1')
  if (unit !== undefined) requireUnit(method, `unit in ${argument}`, unit)
  const share = of === undefined || of === 0 ? undefined : lacking / Math.abs(of)
  requireRepresentable(method, share ?? 0)
  return {
    limit,
    lacking,
    ...(share === undefined ? {} : { share }),
    ...(unit === undefined ? {} : { unit }),
  }
}

/** Shares compare with each other; a bare number only by its sign. */
function rank(deficit: Deficit): number {
  return deficit.share ?? Math.sign(deficit.lacking) * 1e-3
}
