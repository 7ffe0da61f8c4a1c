/**
 * Substituted lines of the worked problem and of a cell of plain arithmetic: the numbers that are printed, put together again with their
 * units by another library (mathjs), give the result that is printed, within the rounding of what is printed.
 */
import { readFileSync } from 'node:fs'
import { all, create, type Unit } from 'mathjs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { analyse } from '../../kernel/cells/analyse/index.js'
import { formulasOf } from '../../kernel/cells/formulas/index.js'
import { withDimensions } from '../../kernel/cells/index.js'
import type { SizingCell } from '../../kernel/cells/program/index.js'
import { standard } from '../../kernel/library/air/index.js'
import { openToolchain, type Toolchain } from '../../server/toolchain.js'
import { CellId, readNotebook } from '../../shared/contracts/index.js'
import { type CellView, type Line, linesOf, lineWords, sheetContext } from '../../shared/rendering/index.js'

const reading = readNotebook(readFileSync(new URL('../../notebooks/worked-sizing.json', import.meta.url), 'utf8'))
if (!reading.ok) throw new Error(reading.reason)
const arithmetic: SizingCell = {
  id: CellId.parse('arithmetic'),
  source: `const thrust = (grossMass * u.g0) / (1 - download)
const discArea = rotorCount * Math.PI * rotorRadius ** 2
const inducedSpeed = Math.sqrt(thrust / (2 * density * discArea))
const idealPower = (thrust * inducedSpeed) / figureOfMerit
const wingLoading = (grossMass * u.g0) / wingArea
const peakPower = idealPower * (idealPower > 100 * u.kW ? peakThrustRatio : 1) ** 1.5
const motors = peakPower / motorSpecificPower
const storedEnergy = idealPower * hoverTime + hotelPower * (hoverTime + 20 * u.min)
const packMass = storedEnergy / (packSpecificEnergy * usableShare)
const inKilowatts = idealPower / u.kW
const span = Math.sqrt(aspectRatio * wingArea)
const least = Math.min(span, 14 * u.m) - -0.5 * u.m
const sectorTime = range / cruiseSpeed
const root = Math.cbrt(wingArea * span) + Math.abs(span - 20 * u.m)`,
}
const cells: SizingCell[] = [
  ...reading.notebook.cells
    .filter((cell) => cell.kind === 'sizing')
    .map((cell) => ({ id: cell.id, source: cell.source.join('\n') })),
  arithmetic,
]

let toolchain: Toolchain
let lines: Line[]
beforeAll(async () => {
  toolchain = await openToolchain({ folder: new URL('../../.build/kernel/', import.meta.url).pathname })
  const [{ results }, { names }, graph] = await Promise.all([
    toolchain.pipeline.compute(cells, {}, 'all'),
    toolchain.pipeline.check(cells),
    analyse(cells, toolchain.erase, new Set(toolchain.kernel.names)),
  ])
  const formulas = formulasOf(graph)
  const views = withDimensions(results, names).map(
    (result): CellView => ({
      id: result.cell,
      kind: 'sizing',
      number: '1',
      source: '',
      state: 'current',
      findings: [],
      folded: true,
      firstFigure: 1,
      result,
      formulas: formulas.get(result.cell) ?? [],
    }),
  )
  const context = sheetContext({ cells: views })
  lines = views.flatMap((view) => linesOf(view, context))
}, 120_000)
afterAll(() => toolchain.close())

const math = create(all ?? {})
math.createUnit('standardGravity', '9.80665 m/s^2')

/** The printed numbers as the other library reads them. */
function asMathematics(words: string): string {
  return words
    .replace(/(\d)\u202f(?=\d{3})/g, '$1')
    .replaceAll('\u202f', ' ')
    .replace(/(\d) min\b/g, '$1 minute')
    .replaceAll('−', '-')
    .replaceAll('·', '*')
    .replaceAll('standard gravity', '(1 standardGravity)')
    .replaceAll('π', 'pi')
    .replaceAll('√', 'sqrt')
    .replaceAll('∛', 'cbrt')
    .replace(/\|(.+?)\|/g, 'abs($1)')
    .replace(/\(([^()]+) if ([^()]+); otherwise ([^()]+)\)/g, '(($2) ? ($1) : ($3))')
    .replace(/×10([⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)/g, (_, digits: string) => `e${plainDigits(digits)}`)
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+/g, (digits) => `^${plainDigits(digits)}`)
    .replace(
      /air\.standard\((\S+) m, (\S+) K\)\.density/g,
      (_, altitude: string, offset: string) => `${standard(Number(altitude), Number(offset)).density} kg/m^3`,
    )
}

const plainDigits = (text: string) =>
  [...text].map((mark) => (mark === '⁻' ? '-' : '⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(mark))).join('')

/** The ratio of two quantities of one dimension. */
function ratioOf(a: Unit | number, b: Unit | number): number {
  const ratio = math.divide(a, b) as Unit | number
  return typeof ratio === 'number' ? ratio : ratio.toNumber('')
}

const wordsOf = (stage: Line['symbol']) => lineWords({ name: '', symbol: stage, stages: [], notes: [] })

/** The lines whose numbers are arithmetic and known functions alone, with numbers and result. */
function plainLines(): { name: string; numbers: string; result: string }[] {
  return lines.flatMap((line) => {
    const [, numbers, result] = line.stages
    if (numbers === undefined || result === undefined || line.notes.length > 0) return []
    const known = asMathematics(wordsOf(numbers))
    return /[A-Za-z]\w*\(/.test(known.replace(/\b(sqrt|cbrt|abs|min)\(/g, '('))
      ? []
      : [{ name: line.name, numbers: known, result: asMathematics(wordsOf(result)) }]
  })
}

describe('linesOf', () => {
  it('linesOf(cell) prints numbers that give the printed result, within rounding, for all plain arithmetic', () => {
    const plain = plainLines()
    expect(plain.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        'diskArea',
        'density',
        'thrust',
        'inducedSpeed',
        'peakPower',
        'packMass',
        'least',
        'root',
      ]),
    )
    for (const { name, numbers, result } of plain) {
      const ratio = ratioOf(math.evaluate(numbers), math.evaluate(result))
      // Four digits are printed of each number: half a unit of the fourth is at most 5e-4, and few numbers stand in a line.
      expect(Math.abs(ratio - 1), `${name}: ${numbers} against ${result}`).toBeLessThan(2e-3)
    }
  })

  it('linesOf(cell) gives every stated result of the worked problem a line', () => {
    const stated = [
      'density',
      'grossMass',
      'hoverPower',
      'cruisePower',
      'stallSpeed',
      'energy',
      'batteryMass',
      'motorMass',
    ]
    expect(lines.map((line) => line.name)).toEqual(expect.arrayContaining(stated))
    const words = lines.map((line) => lineWords(line).replaceAll('\u202f', ' '))
    expect(words).toContain('disk area = rotor count · π · rotor radius^2 = 8 · π · (1.3 m)^2 = 42.47 m²')
    expect(words).toContain('hover power = hoverAt(gross mass).power = hoverAt(1 637 kg).power = 315.9 kW')
  })
})
