import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Area, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface DownloadOptions {
  /** Of wing and body in the wakes, seen from above [m^2]. */
  readonly blockedArea: Area
  /** Of that area square to the wake; 1.0 to 1.3 for wings and bodies as a rule. */
  readonly dragCoefficient: Ratio
  /** Disk area of all rotors together [m^2]. */
  readonly diskArea: Area
  /** Wake speed at the blocked area over the induced velocity: 1 at the disk, 2 (when left out) in the far wake. */
  readonly wakeFactor?: Ratio
}

export interface Download {
  /** Download over thrust. */
  readonly share: Ratio
  /** Thrust over the lift that is left, 1/(1 - share). */
  readonly thrustFactor: Ratio
}

const method = 'rotor.download'
const known = new Set(['blockedArea', 'dragCoefficient', 'diskArea', 'wakeFactor'])

/**
 * Download of the rotor wakes on wing and body in hover, as a share of thrust.
 *
 * @equation D/T = (rho/2) (k v)^2 c_D S/(2 rho A v^2) = (k/2)^2 c_D S/A
 * @param options - `blockedArea` S [m^2], `dragCoefficient` c_D, `diskArea` A of all rotors [m^2]; optional `wakeFactor` k from 1 to 2 (2)
 * @returns `share` D/T and `thrustFactor` 1/(1 - share): thrust = weight times it
 * @throws InvalidInput for a value that is not positive, a wake factor outside 1 to 2, a share of 1 or more, and an unknown option
 * @method Drag of the blocked area in a uniform wake of speed k v; the pressure that the blocking gives back to the rotor is left out, which
 * makes the share somewhat high.
 * @validity Shares up to 0.2; above them an advisory.
 * @source Stepniewski and Keys, Rotary-Wing Aerodynamics, NASA CR-3082, 1979, vertical drag by strips (from memory), with one strip.
 * @example
 * const wake = rotor.download({ blockedArea: 2 * u.m2, dragCoefficient: 1.2, diskArea: 40 * u.m2 })
 * wake.share // 0.06
 */
export function download(options: DownloadOptions): Download {
  checkOptions(method, options, known)
  const { blockedArea, dragCoefficient, diskArea, wakeFactor = 2 } = options
  requireNonNegative(method, 'blockedArea', blockedArea, 'm^2')
  requireNonNegative(method, 'dragCoefficient', dragCoefficient, '1')
  requirePositive(method, 'diskArea', diskArea, 'm^2')
  requireWithin(method, 'wakeFactor', wakeFactor, '1', 1, 2)
  const half = wakeFactor / 2
  const share = (half * half * dragCoefficient * blockedArea) / diskArea
  requireRepresentable(method, share)
  if (share >= 1)
    throw new InvalidInput({
      method,
      argument: 'blockedArea',
      value: blockedArea,
      unit: 'm^2',
      accepted: `small enough that the download is less than the thrust; it is ${share.toPrecision(3)} of it`,
    })
  if (isListening() && share > 0.2)
    advise({
      code: 'DOWNLOAD',
      method,
      quantity: 'share',
      value: share,
      range: [0, 0.2],
      message: `A download of ${(100 * share).toFixed(0)} % of thrust is beyond what one uniform wake can tell (20 %).`,
    })
  return { share, thrustFactor: 1 / (1 - share) }
}
