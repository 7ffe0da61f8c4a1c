/** What answers about one number have in common as text: the head, and names as they stand in the source. */
import {
  type AskedSubject,
  type AssumptionNames,
  askedSubject,
  assumptionNames,
  type SheetView,
} from '../../shared/rendering/index.js'
import { commandCaution } from './caution.js'

export function headLines({ title }: SheetView, trials: readonly string[]): string[] {
  return [
    title,
    commandCaution,
    ...(trials.length === 0 ? [] : [`Trial values, not in the document: ${trials.join(', ')}.`]),
    '',
  ]
}

/** On the command line a name is said as it is typed. */
export function subjectInCode(view: SheetView, name: string): AskedSubject {
  const found = askedSubject(view, name)
  return found === undefined
    ? { name, label: name, dimension: null, value: Number.NaN, limits: [] }
    : { ...found, label: name }
}

export function namesInCode(view: SheetView): AssumptionNames {
  const names = assumptionNames(view)
  return (name) => ({ ...names(name), label: name })
}
