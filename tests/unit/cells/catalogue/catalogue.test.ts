/** The method catalogue against the kernel itself: nothing that cells see is missing, and no method comes without its reasons. */
import typescript from 'typescript'
import { describe, expect, it } from 'vitest'
import { exampleCell, gatherMethods, withNames } from '../../../../kernel/cells/catalogue/index.js'
import { preloaded } from '../../../../kernel/library/index.js'
import { methodSubjects } from '../../../../shared/contracts/index.js'
import { declarations } from '../check/notebook.js'

const methods = gatherMethods(typescript, declarations)

function method(name: string) {
  const found = methods.find((one) => one.name === name)
  if (found === undefined) throw new Error(`the catalogue has no ${name}`)
  return found
}

describe('gatherMethods', () => {
  it('has every function that cells see, and no other', () => {
    const names = Object.entries(preloaded).flatMap(([name, member]) => {
      if (typeof member === 'function') return [name]
      return Object.entries(member).flatMap(([inner, value]) =>
        typeof value === 'function' ? [`${name}.${inner}`] : [],
      )
    })
    expect(methods.map((one) => one.name).sort()).toEqual(names.sort())
  })

  it('has no method without summary, equation, method, validity, source and example', () => {
    const parts = ['summary', 'equation', 'method', 'validity', 'source', 'example'] as const
    const offenders = methods.flatMap(({ name, forms }) =>
      forms.flatMap((form) => parts.filter((part) => form[part] === '').map((part) => `${name} lacks its ${part}`)),
    )
    expect(offenders).toEqual([])
  })

  it('knows the unit of what a method takes and gives, from its types', () => {
    const [byMerit, byBlades] = method('rotor.hover').forms
    const options = byMerit?.takes[0]?.fields ?? []
    expect(options.map(({ name, kind, dimension, optional }) => [name, kind, dimension, optional])).toEqual([
      ['thrust', 'force', 'kg m s^-2', false],
      ['diskArea', 'area', 'm^2', false],
      ['density', 'density', 'kg m^-3', false],
      ['figureOfMerit', 'number', '1', false],
      ['interference', 'number', '1', true],
    ])
    expect(byBlades?.gives.fields?.find(({ name }) => name === 'torque')?.dimension).toBe('kg m^2 s^-2')
    expect(method('wing.stallSpeed').forms[0]?.gives).toMatchObject({ kind: 'speed', dimension: 'm s^-1' })
  })

  it('lists the fields of either answer where a method has two, each as it can be read', () => {
    const given = method('sizing.close').forms[0]?.gives.fields ?? []
    const found = (name: string) => given.find((field) => field.name === name)
    expect(found('grossMass')).toMatchObject({ kind: 'mass', dimension: 'kg', optional: true, text: '[kg]' })
    expect(found('reason')).toMatchObject({ optional: true, text: 'Why, as sentences.' })
    expect(found('closed')).toMatchObject({ optional: false })
    expect(new Set(given.map(({ name }) => name)).size).toBe(given.length)
  })

  it('says how many arguments there are where they are not one record', () => {
    expect(method('result').forms[0]?.takes.map(({ name, optional }) => [name, optional])).toEqual([
      ['name', false],
      ['value', false],
      ['options', true],
    ])
  })

  it('refuses declarations that hold no kernel', () => {
    expect(() => gatherMethods(typescript, { files: {}, preloadedPath: '/none.d.ts' })).toThrow(
      '/none.d.ts exports no "preloaded"',
    )
  })
})

describe('methodSubjects', () => {
  it('are the namespaces that cells see', () => {
    const namespaces = Object.entries(preloaded).flatMap(([name, member]) =>
      typeof member === 'function' || name === 'u' ? [] : [name],
    )
    expect([...methodSubjects].sort()).toEqual(namespaces.sort())
  })
})

describe('exampleCell(example)', () => {
  const cellOf = (example: string, taken: readonly string[] = []) => exampleCell(typescript, example, new Set(taken))

  it('gives a name to a line that only asks for a value', () => {
    expect(cellOf('const lift = rotor.hover({})\nlift.diskLoading // 400')).toBe(
      'const lift = rotor.hover({})\nconst liftDiskLoading = lift.diskLoading // 400',
    )
    expect(cellOf("const left = f()\nleft['hover power'] // 1")).toContain("const leftHoverPower = left['hover power']")
    expect(cellOf('const grid = f()\ngrid.ceilings[1].altitude')).toContain('const gridCeilingsAltitude = grid')
    expect(cellOf('limits.massAllowance({ a: 1 }) // 0.3')).toBe(
      'const massAllowance = limits.massAllowance({ a: 1 }) // 0.3',
    )
  })

  it('takes no name twice, and none of the kernel', () => {
    expect(cellOf('f.mass()\nf.mass()', ['mass'])).toBe('const mass2 = f.mass()\nconst mass3 = f.mass()')
    expect(cellOf('1 + 1')).toBe('const answer = 1 + 1')
  })
})

describe('withNames(cell, ending)', () => {
  it('renames what the cell declares wherever it stands, and nothing else', () => {
    const cell = "const a = 1\nconst { b } = f({ a, c: a, b: 2 })\nconst d = x.a + b\nconst e = assumption('e', a)"
    expect(withNames(typescript, cell, '_7').source).toBe(
      "const a_7 = 1\nconst { b: b_7 } = f({ a: a_7, c: a_7, b: 2 })\nconst d_7 = x.a + b_7\nconst e_7 = assumption('e_7', a_7)",
    )
  })
})
