import { describe, expect, test } from 'vitest'
import { CellId } from '../../../../shared/contracts/index.js'
import { checker, graphOf } from './notebook.js'

const cell = CellId.parse('cell')

/** The cell's text after each repair that is offered, by its title. */
async function mended(source: string): Promise<Readonly<Record<string, string>>> {
  checker.check(await graphOf({ cell: source }))
  const apply = ({ title, start, end, text }: ReturnType<typeof checker.language.repairs>[number]) =>
    [title, source.slice(0, start) + text + source.slice(end)] as const
  return Object.fromEntries(checker.language.repairs(cell).map(apply))
}

describe('repairs(cell) offers what is plain', () => {
  test('a number without a unit is multiplied by one that fits', async () => {
    expect(await mended('const a = air.standard(600)')).toEqual({
      'Multiply by u.m': 'const a = air.standard(600 * u.m)',
      'Multiply by u.km': 'const a = air.standard(600 * u.km)',
      'Multiply by u.cm': 'const a = air.standard(600 * u.cm)',
    })
  })

  test('a pure number in a sum takes the unit of the other side', async () => {
    const offered = await mended('const a = 3 * u.kg + 2')
    expect(offered['Multiply by u.kg']).toBe('const a = 3 * u.kg + 2 * u.kg')
    expect((await mended('const a = 2 < 3 * u.kW'))['Multiply by u.W']).toBe('const a = 2 * u.W < 3 * u.kW')
  })

  test('a unit of another dimension gives way to one that fits', async () => {
    const offered = await mended('const weight: Force = 1700 * u.kg')
    expect(offered['Write u.N in place of u.kg']).toBe('const weight: Force = 1700 * u.N')
    expect(offered['Write u.kN in place of u.kg']).toBe('const weight: Force = 1700 * u.kN')
  })

  test('each mended cell has nothing more to be said about it', async () => {
    for (const source of ['const a = air.standard(600)', 'const a = 3 * u.kg + (2)', 'const w: Force = -5 * u.kg'])
      for (const text of Object.values(await mended(source)))
        expect(checker.check(await graphOf({ cell: text })).findings).toEqual([])
  })

  test('nothing where only the author can know, and nothing in a correct cell', async () => {
    for (const source of [
      'const m = 3 * u.kg\nconst w: Force = m',
      'const a = 3 * u.kg + 2 * u.kg',
      'const a = Math.sin(u.m)',
    ])
      expect(await mended(source)).toEqual({})
  })

  test('nothing for a cell that changed since it was checked', async () => {
    await mended('const a = air.standard(600)')
    checker.language.setCells([{ id: cell, source: 'const a = 1' }])
    expect(checker.language.repairs(cell)).toEqual([])
  })
})
