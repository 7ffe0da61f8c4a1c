/**
 * The one way in which case files are checked. Each subject gives its cases, the methods that answer them and the misses it knows; each
 * gets two tables in the output, external and re-evaluated: case, source, expected, computed, error.
 */
import { afterAll, describe, expect, it } from 'vitest'
import { type Case, type Kind, kindOf, storedDigits } from './cases.js'

/** What the kernel computes for the cases whose id a pattern matches; the first match counts. */
export type Methods = readonly (readonly [pattern: RegExp, compute: (inputs: Case['inputs']) => number])[]

/** Computed over published, less one, where that is beyond the case's tolerance; and why. */
export type KnownMisses = Readonly<Record<string, { readonly error: number; readonly why: string }>>

export interface CaseCheck {
  readonly subject: string
  readonly cases: readonly Case[]
  readonly methods: Methods
  readonly knownMisses?: KnownMisses
}

const headings: Readonly<Record<Kind, string>> = {
  external: 'external: measurements and numbers printed by somebody else',
  're-evaluated': 're-evaluated: published formulas worked out again',
}

/** Declares the tests of a subject. A known miss that is no longer one, or that has moved by 2 %, fails. */
export function checkCases(check: CaseCheck): void {
  for (const kind of ['external', 're-evaluated'] as const) {
    const chosen = check.cases.filter((one) => kindOf(one) === kind)
    if (chosen.length === 0) continue
    describe(`${check.subject}, ${headings[kind]}`, () => {
      const rows: string[] = []
      it.each(chosen)('$id ($provenance): $quantity, $source', (one) => {
        const actual = computeCase(one, check.methods)
        rows.push(row(one, actual, check.knownMisses?.[one.id] !== undefined))
        expectWithin(one, actual, check.knownMisses?.[one.id])
      })
      afterAll(() => print(`${check.subject}, ${headings[kind]} (${chosen.length})`, rows))
    })
  }
}

/** What the kernel computes for a case. */
export function computeCase(one: Case, methods: Methods): number {
  const method = methods.find(([pattern]) => pattern.test(one.id))
  if (method === undefined) throw new Error(`no kernel method answers the case ${one.id}`)
  return method[1](one.inputs)
}

function expectWithin(one: Case, actual: number, miss: KnownMisses[string] | undefined): void {
  const error = actual / one.expected - 1
  const allowed = one.tolerance_rel + storedDigits
  const said = `${actual} for ${one.expected}, off by ${error.toExponential(2)}`
  if (miss === undefined) {
    expect(Math.abs(error), said).toBeLessThanOrEqual(allowed)
    return
  }
  expect(Math.abs(error), `${said}: no longer a miss`).toBeGreaterThan(allowed)
  const change = Math.abs(error / miss.error - 1)
  expect(change, `${said}: a known miss of ${miss.error} (${miss.why})`).toBeLessThan(0.02)
}

function row(one: Case, actual: number, missed: boolean): string {
  const error = `${((actual / one.expected - 1) * 100).toFixed(3)} %${missed ? ' KNOWN MISS' : ''}`
  const source = one.source.length > 48 ? `${one.source.slice(0, 47)}…` : one.source
  const cells = [
    one.id.padEnd(30),
    source.padEnd(48),
    one.expected.toPrecision(6).padStart(12),
    actual.toPrecision(6).padStart(12),
  ]
  return `  ${cells.join(' ')} ${error}`
}

function print(title: string, rows: readonly string[]): void {
  const head = `  ${'case'.padEnd(30)} ${'source'.padEnd(48)} ${'expected'.padStart(12)} ${'computed'.padStart(12)} error`
  process.stdout.write(`\n${title}\n${head}\n${rows.join('\n')}\n`)
}
