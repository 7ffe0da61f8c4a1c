/** Where and with what mass an aircraft is looked at: options that the methods of one instant share. */
import { standard } from '../air/standard.js'
import { requirePositive } from '../check.js'
import type { Length, Mass, TemperatureDifference } from '../quantity.js'
import { type Aircraft, type AircraftOptions, requireAircraft } from './aircraft.js'
import { buildMoment, type Moment, requireMoment } from './moment.js'

export interface ConditionsOptions {
  /** From `mission.aircraft`, or its options. */
  readonly aircraft: Aircraft | AircraftOptions
  /** Pressure altitude [m]; 0 when left out. */
  readonly altitude?: Length
  /** From the standard atmosphere [K]; 0 when left out. */
  readonly temperatureOffset?: TemperatureDifference
  /** At this instant [kg]; the aircraft's when left out. */
  readonly mass?: Mass
}

export const knownConditions: readonly string[] = ['aircraft', 'altitude', 'temperatureOffset', 'mass']

export function readConditions(method: string, options: ConditionsOptions): Moment {
  const craft = requireAircraft(method, options.aircraft)
  const { altitude = 0, temperatureOffset = 0, mass = craft.mass } = options
  requirePositive(method, 'mass', mass, 'kg')
  const moment = buildMoment(craft, mass, standard(altitude, temperatureOffset).density)
  requireMoment(method, moment)
  return moment
}
