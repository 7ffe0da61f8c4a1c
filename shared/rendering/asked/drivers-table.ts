/** Drivers as tables of bars: what does not compute, what moves the number, what hardly does. */
import type { Driver, DriverEnd, Drivers } from '../../contracts/index.js'
import { element } from '../dom.js'
import { countOf } from '../quantity/words.js'
import { cellLink } from '../sheet/context.js'
import type { SheetContext } from '../view.js'
import { type AssumptionNames, assumptionLink, showAssumption } from './assumption-names.js'
import { driverBar } from './driver-bar.js'
import { driverGroups } from './driver-groups.js'
import {
  changeText,
  elasticityText,
  endsFromWords,
  failingEnds,
  failureSentence,
  unsteadyWords,
} from './drivers-words.js'
import { headRow } from './spread-summary.js'
import type { AskedSubject } from './subject.js'

/** What a table of drivers is drawn with. */
interface Drawing {
  readonly document: Document
  readonly subject: AskedSubject
  readonly base: number
  readonly names: AssumptionNames
  readonly context: SheetContext
  /** The change as long as half of the bars' field [SI]. */
  readonly largest: number
}

/** Null where nothing moves the number. */
export function renderDrivers(
  document: Document,
  subject: AskedSubject,
  drivers: Drivers,
  names: AssumptionNames,
  context: SheetContext,
): HTMLElement | null {
  const { failing, moving, slight, largest } = driverGroups(drivers)
  if (drivers.drivers.length === 0) return null
  const drawing: Drawing = { document, subject, base: drivers.base, names, context, largest }
  return element(
    document,
    'div',
    {},
    driverTable(drawing, `Where ${subject.label} does not compute`, failing),
    driverTable(drawing, `What moves ${subject.label}: striped at the low end, full at the high end`, moving),
    slight.length === 0
      ? null
      : element(
          document,
          'details',
          {},
          element(
            document,
            'summary',
            {},
            `${countOf(slight.length, 'more moves', 'more move')} it by less than a hundredth of the first`,
          ),
          driverTable(drawing, `What hardly moves ${subject.label}`, slight),
        ),
  )
}

function driverTable(drawing: Drawing, caption: string, drivers: readonly Driver[]): HTMLElement | null {
  const { document } = drawing
  if (drivers.length === 0) return null
  return element(
    document,
    'table',
    { class: 'driver-table' },
    element(document, 'caption', {}, caption),
    element(document, 'thead', {}, headRow(document, ['low end', 'change', 'high end', 'per 1 %'])),
    drivers.map((driver) => driverRows(drawing, driver)),
  )
}

/** A group of rows for each: its name, its numbers, and what there is to say about them. */
function driverRows(drawing: Drawing, driver: Driver): HTMLElement {
  const { document, names, largest } = drawing
  const assumption = names(driver.name)
  const value = showAssumption(assumption, driver.value)
  return element(
    document,
    'tbody',
    { 'data-driver': driver.name },
    element(
      document,
      'tr',
      {},
      element(
        document,
        'th',
        { scope: 'rowgroup', colspan: 4 },
        assumptionLink(document, assumption),
        ' ',
        element(document, 'span', { class: 'driver-value' }, assumption.trial ? `${value}, trial` : value),
        ' ',
        element(document, 'span', { class: 'driver-soft' }, endsFromWords[driver.from]),
      ),
    ),
    element(
      document,
      'tr',
      { class: 'driver-numbers' },
      endCell(drawing, driver, driver.low),
      element(document, 'td', { class: 'driver-change' }, driverBar(document, driver, largest)),
      endCell(drawing, driver, driver.high),
      element(document, 'td', { class: 'driver-slope' }, elasticityText(driver)),
    ),
    remarks(drawing, driver).map((remark) =>
      element(document, 'tr', {}, element(document, 'td', { colspan: 4, class: 'driver-remark' }, remark)),
    ),
  )
}

function endCell(
  { document, subject, base, names }: Drawing,
  { name }: Driver,
  { at, change }: DriverEnd,
): HTMLElement {
  return element(
    document,
    'td',
    { class: 'driver-end' },
    element(
      document,
      'span',
      { class: change === undefined ? 'driver-fails' : 'driver-moves' },
      change === undefined ? 'does not compute' : changeText(subject, base, change),
    ),
    ' ',
    element(document, 'span', { class: 'driver-soft' }, `at ${showAssumption(names(name), at)}`),
  )
}

function remarks(
  { document, subject, names, context }: Drawing,
  driver: Driver,
): readonly (readonly (Node | string)[])[] {
  const failures = failingEnds(driver).map((end) => [
    failureSentence(subject, driver, end, names(driver.name)),
    ...(end.cell === undefined ? [] : [' Failed in ', cellLink(document, context, end.cell), '.']),
  ])
  const { unsteady } = driver
  if (unsteady === undefined || failures.length > 0) return failures
  return [[unsteadyWords[unsteady]]]
}
