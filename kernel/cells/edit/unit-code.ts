/** A quantity as code of a cell, where the source has none to go by. */
import { parseUnit, unitBySymbol } from '../../../shared/contracts/index.js'
import { numberText, shortestNumber } from './number-text.js'

/** `235 * u.Wh / u.kg` for a value in SI and unit text; the bare number in SI where the text names no units of `u`. */
export function quantityCode(si: number, unit: string | undefined): string {
  const code = unit === undefined ? undefined : unitCode(unit)
  if (code === undefined) return numberText(si)
  return `${shortestNumber(si, code.computed(1), code.computed)}${code.text}`
}

interface UnitCode {
  /** ` * u.Wh / u.kg`. */
  readonly text: string
  computed(number: number): number
}

function unitCode(text: string): UnitCode | undefined {
  if (!parseUnit(text).ok || text.trim() === '' || text.trim() === '1') return undefined
  const steps: { below: boolean; factor: number; power: number; symbol: string }[] = []
  let below = false
  for (const token of text
    .trim()
    .replaceAll('**', '^')
    .match(/\/|[^/*·\s]+/g) ?? []) {
    if (token === '/') {
      below = true
      continue
    }
    const [, symbol = '', exponent = '1'] = /^(.+?)(?:\^(-?\d+(?:\.\d+)?))?$/.exec(token) ?? []
    const unit = unitBySymbol.get(symbol)
    if (unit === undefined || !/^[A-Za-z]\w*$/.test(symbol)) return undefined
    const power = Number(exponent)
    const reversed = power < 0 ? !below : below
    steps.push({ below: reversed, factor: unit.factor, power: Math.abs(power), symbol })
    below = false
  }
  return {
    text: steps
      .map(({ below, power, symbol }) => `${below ? ' / ' : ' * '}u.${symbol}${power === 1 ? '' : ` ** ${power}`}`)
      .join(''),
    computed: (number) =>
      steps.reduce((value, { below, factor, power }) => {
        const by = power === 1 ? factor : factor ** power
        return below ? value / by : value * by
      }, number),
  }
}
