import type { Figure } from '../../../shared/contracts/figure.js'
import type { Run } from '../battery/index.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Voltage } from '../quantity.js'
import { line } from './line.js'

export interface DischargeFigureOptions {
  /** What `battery.run` gave, by the label of the line. */
  readonly runs: Readonly<Record<string, Run>>
  /** What lies across: `'time'` (when left out) or `'charge'`. */
  readonly against?: 'time' | 'charge'
  /** Of the pack; drawn as a rule [V]. */
  readonly minimumVoltage?: Voltage
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.discharge'
const known = new Set(['runs', 'against', 'minimumVoltage', 'caption', 'description'])

/**
 * Voltage of packs on their way through a profile.
 *
 * @equation V(t) or V(s) as `battery.run` integrated them
 * @param options - `runs`: record of what `battery.run` gave, by label; optional `against` (`'time'` or `'charge'`), `minimumVoltage` of the pack [V] as a rule, `caption`, `description`
 * @returns a figure: a line per run
 * @throws InvalidInput for no runs, something that is no run, an axis it does not know, and an unknown option
 * @method Draws the history as it is: one point per step.
 * @validity As the runs'.
 * @source House convention, no publication.
 * @example
 * const flown = battery.run({ cell: battery.cells.power18650, series: 1, parallel: 1, profile: [{ power: 20 * u.W, duration: 600 * u.s }] })
 * const drawn = figure.discharge({ runs: { 'new cell': flown }, minimumVoltage: 2.5 * u.V })
 */
export function discharge(options: DischargeFigureOptions): Figure {
  checkOptions(method, options, known)
  const { against = 'time', minimumVoltage, caption = 'Voltage of the pack in flight', description } = options
  if (against !== 'time' && against !== 'charge')
    throw new InvalidInput({
      method,
      argument: 'against',
      value: describeValue(against),
      accepted: '"time" or "charge"',
    })
  const runs = readRecord(options.runs)
  const across = (run: Run) => (against === 'time' ? run.history.time : run.history.stateOfCharge)
  return line({
    caption,
    ...(description === undefined ? {} : { description }),
    x:
      against === 'time'
        ? { label: 'time', unit: 'min', values: across(runs[0]?.[1] as Run) }
        : { label: 'state of charge', values: across(runs[0]?.[1] as Run) },
    y: { label: 'voltage', unit: 'V' },
    series: runs.map(([label, run]) => ({ label, x: across(run), values: run.history.voltage })),
    ...(minimumVoltage === undefined ? {} : { rules: [{ axis: 'y', at: minimumVoltage, label: 'least voltage' }] }),
  })
}

function readRecord(runs: Readonly<Record<string, Run>>): readonly [string, Run][] {
  const entries = typeof runs === 'object' && runs !== null && !Array.isArray(runs) ? Object.entries(runs) : []
  if (entries.length > 0 && entries.every(([, run]) => Array.isArray(run?.history?.voltage))) return entries
  throw new InvalidInput({
    method,
    argument: 'runs',
    value: entries.length === 0 ? describeValue(runs) : 'a record of something else',
    accepted: 'a record of what battery.run gave, by label',
  })
}
