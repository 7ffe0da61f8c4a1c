/** One table row per refusal: what is wrong, and the options that carry it. */
import { expect, it } from 'vitest'
import { InvalidInput } from '../../../../kernel/library/index.js'

export function itRefuses<O extends object>(
  call: (options: O) => unknown,
  sound: O,
  wrongs: readonly (readonly [string, object])[],
): void {
  it.each(wrongs)('refuses %s', (_, wrong) => {
    expect(() => call({ ...sound, ...wrong })).toThrow(InvalidInput)
  })

  it('refuses an unknown option by name', () => {
    expect(() => call({ ...sound, unheardOf: 1 })).toThrow(/unheardOf/)
  })
}
