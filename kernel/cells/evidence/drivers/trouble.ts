/** What drivers refuses, and the sentence for each: code, what came, what would be accepted. */

const registry = {
  NO_BASE: (d: { target: string; reason: string }) =>
    `"${d.target}" has no value to change from: ${d.reason.replace(/\.$/, '')}. Drivers are asked of a number that computes.`,
} as const

export type DriversCode = keyof typeof registry
type Data<C extends DriversCode> = Parameters<(typeof registry)[C]>[0]

export class DriversTrouble<C extends DriversCode = DriversCode> extends Error {
  override readonly name = 'DriversTrouble'
  readonly code: C
  readonly data: Data<C>

  constructor(code: C, data: Data<C>) {
    super((registry[code] as (data: Data<C>) => string)(data))
    this.code = code
    this.data = data
  }
}
