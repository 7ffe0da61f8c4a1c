import { describe, expect, it } from 'vitest'
import { type AssumptionChange, editAssumption } from '../../../../kernel/cells/edit/index.js'

function edited(source: string, name: string, change: AssumptionChange): string {
  const edit = editAssumption(source, name, change)
  if (!edit.ok) throw new Error(edit.message)
  return edit.source
}

function refusal(source: string, name: string, change: AssumptionChange): { message: string; line: number } {
  const edit = editAssumption(source, name, change)
  if (edit.ok) throw new Error(`it was edited: ${edit.source}`)
  return { message: edit.message, line: edit.line }
}

const watthour = 3600

describe('editAssumption() of a value', () => {
  it.each([
    ['1637', 2, '2'],
    ['-3', 5, '5'],
    ['4', -5, '-5'],
    ['1e-3', 0.002, '0.002'],
    ['1_000', 2.5e21, '2.5e21'],
    ['235 * u.Wh / u.kg', 240 * watthour, '240 * u.Wh / u.kg'],
    ['u.km * 40', 85_000, 'u.km * 85'],
    ['(400 * u.kg)', 450, '(450 * u.kg)'],
    ['0.2 / u.s ** 2', 0.3, '0.3 / u.s ** 2'],
    ['4 * (u.kN / u.m) * u.s', 5000, '5 * (u.kN / u.m) * u.s'],
    ['-(3 * u.K)', 4, '-(-4 * u.K)'],
    ['-5 * u.K', -7.25, '-7.25 * u.K'],
    ['20 * u.min', 25 * 60, '25 * u.min'],
    ['0', 0.1 + 0.2, '0.3'],
    ['9 * u.mohm', 0.0101, '10.1 * u.mohm'],
    // Arithmetic of numbers alone belongs to nobody else: it is replaced as a whole.
    ['1 / 3', 0.5, '0.5'],
    ['2 * 5 * u.kW', 12_000, '12000'],
    ['+3', 4, '4'],
  ])('editAssumption() makes of %s with %s in SI: %s', (written, value, wanted) => {
    expect(edited(`const x = assumption('x', ${written})`, 'x', { value })).toBe(`const x = assumption('x', ${wanted})`)
  })

  it('editAssumption() leaves types, comments, layout and other statements as they are', () => {
    const source = `// const mass = assumption('mass', 1)
/* assumption('mass', 2) */ const note = "assumption('mass', 3)" + \`\${[1].length} assumption('mass', 4)\`
const shape = /assumption\\('mass', 5/
const mass: Mass = assumption<Mass>(
  'mass', // its name
  400 /* as weighed */ * u.kg, // four hundred
  {
    range: [300 * u.kg, 500 * u.kg], // thought possible
  },
), other = assumption("other", 2)`
    expect(edited(source, 'mass', { value: 450 })).toBe(source.replace('400 /*', '450 /*'))
    expect(edited(source, 'other', { value: 3 })).toBe(source.replace('"other", 2', '"other", 3'))
    expect(edited(source, 'mass', { range: [310, 500], owner: 'masses' })).toBe(
      source.replace(
        '[300 * u.kg, 500 * u.kg], // thought possible',
        "[310 * u.kg, 500 * u.kg],\n    owner: 'masses', // thought possible",
      ),
    )
  })

  it.each([
    ["const x = assumption('x', 2 * y)", { value: 3 }, /the value of "x" is worked out from y/],
    ["const x = assumption('x', defaultMass)", { value: 3 }, /worked out from defaultMass/],
    ["const x = assumption('x', u[kind] * 3)", { value: 3 }, /worked out from u, kind/],
    ["const x = assumption('x', 3, { range: [low, 4] })", { range: [1, 4] }, /the range of "x" is worked out from low/],
    ["const x = assumption('x', 3, { source })", { source: 'a' }, /the source of "x" is worked out from source/],
    ["const x = assumption('x', 3, { note: String(3) })", { note: 'a' }, /the note of "x" is worked out from String/],
    ["const x = assumption('x', 3, common)", { note: 'a' }, /the note of "x" is kept outside the statement/],
    ["const x = assumption('x')", { value: 3 }, /the value of "x" is not written out/],
    ["const x = assumption('x', 3 as Mass)", { value: 3 }, /statement of "x" cannot be read here/],
    ["const y = assumption('y', 3", { value: 3 }, /statement of "x" cannot be read here/],
  ] as const)('editAssumption() refuses in a sentence: %s', (statement, change, message) => {
    expect(refusal(`\n\n${statement}`, 'x', change)).toMatchObject({
      message: expect.stringMatching(message),
      line: /x/.test(statement) ? 3 : 1,
    })
  })
})

describe('editAssumption() of options', () => {
  it.each([
    ["assumption('x', 2)", { source: 'a letter' }, "assumption('x', 2, { source: 'a letter' })"],
    ["assumption('x', 2,)", { source: "it's" }, "assumption('x', 2, { source: 'it\\'s' },)"],
    ["assumption('x', (2))", { note: 'n' }, "assumption('x', (2), { note: 'n' })"],
    ["assumption('x', 2, {})", { unit: 'kg', note: 'n' }, "assumption('x', 2, { unit: 'kg', note: 'n' })"],
    ["assumption('x', 2, { unit: 'kg' })", { unit: 't' }, "assumption('x', 2, { unit: 't' })"],
    ['assumption("x", 2, { note: "b" })', { note: 'say "so"' }, 'assumption("x", 2, { note: "say \\"so\\"" })'],
    ["assumption('x', 2, { note: `b` })", { note: 'c' }, "assumption('x', 2, { note: 'c' })"],
    ["assumption('x', 2, { note: 'b' + 'c' })", { note: 'd\ne' }, "assumption('x', 2, { note: 'd\\ne' })"],
    ["assumption('x', 2, { 'note': 'b', unit: 'kg' })", { note: null }, "assumption('x', 2, { unit: 'kg' })"],
    ["assumption('x', 2, { unit: 'kg', note: 'b' })", { note: '' }, "assumption('x', 2, { unit: 'kg' })"],
    ["assumption('x', 2, { unit: 'kg', note: 'b', })", { note: null }, "assumption('x', 2, { unit: 'kg', })"],
    ["assumption('x', 2, { unit: 'kg' })", { note: null }, "assumption('x', 2, { unit: 'kg' })"],
    [
      "assumption('x', 2, {\n  unit: 'kg', // of it\n  note: 'b', // why\n  owner: 'c',\n})",
      { note: null },
      "assumption('x', 2, {\n  unit: 'kg', // of it // why\n  owner: 'c',\n})",
    ],
    [
      "assumption('x', 2, {\n  unit: 'kg'\n})",
      { owner: 'o', note: 'n' },
      "assumption('x', 2, {\n  unit: 'kg',\n  owner: 'o',\n  note: 'n'\n})",
    ],
    [
      "assumption('x', 235 * u.Wh / u.kg)",
      { range: [200 * watthour, 265 * watthour] },
      "assumption('x', 235 * u.Wh / u.kg, { range: [200 * u.Wh / u.kg, 265 * u.Wh / u.kg] })",
    ],
    [
      "assumption('x', 2 * y, { unit: 'm/s^2' })",
      { range: [1, 2.5] },
      "assumption('x', 2 * y, { unit: 'm/s^2', range: [1 * u.m / u.s ** 2, 2.5 * u.m / u.s ** 2] })",
    ],
    [
      "assumption('x', 2 * y, { unit: '%' })",
      { range: [0.1, 0.2] },
      "assumption('x', 2 * y, { unit: '%', range: [0.1, 0.2] })",
    ],
    ["assumption('x', 2, { range: [1, 3] })", { range: null, note: 'n' }, "assumption('x', 2, { note: 'n' })"],
    [
      "assumption('x', 20 * u.min)",
      { distribution: { normal: 120 } },
      "assumption('x', 20 * u.min, { distribution: { normal: 2 * u.min } })",
    ],
    [
      "assumption('x', 5 * u.km, { distribution: { lognormal: 1.2 } })",
      { distribution: { lognormal: 1.3 } },
      "assumption('x', 5 * u.km, { distribution: { lognormal: 1.3 } })",
    ],
    [
      "assumption('x', 5 * u.km, { distribution: { uniform: [4 * u.km, 6000] } })",
      { distribution: { uniform: [3000, 7000] } },
      "assumption('x', 5 * u.km, { distribution: { uniform: [3 * u.km, 7000] } })",
    ],
    [
      "assumption('x', 5 * u.km, { distribution: { normal: 100 } })",
      { distribution: { triangular: [3000, 7000] } },
      "assumption('x', 5 * u.km, { distribution: { triangular: [3 * u.km, 7 * u.km] } })",
    ],
    ["assumption('x', 5, { distribution: { normal: 1 } })", { distribution: null }, "assumption('x', 5, { })"],
    ["assumption('x', 5)", { distribution: null }, "assumption('x', 5)"],
  ] as const)('editAssumption() makes of %s with %j: %s', (call, change, wanted) => {
    expect(edited(`const x = ${call}`, 'x', change)).toBe(`const x = ${wanted}`)
  })
})
