/** From a section's record to its polar. */
import { describeValue, InvalidInput } from '../errors.js'
import { type LinearSection, type LinearSectionOptions, linear } from './linear.js'
import { LinearPolar } from './linear-polar.js'
import type { Polar } from './polar.js'
import type { TableSection } from './table.js'
import { TablePolar } from './table-polar.js'

/** A section polar as plain frozen data, made by `section.linear` or `section.table`. */
export type Section = LinearSection | TableSection

/** Makes the polar of a section; also takes the options of `section.linear` where no record was made of them. */
export function preparePolar(method: string, section: Section | LinearSectionOptions): Polar {
  if (typeof section !== 'object' || section === null)
    throw new InvalidInput({
      method,
      argument: 'section',
      value: describeValue(section),
      accepted: 'a section polar, such as section.linear or section.table returns',
    })
  const record: Section = 'section' in section ? section : linear(section)
  if (record.section === 'linear') return new LinearPolar(record)
  if (record.section === 'table') return new TablePolar(record)
  throw new InvalidInput({
    method,
    argument: 'section.section',
    value: describeValue((record as { section: unknown }).section),
    accepted: '"linear" or "table"',
  })
}
