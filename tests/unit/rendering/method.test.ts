import { describe, expect, it } from 'vitest'
import type { Method } from '../../../shared/contracts/index.js'
import { findMethods, renderEquation, renderMethod, usedMethods } from '../../../shared/rendering/index.js'
import { newDocument, plainText } from './support.js'

const document = newDocument()

/** The mathematics of an equation as markup, without the parts that only space it. */
function mathOf(equation: string): string {
  return [...renderEquation(document, equation).querySelectorAll('math')]
    .map((math) => math.innerHTML)
    .join('')
    .replace(/ (?:class|mathvariant|form|stretchy|lspace|rspace|fence)="[^"]*"/g, '')
    .replace(/<mspace[^>]*>(?:<\/mspace>)?/g, '')
    .replace(/<\/?mrow>/g, '')
}

function words(equation: string): string[] {
  return [
    ...renderEquation(document, equation).querySelectorAll('.equation-text, .equation-label, .equation-units'),
  ].map((part) => part.textContent ?? '')
}

function method(name: string, summary: string, more: Partial<Method['forms'][number]> = {}): Method {
  const form: Method['forms'][number] = {
    summary,
    equation: 'P = T v',
    takes: [],
    arguments: [],
    gives: { name: '', kind: 'power', dimension: 'kg m^2 s^-3', optional: false, text: '' },
    throws: [],
    method: 'Momentum theory.',
    validity: 'Any thrust.',
    source: 'Leishman, 2006.',
    example: { source: '', cell: 'const a = 1', values: [], advisories: [] },
    ...more,
  }
  return { name, subject: name.split('.')[0] ?? '', forms: [form] }
}

describe('renderEquation(equation)', () => {
  it('sets a quotient as a fraction whose line stands for the brackets', () => {
    expect(mathOf('v_i = sqrt(T/(2 rho A))')).toBe(
      '<msub><mi>v</mi><mi>i</mi></msub><mo>=</mo><msqrt><mfrac><mi>T</mi><mn>2</mn><mi>ρ</mi><mi>A</mi></mfrac></msqrt>',
    )
  })

  it('lets a quotient take all that stands before it in its product, and no more', () => {
    expect(mathOf('P = a + 2 b/c d')).toBe(
      '<mi>P</mi><mo>=</mo><mi>a</mi><mo>+</mo><mfrac><mn>2</mn><mi>b</mi><mi>c</mi></mfrac><mi>d</mi>',
    )
  })

  it('tells what a quantity depends on from a product by the space between', () => {
    expect(mathOf('P(t)/a')).toContain('<mfrac><mi>P</mi><mo>(</mo><mi>t</mi><mo>)</mo><mi>a</mi></mfrac>')
    expect(mathOf('q = P (t + 1)/a')).toContain('<mi>P</mi><mo>(</mo><mi>t</mi><mo>+</mo>')
  })

  it('lets a sum run over all that follows it', () => {
    expect(mathOf('x = sum m x/sum m')).toBe(
      '<mi>x</mi><mo>=</mo><mfrac><mi>Σ</mi><mi>m</mi><mi>x</mi><mi>Σ</mi><mi>m</mi></mfrac>',
    )
  })

  it('reads differentials, powers of ten, subscripts with commas and primes', () => {
    expect(mathOf('C dT/dt = H')).toContain('<mfrac><mi>d</mi><mi>T</mi><mi>d</mi><mi>t</mi></mfrac>')
    expect(mathOf('mu = 1.458e-6 T')).toContain('<msup><mn>10</mn><mn>−6</mn></msup>')
    expect(mathOf("C_m,alpha = h'")).toBe(
      '<msub><mi>C</mi><mi>m, α</mi></msub><mo>=</mo><msup><mi>h</mi><mi>′</mi></msup>',
    )
  })

  it('leaves sentences as they are and sets what lies between their words', () => {
    expect(words('as `rotor.hover`')).toEqual(['as rotor.hover'])
    expect(words('low speed: P = T v at equal thrust')).toEqual(['low speed: ', ' at equal thrust'])
    expect(words('W = 0.05 M^0.5 [lb, ft]')).toEqual([' in lb, ft'])
    expect(words('share = drag area of the part / sum of drag areas')).toHaveLength(1)
  })

  it('leads from a method in words to its place in the catalogue', () => {
    const link = renderEquation(document, 'as `rotor.hover`').querySelector('a')
    expect(link?.getAttribute('href')).toBe('/methods#rotor.hover')
  })

  it('takes any text and shows it as text', () => {
    for (const hostile of [
      '<img src=x onerror=alert(1)>',
      '((((',
      'a/',
      '^',
      '|',
      '= = =',
      ';;;',
      '\u202edecoy',
      'x'.repeat(5000),
    ])
      expect(renderEquation(document, hostile).querySelector('img')).toBeNull()
  })
})

describe('renderMethod(method)', () => {
  it('shows the call with the unit of each number, and what may be left out', () => {
    const thrust = { name: 'thrust', kind: 'force', dimension: 'kg m s^-2', optional: false, text: '' }
    const takes = [
      {
        name: 'options',
        kind: 'options',
        dimension: null,
        optional: false,
        text: '',
        fields: [thrust, { ...thrust, name: 'count', kind: 'number', dimension: '1', optional: true }],
      },
    ]
    const drawn = renderMethod(document, method('rotor.hover', 'Power to hover.', { takes }))
    expect(plainText(drawn.querySelector('.method-call'))).toBe('rotor.hover({ thrust [N], count? })')
    expect(drawn.querySelector('form')).toBeNull()
  })

  it('has a form to try each example where there is an address for it', () => {
    const drawn = renderMethod(document, method('rotor.hover', 'Power to hover.'), { tryAt: '/methods/notebooks' })
    const fields = [...drawn.querySelectorAll('form input')].map((input) => [
      input.getAttribute('name'),
      input.getAttribute('value'),
    ])
    expect(fields).toEqual([
      ['method', 'rotor.hover'],
      ['form', '0'],
    ])
  })
})

describe('findMethods(methods, words)', () => {
  const methods = [
    method('wing.downwash', 'Angle behind a wing that hovers nowhere.'),
    method('rotor.hover', 'Power of rotors.', {
      gives: {
        name: '',
        kind: 'hover',
        dimension: null,
        optional: false,
        text: '',
        fields: [{ name: 'diskLoading', kind: 'disk loading', dimension: 'kg m^-1 s^-2', optional: false, text: '' }],
      },
    }),
  ]

  it('finds by name, summary, source and quantity, all words together', () => {
    const found = (sought: string) => findMethods(methods, sought).map(({ name }) => name)
    expect(found('disk loading')).toEqual(['rotor.hover'])
    expect(found('diskLoading Leishman')).toEqual(['rotor.hover'])
    expect(found('behind a wing')).toEqual(['wing.downwash'])
    expect(found('leishman nothing')).toEqual([])
  })

  it('puts first what is so named', () => {
    expect(findMethods(methods, 'hover').map(({ name }) => name)).toEqual(['rotor.hover', 'wing.downwash'])
  })
})

describe('usedMethods(source)', () => {
  it('names each method once in the order of the text, drawings left out', () => {
    const source =
      "const day = air.standard(0)\nconst a = rotor.hover({}) // wing.trim\nconst b = rotor\n  .hover({})\nconst f = figure.line({})\nconst t = 'drag.polar'\nconst own = my.rotor.hover"
    expect(usedMethods(source)).toEqual(['air.standard', 'rotor.hover'])
  })

  it('leaves out what the notebook itself declares', () => {
    expect(usedMethods('const m = mass.wing({}) + drag.polar({})', (name) => name === 'mass')).toEqual(['drag.polar'])
  })
})
