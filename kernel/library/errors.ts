/**
 * The kernel's registry of errors: what a cell can be told, each with a stable code and its data as fields.
 *
 * A sentence says what came, what would be accepted and, where there is one, the way out. The classes set `name` as a class
 * field: an assignment in the constructor would fail where `Error.prototype` is frozen, as it is where cells run.
 */
import { suggest } from '../../shared/contracts/suggest.js'
import { writeNumber } from './number-text.js'

/** Data of an error as it travels to the cell's result. */
export type ErrorDetails = Readonly<Record<string, number | string | boolean | null>>

/** Every code the kernel can throw, with what it means. */
export const kernelErrors = Object.freeze({
  INVALID_INPUT: 'an argument is impossible, missing, unreadable or unknown',
  DOES_NOT_CLOSE: 'no gross mass satisfies the build-up',
  NO_FOLD: 'no fold lies along the variable asked about',
})
export type KernelErrorCode = keyof typeof kernelErrors

/** What all of the kernel's errors share. */
export abstract class KernelError extends Error {
  abstract readonly code: KernelErrorCode
  /** The error's fields as plain data. */
  abstract readonly details: ErrorDetails
}

export interface InvalidInputData {
  /** The kernel call, as the author wrote it: `rotor.hover`. */
  readonly method: string
  readonly argument: string
  /** What came: a number, or a few words where it is not one. */
  readonly value: number | string
  /** SI unit of the argument, `1` for a pure number. */
  readonly unit?: string
  /** What would be accepted, to complete "it must be ...". */
  readonly accepted: string
  /** A way out, as a sentence. */
  readonly remedy?: string
}

/** An argument that cannot be what is meant: negative area, NaN, a misspelt option. */
export class InvalidInput extends KernelError {
  override readonly name = 'InvalidInput'
  readonly code = 'INVALID_INPUT'
  readonly method: string
  readonly argument: string
  readonly value: number | string
  readonly unit: string
  readonly accepted: string

  constructor(data: InvalidInputData) {
    const unit = data.unit ?? '1'
    const value = typeof data.value === 'number' ? writeNumber(data.value) + unitAfterNumber(unit) : data.value
    const remedy = data.remedy === undefined ? '' : ` ${data.remedy}`
    super(`${data.method}: ${data.argument} is ${value}; it must be ${data.accepted}.${remedy}`)
    this.method = data.method
    this.argument = data.argument
    this.value = data.value
    this.unit = unit
    this.accepted = data.accepted
  }

  get details(): ErrorDetails {
    const { method, argument, value, unit, accepted } = this
    return { method, argument, value, unit, accepted }
  }
}

export interface DoesNotCloseData {
  readonly method: string
  /** Why, as one sentence. */
  readonly reason: string
  /** The item of the build-up that grows fastest with gross mass where the shortfall is least. */
  readonly runsAway: string
  /** Least excess of required over gross mass [kg]. */
  readonly shortfall: number
  /** Gross mass at which the shortfall is least [kg]. */
  readonly atGrossMass: number
  /** The variable along which the fold was sought, its value there in SI, and its unit text. */
  readonly limitName?: string
  readonly limitValue?: number
  readonly limitUnit?: string
  /** Gross mass at the fold [kg]. */
  readonly foldGrossMass?: number
}

/** No gross mass satisfies the build-up. */
export class DoesNotClose extends KernelError {
  override readonly name = 'DoesNotClose'
  readonly code = 'DOES_NOT_CLOSE'
  /** As in the answer of `sizing.close`, whose names the other fields share. */
  readonly closed = false
  readonly reason: string
  readonly runsAway: string
  readonly shortfall: number
  readonly atGrossMass: number
  readonly limitName: string | undefined
  readonly limitValue: number | undefined
  readonly limitUnit: string | undefined
  readonly foldGrossMass: number | undefined

  constructor(data: DoesNotCloseData) {
    super(`${data.method}: ${data.reason}`)
    this.reason = data.reason
    this.runsAway = data.runsAway
    this.shortfall = data.shortfall
    this.atGrossMass = data.atGrossMass
    this.limitName = data.limitName
    this.limitValue = data.limitValue
    this.limitUnit = data.limitUnit
    this.foldGrossMass = data.foldGrossMass
  }

  get details(): ErrorDetails {
    return {
      reason: this.reason,
      runsAway: this.runsAway,
      shortfall: this.shortfall,
      atGrossMass: this.atGrossMass,
      limitName: this.limitName ?? null,
      limitValue: this.limitValue ?? null,
      limitUnit: this.limitUnit ?? null,
      foldGrossMass: this.foldGrossMass ?? null,
    }
  }
}

/** The problem closes, or fails to close, at every value tried: there is no fold to report. */
export class NoFold extends KernelError {
  override readonly name = 'NoFold'
  readonly code = 'NO_FOLD'
  readonly variable: string
  readonly reason: string

  constructor(data: { readonly method: string; readonly variable: string; readonly reason: string }) {
    super(`${data.method}: ${data.reason}`)
    this.variable = data.variable
    this.reason = data.reason
  }

  get details(): ErrorDetails {
    return { variable: this.variable, reason: this.reason }
  }
}

// A cell can reach these classes through an error it catches; frozen, they are the same for the next cell.
for (const type of [KernelError, InvalidInput, DoesNotClose, NoFold]) {
  Object.freeze(type.prototype)
  Object.freeze(type)
}

function unitAfterNumber(unit: string): string {
  return unit === '1' ? '' : ` ${unit}`
}

/** Whatever came, in a few words for a message. */
export function describeValue(value: unknown): number | string {
  if (typeof value === 'number') return value
  if (typeof value === 'string') return `the text "${value.slice(0, 40)}"`
  if (value === undefined) return 'missing'
  if (value === null) return 'null'
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object') return 'a record'
  return `a ${typeof value}`
}

/** Throws InvalidInput for an option the method does not have, with the nearest one that it has. */
export function checkOptions(method: string, options: object, known: ReadonlySet<string>): void {
  if (typeof options !== 'object' || options === null || Array.isArray(options))
    throw new InvalidInput({
      method,
      argument: 'the argument',
      value: describeValue(options),
      accepted: `a record with ${[...known].join(', ')}`,
    })
  for (const key in options) if (!known.has(key)) throw unknownOption(method, key, known)
}

function unknownOption(method: string, key: string, known: ReadonlySet<string>): InvalidInput {
  return new InvalidInput({
    method,
    argument: `option "${key}"`,
    value: `unknown${suggest(key, known)}`,
    accepted: `one of ${[...known].join(', ')}`,
  })
}
