/** How many random inputs each property is tried with: 1,000 in `npm test`, what `HOVERFOLIO_RUNS` says at night. */
const asked = process.env.HOVERFOLIO_RUNS ?? '1000'

/** Inputs for a property that is quick. */
export const runs = Number(asked)
if (!Number.isSafeInteger(runs) || runs < 1)
  throw new RangeError(`HOVERFOLIO_RUNS is "${asked}"; give a whole number above 0, for instance 1000.`)

/** Inputs for a slow property, of which `npm test` tries only so many; as many times more at night as of the quick ones. */
export const slowRuns = (inAThousand: number): number => Math.max(1, Math.round((inAThousand * runs) / 1000))

/** As `slowRuns` in `npm test`; at night as many as of the quick ones, for every function takes all of them then. */
export const runsAtNightAll = (inAThousand: number): number => (runs > 1000 ? runs : slowRuns(inAThousand))

/** Added to the seed of every property of any input, so that each night tries other inputs than the last; 0 in `npm test`. */
export const seedOfTheNight = Number(process.env.HOVERFOLIO_SEED ?? '0')
if (!Number.isSafeInteger(seedOfTheNight))
  throw new RangeError(`HOVERFOLIO_SEED is "${process.env.HOVERFOLIO_SEED}"; give a whole number, for instance 0.`)
