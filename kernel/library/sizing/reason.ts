/** The sentences that say why a design does not close and what would have to give. */
import { writeNumber, writeQuantity } from '../number-text.js'
import type { ItemGrowth } from './build-up.js'
import type { Deficit } from './deficits.js'
import type { Along, Fold } from './fold.js'
import type { SmallestRoot } from './smallest-root.js'

export function explain(
  root: SmallestRoot & { found: false },
  fastest: ItemGrowth,
  alongs: readonly Along[],
  folds: readonly Fold[],
): string {
  return [why(root), growth(fastest), ...alongs.map((along) => limit(along, folds))].join(' ')
}

function why(root: SmallestRoot & { found: false }): string {
  const at = `${writeNumber(root.mass)} kg`
  const short = `${writeNumber(root.excess)} kg`
  switch (root.kind) {
    case 'fold':
      return `no gross mass satisfies the build-up: at ${at}, where it comes nearest, it still asks for ${short} more.`
    case 'light end':
      return root.excess < 0
        ? `no gross mass satisfies the build-up: it asks for less than the gross mass down to ${at}; is a fixed mass missing?`
        : `no gross mass satisfies the build-up: it asks for ${short} more even at ${at} and grows faster than the gross mass.`
    case 'heavy end':
      return `no gross mass up to ${at} satisfies the build-up: it still asks for ${short} more there.`
    case 'jump':
      return `no gross mass satisfies the build-up: near ${at} it jumps by ${short} across the gross mass; make it continuous.`
  }
}

function growth(fastest: ItemGrowth): string {
  const item = fastest.item === 'total' ? 'The total' : `What runs away is ${fastest.item}: it`
  return `${item} grows by ${fastest.growth.toPrecision(3)} kg per kg of gross mass there.`
}

function limit(along: Along, folds: readonly Fold[]): string {
  const fold = folds.find((one) => one.name === along.name)
  const here = writeQuantity(along.value, along.unit)
  if (fold === undefined) return `No ${along.name} near the given ${here} makes it close.`
  const value = writeQuantity(fold.value, fold.unit)
  const asked = `(${here} was asked; gross mass ${writeNumber(fold.grossMass)} kg at the limit)`
  return fold.closes === 'up to'
    ? `It closes up to about ${value} of ${along.name} ${asked}.`
    : `It closes from about ${value} of ${along.name} on ${asked}.`
}

/** What is lacking at a mass at which the masses themselves close. */
export function explainDeficits(grossMass: number, deficits: readonly Deficit[]): string {
  const short = deficits.filter((one) => one.lacking > 0)
  const [first, ...others] = short.map((one) => {
    const share = one.share === undefined ? '' : ` (${writeNumber(100 * one.share)} % short)`
    return `${one.limit} lacks ${writeQuantity(one.lacking, one.unit)}${share}`
  })
  const more = others.length === 0 ? '' : `, and ${others.join(', ')}`
  return `the masses add up at ${writeNumber(grossMass)} kg, but there ${first}${more}.`
}
