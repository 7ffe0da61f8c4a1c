/** Drivers as they leave the page: a figure of bars, and a table with everything that the page shows. */
import { cautionLine, type Driver, type Drivers, type Figure, type Mark } from '../../contracts/index.js'
import { type CsvCell, writeCsv } from '../csv.js'
import { displayUnit } from '../quantity/format-quantity.js'
import type { AssumptionNames } from './assumption-names.js'
import { driverGroups } from './driver-groups.js'
import { driversSentence, endsFromWords, failingEnds, failureSentence, unsteadyWords } from './drivers-words.js'
import { type AskedSubject, showValue } from './subject.js'

/** As long as a text of a figure may be. */
const longest = 400
const longestDescription = 2000

/** Undefined where nothing moves the number; the slightest drivers are left to the table. */
export function driversFigure(subject: AskedSubject, drivers: Drivers, names: AssumptionNames): Figure | undefined {
  const { failing, moving } = driverGroups(drivers)
  const shown = [...failing, ...moving].slice(0, 250)
  if (shown.every(({ low, high }) => !low.change && !high.change)) return undefined
  const { label, dimension, unit } = subject
  return {
    figure: 'plot',
    caption: `Drivers of ${label}, ${showValue(subject, drivers.base)}`.slice(0, longest),
    description: driversSentence(subject, drivers, names).slice(0, longestDescription),
    x: {
      label: `change of ${label}`.slice(0, longest),
      dimension: dimension ?? '1',
      ...(unit === undefined || dimension === null ? {} : { unit }),
    },
    y: { label: '', dimension: '1' },
    marks: [
      endsMark(shown, names, 'low'),
      endsMark(shown, names, 'high'),
      { mark: 'rule', axis: 'x', at: 0, ink: 'ink' },
    ],
  }
}

/** One end of all of them; an end that does not compute has no bar. */
function endsMark(drivers: readonly Driver[], names: AssumptionNames, which: 'low' | 'high'): Mark {
  return {
    mark: 'bar',
    names: drivers.map(({ name }) => names(name).label.slice(0, longest)),
    value: drivers.map((driver) => driver[which].change ?? 0),
    ink: which === 'low' ? 'second' : 'accent',
    label: `at the ${which} end`,
  }
}

const columns = ['assumption', 'value', 'unit', 'low end', 'high end', 'where the ends come from'] as const

/** Everything that is known of each, in the units shown and in full digits. */
export function driversCsv(subject: AskedSubject, drivers: Drivers, names: AssumptionNames, mark = ''): string {
  const { label, dimension, unit } = subject
  const { factor, symbol } = displayUnit(drivers.base, dimension, unit)
  const inUnit = symbol === '' ? '' : `, ${symbol}`
  const head = [
    ...columns,
    `change of ${label} at the low end${inUnit}`,
    `change of ${label} at the high end${inUnit}`,
    'per 1 %, %',
    'remark',
  ]
  const change = (si: number | undefined) => (si === undefined ? null : si / factor)
  const { failing, moving, slight } = driverGroups(drivers)
  const rows = [...failing, ...moving, ...slight].map((driver): CsvCell[] => {
    const { name, value, low, high, from, elasticity } = driver
    const assumption = names(name)
    const own = displayUnit(value, assumption.dimension, assumption.unit)
    return [
      assumption.label,
      ...[value / own.factor, own.symbol, low.at / own.factor, high.at / own.factor],
      endsFromWords[from],
      change(low.change),
      change(high.change),
      elasticity ?? null,
      remark(subject, driver, names),
    ]
  })
  const alone = (text: string, words: string): CsvCell[] =>
    head.map((_, at) => (at === 0 ? text : at === head.length - 1 ? words : null))
  return writeCsv([
    head,
    ...rows,
    ...drivers.without.map((name) => alone(names(name).label, 'no effect')),
    ...drivers.unvaried.map(({ name }) => alone(names(name).label, 'not varied')),
    ...drivers.left.map((name) => alone(names(name).label, 'not varied: stopped before')),
    alone(cautionLine, ''),
    ...(mark === '' ? [] : [alone(mark, '')]),
  ])
}

function remark(subject: AskedSubject, driver: Driver, names: AssumptionNames): string {
  const failures = failingEnds(driver).map((end) => failureSentence(subject, driver, end, names(driver.name)))
  if (failures.length > 0) return failures.join(' ')
  return driver.unsteady === undefined ? '' : unsteadyWords[driver.unsteady]
}
