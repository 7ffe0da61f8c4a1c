/** A comparison in the units of the reader's system, and addresses that keep the choice. */
import type { AssumptionChange, NumberChange, ResultNumber, RevisionComparison } from '../../contracts/index.js'
import { figureInUnits } from '../figure/in-units.js'
import { numberOf, type UnitSystem, unitFor } from '../quantity/index.js'
import { assumptionInUnits, requirementInUnits } from '../sheet/in-units.js'

/** The comparison itself where the system is `as written`. */
export function comparisonInUnits(comparison: RevisionComparison, system: UnitSystem): RevisionComparison {
  if (system === 'as written') return comparison
  const { numbers, assumptions, requirements, figures } = comparison
  return {
    ...comparison,
    numbers: numbers.map((change) => inUnits(change, [change.from, change.to], system)),
    assumptions: assumptions.map((change) => assumptionChangeInUnits(change, system)),
    requirements: requirements.map((change) => ({
      ...change,
      ...eachSide(change, (one) => requirementInUnits(one, system)),
    })),
    figures: figures.map((change) => ({ ...change, ...eachSide(change, (one) => figureInUnits(one, system)) })),
  }
}

/** Something with a name and a unit, by the largest of its values. */
export function inUnits<T extends Pick<NumberChange, 'name' | 'dimension' | 'unit'>>(
  of: T,
  values: readonly (ResultNumber | undefined)[],
  system: UnitSystem,
): T {
  const { name, dimension } = of
  const sizes = values.map((value) => Math.abs(numberOf(value ?? 0))).filter(Number.isFinite)
  const unit = unitFor(system, { unit: of.unit, dimension, name, largest: Math.max(0, ...sizes) })
  return unit === undefined ? of : { ...of, unit }
}

/** Where the author changed the unit, that is what the row is about. */
function assumptionChangeInUnits(change: AssumptionChange, system: UnitSystem): AssumptionChange {
  if (change.differs.includes('unit')) return change
  return { ...change, ...eachSide(change, (one) => assumptionInUnits(one, change.dimension, system)) }
}

interface Sides<Side> {
  readonly from?: Side | undefined
  readonly to?: Side | undefined
}

/** What is on either side, turned; to be put in the place of both. */
function eachSide<Side>({ from, to }: Sides<Side>, turn: (side: Side) => Side): { from?: Side; to?: Side } {
  return { ...(from === undefined ? {} : { from: turn(from) }), ...(to === undefined ? {} : { to: turn(to) }) }
}

/** The address of a page that the server draws, in the units of the reader. */
export function addressInUnits(address: string, system: UnitSystem = 'as written'): string {
  return system === 'as written' ? address : `${address}${address.includes('?') ? '&' : '?'}units=${system}`
}
