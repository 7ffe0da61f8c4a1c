/** Drivers as a page of text: the sentence, a row for each assumption, then what there is to say about some of them. */
import type { Driver, DriverEnd, Drivers } from '../../shared/contracts/index.js'
import {
  type AskedSubject,
  type AssumptionNames,
  changeText,
  driverGroups,
  driversBasis,
  driversSentence,
  elasticityText,
  endsFromWords,
  failingEnds,
  failureSentence,
  type SheetView,
  showAssumption,
  unsteadyWords,
  unvariedWords,
} from '../../shared/rendering/index.js'
import { headLines, namesInCode, subjectInCode } from './asked-text.js'
import { alignColumns } from './columns.js'

export interface DriversAnswered {
  readonly view: SheetView
  readonly drivers: Drivers
  readonly trials: readonly string[]
}

export function describeDrivers({ view, drivers, trials }: DriversAnswered): string {
  const subject = subjectInCode(view, drivers.target)
  const names = namesInCode(view)
  const { without, unvaried } = drivers
  const lines = [
    ...headLines(view, trials),
    driversSentence(subject, drivers, names),
    '',
    ...table(subject, drivers, names),
    ...(without.length === 0 ? [] : ['', `Without effect: ${without.join(', ')}.`]),
    ...unvaried.map(({ name, reason }) => `Not varied: ${name} ${unvariedWords[reason]}.`),
    '',
    driversBasis(subject, drivers, trials.length > 0),
  ]
  return `${lines.join('\n')}\n`
}

const head = ['assumption', 'value', 'low end', 'change', 'high end', 'change', 'per 1 %', 'ends'] as const
const numeric = new Set([1, 2, 3, 4, 5, 6])

/** What does not compute first; each remark below the table, by name. */
function table(subject: AskedSubject, drivers: Drivers, names: AssumptionNames): string[] {
  const { failing, moving, slight } = driverGroups(drivers)
  const ordered = [...failing, ...moving, ...slight]
  if (ordered.length === 0) return []
  const rows = ordered.map((driver) => rowOf(subject, drivers.base, driver, names))
  const remarks = ordered.flatMap((driver) => remarksOf(subject, driver, names))
  return [...alignColumns([head, ...rows], numeric), ...(remarks.length === 0 ? [] : ['', ...remarks])]
}

function rowOf(subject: AskedSubject, base: number, driver: Driver, names: AssumptionNames): string[] {
  const assumption = names(driver.name)
  const end = ({ at, change }: DriverEnd) => [
    showAssumption(assumption, at),
    change === undefined ? 'does not compute' : changeText(subject, base, change),
  ]
  return [
    driver.name,
    showAssumption(assumption, driver.value),
    ...end(driver.low),
    ...end(driver.high),
    elasticityText(driver),
    endsFromWords[driver.from],
  ]
}

function remarksOf(subject: AskedSubject, driver: Driver, names: AssumptionNames): string[] {
  const failures = failingEnds(driver).map((end) => failureSentence(subject, driver, end, names(driver.name)))
  if (failures.length > 0) return failures
  return driver.unsteady === undefined ? [] : [`${driver.name}: ${unsteadyWords[driver.unsteady]}`]
}
