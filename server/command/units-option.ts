/** `--units`: in which units values are shown. Numbers stay what they are. */
import { endSentence, suggest } from '../../shared/contracts/index.js'
import { type UnitSystem, unitSystems } from '../../shared/rendering/quantity/unit-system.js'
import { WrongCall } from './subcommand.js'

/** Absent: as the author wrote them. */
export function readUnits(given: string | undefined): UnitSystem {
  if (given === undefined) return 'as written'
  const system = unitSystems.find((one) => one.toLowerCase() === given.toLowerCase().replace('-', ' '))
  if (system === undefined)
    throw new WrongCall(
      `${endSentence(`--units ${given} is no system of units${suggest(given, ['SI', 'aviation'])}`)} There are SI and aviation; without --units values are shown as written.`,
    )
  return system
}
