/** What trace, drivers and spread refuse, and the sentence for each: code, what came, what would be accepted. */

const registry = {
  NO_BASE: (d: { target: string; reason: string }) =>
    `"${d.target}" has no value to change from: ${d.reason.replace(/\.$/, '')}. Drivers are asked of a number that computes.`,
  NO_TRACE: (d: { target: string; reason: string }) =>
    `"${d.target}" has no value to trace: ${d.reason.replace(/\.$/, '')}. A trace is asked of a number that computes.`,
  CORRELATION_UNKNOWN: (d: { name: string; other: string; known: string }) =>
    `"${d.name}" is said to be correlated with "${d.other}", which is no assumption of this notebook. Those with a distribution: ${d.known}.`,
  CORRELATION_OF_HELD: (d: { name: string; other: string }) =>
    `"${d.name}" is said to be correlated with "${d.other}", but "${d.other}" has no distribution. Give both a distribution, or leave the correlation out.`,
  CORRELATION_TWICE: (d: { name: string; other: string; first: number; second: number }) =>
    `The correlation of "${d.name}" and "${d.other}" is stated twice, as ${d.first} and as ${d.second}. State it once, or the same both times.`,
  CORRELATIONS_CONTRADICT: (d: { pairs: string; share: number }) =>
    `These rank correlations cannot hold together: ${d.pairs}. Change one of them; all of them times ${d.share} could hold.`,
  TOO_MANY_UNCERTAIN: (d: { count: number; most: number }) =>
    `${d.count} assumptions have a distribution; at most ${d.most} are sampled together. Leave those that move nothing without one.`,
  SAMPLES_INVALID: (d: { value: string; most: number }) =>
    `The number of samples is ${d.value}; give a whole number from 16 to ${d.most}.`,
  SEED_INVALID: (d: { value: string }) => `The seed is ${d.value}; give a whole number from 0 to 4294967295.`,
} as const

export type EvidenceCode = keyof typeof registry
type Data<C extends EvidenceCode> = Parameters<(typeof registry)[C]>[0]

export class EvidenceTrouble<C extends EvidenceCode = EvidenceCode> extends Error {
  override readonly name = 'EvidenceTrouble'
  readonly code: C
  readonly data: Data<C>

  constructor(code: C, data: Data<C>) {
    super((registry[code] as (data: Data<C>) => string)(data))
    this.code = code
    this.data = data
  }
}
