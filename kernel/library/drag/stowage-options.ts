import { requireCount, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Length, Mass, Ratio } from '../quantity.js'
import { shelter } from './in-line-shielding.js'
import {
  adviseBand,
  bladesAt,
  geometryNames,
  houseBand,
  hubAndPod,
  readBlade,
  type StoppedRotorGeometry,
} from './stopped-rotor.js'
import { type StowageEstimate, type StowedRotor, stowageEstimates } from './stowage-house.js'
import { readBand, type StowageRecord } from './stowage-record.js'

export interface RotorRow {
  /** Rotors one behind another on a boom. */
  readonly count: Ratio
  /** From one to the next along the stream [m]. */
  readonly spacing: Length
}

export interface StowageOptionsOptions extends StoppedRotorGeometry {
  /** Lift rotors of the aircraft, all alike. */
  readonly count: Ratio
  /** Blades, hub and motor of one rotor [kg]. */
  readonly rotorMass: Mass
  /** Height of a duct [m]; 0.3 of the radius when left out. */
  readonly ductHeight?: Length
  /** Rotors that stand in line along the stream; spread across it when left out. */
  readonly inLine?: RotorRow
  /** Names of the options wanted; all when left out. */
  readonly only?: readonly string[]
}

const method = 'drag.stowageOptions'
const known = new Set<string>([...geometryNames, 'count', 'rotorMass', 'ductHeight', 'inLine', 'only'])
const knownRow = new Set(['count', 'spacing'])
const names = stowageEstimates.map((estimate) => estimate.name)
const stops = 36

/**
 * The ways of stowing lift rotors in cruise, each as a record of drag, mechanism mass, complexity and limits, from the rotor's geometry.
 *
 * @equation per rotor: exposed = blades averaged over azimuth + hub + pod; feathered and lined up = blades in line + hub + pod;
 * retracted = C_f (1.25 S_sides + 0.3 S_bay); folded = 0.5 (hub + pod) + 0.6 C_f B c R; buried open = 0.02 pi R^2, with a step 0.8 of
 * it; buried with doors = 0.6 C_f pi R^2; ducted = 1.2 R h + hub + pod. Masses: lined up 0.03 m_r, retracted 0.35 m_r + 4 kg/m^2 S_bay,
 * folded 0.25 m_r, step 1 kg/m R, doors 8 kg/m^2 pi R^2, duct 1.5 kg/m^2 4 pi R h; times the number of rotors
 * @param options - the rotor as in `drag.stoppedRotor` (without azimuth), `count` of rotors, `rotorMass` m_r of one [kg]; optional
 * `ductHeight` h [m] (0.3 R), `inLine` { `count`, `spacing` [m] } where rotors stand behind each other, `only` (list of names)
 * @returns a list of records { `name`, `dragArea` { `low`, `best`, `high` } [m^2] and `mechanismMass` { `low`, `best`, `high` } [kg] of
 * all rotors, `complexity`, `limits`, `source`, `tested` }
 * @throws InvalidInput for what `drag.stoppedRotor` refuses, a count that is not whole, masses and heights that are not positive, rows
 * that do not divide the rotors or overlap, an unknown name, and an unknown option
 * @method House model throughout: parts of known size put together, masses as shares of the rotor and of door area. Reasonable for the
 * order of options and for what a mechanism may weigh; not for the last kilogram. Hubs and pods in line shelter each other as in
 * `drag.inLineShielding`. Complexity counts the mechanisms per rotor that must work before it lifts again.
 * @validity Every record carries a band of 40 % and the call an advisory: no test of these options was found in print, save one model
 * whose parasite drag fell by 38 % with its rotors retracted. Replace a record by `drag.stowageRecord` when you have a test.
 * @source House model.
 * @example
 * const ways = drag.stowageOptions({
 *   count: 8, blades: 2, radius: 1.3 * u.m, chord: 0.14 * u.m, hubDiameter: 0.25 * u.m, hubHeight: 0.1 * u.m, rotorMass: 16 * u.kg,
 *   speed: 58, density: 1.1, dynamicViscosity: 1.79e-5, only: ['exposed', 'feathered and lined up'],
 * })
 * ways.length // 2
 */
export function stowageOptions(options: StowageOptionsOptions): StowageRecord[] {
  checkOptions(method, options, known)
  const { count, only = names } = options
  requireCount(method, 'count', count)
  if (!Array.isArray(only) || only.length === 0)
    throw new InvalidInput({
      method,
      argument: 'only',
      value: describeValue(only),
      accepted: `a list of names out of ${names.map((name) => `"${name}"`).join(', ')}`,
    })
  only.forEach((name: string, index: number) => {
    requireChoice(method, `only[${index}]`, name, names)
  })
  const rotor = describeRotor(options)
  const records = stowageEstimates
    .filter((estimate) => only.includes(estimate.name))
    .map((estimate) => recordOf(estimate, rotor, count))
  const largest = records.reduce((most, record) => Math.max(most, record.dragArea.best), 0)
  requireRepresentable(
    method,
    records.reduce((sum, one) => sum + one.dragArea.high + one.mechanismMass.high, 0),
  )
  adviseBand(method, largest)
  return records
}

function recordOf(estimate: StowageEstimate, rotor: StowedRotor, count: number): StowageRecord {
  const { name, complexity, limits, source } = estimate
  return Object.freeze({
    name,
    dragArea: readBand(method, `dragArea of ${name}`, count * estimate.dragArea(rotor), 'm^2', houseBand),
    mechanismMass: readBand(method, `mechanismMass of ${name}`, count * estimate.mechanismMass(rotor), 'kg', houseBand),
    complexity,
    limits: Object.freeze([...limits]),
    source,
    tested: false,
  })
}

function describeRotor(options: StowageOptionsOptions): StowedRotor {
  const blade = readBlade(method, options)
  const { blades, hubDiameter, hubHeight, podHeight = 0, rotorMass } = options
  const { ductHeight = 0.3 * blade.radius } = options
  requirePositive(method, 'rotorMass', rotorMass, 'kg')
  requirePositive(method, 'ductHeight', ductHeight, 'm')
  let bladesAnywhere = 0
  for (let stop = 0; stop < stops; stop += 1)
    bladesAnywhere += bladesAt(blade, blades, (2 * Math.PI * (stop + 0.5)) / stops) / stops
  return {
    radius: blade.radius,
    chord: blade.chord,
    blades,
    hubDiameter,
    height: hubHeight + podHeight,
    bladesAnywhere,
    bladesInLine: bladesAt(blade, blades, 0),
    hubAndPod: sheltered(options),
    skinFriction: blade.skinFriction,
    rotorMass,
    ductHeight,
  }
}

/** Hub and pod of one rotor, on the average of the row that it stands in. */
function sheltered(options: StowageOptionsOptions): number {
  const { hub, pod } = hubAndPod(method, options)
  const { count, inLine, hubDiameter, hubHeight, podDiameter = 0, podHeight = 0 } = options
  if (inLine === undefined) return hub + pod
  checkOptions(`${method} inLine`, inLine, knownRow)
  requireCount(method, 'inLine.count', inLine.count)
  requirePositive(method, 'inLine.spacing', inLine.spacing, 'm')
  if (count % inLine.count !== 0)
    throw new InvalidInput({
      method,
      argument: 'inLine.count',
      value: inLine.count,
      accepted: `a number that divides the ${count} rotors into equal rows`,
    })
  const frontalArea = hubDiameter * hubHeight + podDiameter * podHeight
  const radius = Math.sqrt(frontalArea / Math.PI)
  if (!(inLine.spacing >= 2 * radius))
    throw new InvalidInput({
      method,
      argument: 'inLine.spacing',
      value: inLine.spacing,
      unit: 'm',
      accepted: `at least ${2 * radius} m, or the hubs overlap`,
    })
  const factors = shelter((hub + pod) / frontalArea, inLine.spacing / radius, Math.min(inLine.count, 50), 0.08)
  return ((hub + pod) * factors.reduce((sum, factor) => sum + factor, 0)) / factors.length
}
