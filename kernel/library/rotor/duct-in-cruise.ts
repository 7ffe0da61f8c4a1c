import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Force, Length, Pressure, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface DuctInCruiseOptions {
  /** Mean diameter of the duct's ring [m]. */
  readonly diameter: Length
  /** Length of the duct along its axis [m]. */
  readonly chord: Length
  /** Of the ring's section, both sides in it. */
  readonly sectionDrag: Ratio
  /** Carried by the ring [N], 0 when left out. */
  readonly lift?: Force
  /** [Pa]; needed with `lift`. */
  readonly dynamicPressure: Pressure
}

export interface DuctInCruise {
  /** Of the ring's skin [m^2], pi D c c_d. */
  readonly dragArea: Area
  /** [N] */
  readonly skinDrag: Force
  /** [N] */
  readonly inducedDrag: Force
  /** Diameter over chord. */
  readonly aspectRatio: Ratio
}

const method = 'rotor.ductInCruise'
const known = new Set(['diameter', 'chord', 'sectionDrag', 'lift', 'dynamicPressure'])

/**
 * Drag of a duct whose axis lies along the flight path, as a ring wing.
 *
 * @equation f = pi D c c_d; D_skin = q f; D_induced = L^2/(2 pi q D^2), half of an elliptic wing of span D
 * @param options - `diameter` D [m], `chord` c [m], `sectionDrag` c_d, `dynamicPressure` q [Pa]; optional `lift` L [N] (0)
 * @returns `dragArea` f [m^2], `skinDrag` [N], `inducedDrag` [N], `aspectRatio` D/c
 * @throws InvalidInput for a value that is not positive, a negative lift, and an unknown option
 * @method The skin is the unrolled ring at its section's drag. A lift fan's duct, whose axis stands across the stream, is a cavity and not
 * this: see the stowage options of the drag of lift rotors.
 * @validity Aspect ratios from 1/3 to 3; outside an advisory.
 * @source Fletcher, H. S., Experimental Investigation of Lift, Drag, and Pitching Moment of Five Annular Airfoils, NACA TN 4117, 1957,
 * summary (induced drag half of elliptic). Skin: geometry.
 * @example
 * const ring = rotor.ductInCruise({ diameter: 1 * u.m, chord: 0.5 * u.m, sectionDrag: 0.01, dynamicPressure: 2000 })
 * ring.dragArea // 0.015708
 */
export function ductInCruise(options: DuctInCruiseOptions): DuctInCruise {
  checkOptions(method, options, known)
  const { diameter, chord, sectionDrag, lift = 0, dynamicPressure } = options
  requirePositive(method, 'diameter', diameter, 'm')
  requirePositive(method, 'chord', chord, 'm')
  requirePositive(method, 'sectionDrag', sectionDrag, '1')
  requireNonNegative(method, 'lift', lift, 'N')
  requirePositive(method, 'dynamicPressure', dynamicPressure, 'Pa')
  const dragArea = Math.PI * diameter * chord * sectionDrag
  const skinDrag = dynamicPressure * dragArea
  const perSpan = lift / diameter
  const inducedDrag = (perSpan * perSpan) / (2 * Math.PI * dynamicPressure)
  const aspectRatio = diameter / chord
  requireRepresentable(method, dragArea + skinDrag + inducedDrag + aspectRatio)
  if (isListening() && (aspectRatio < 1 / 3 || aspectRatio > 3))
    advise({
      code: 'DUCT_ASPECT_RATIO',
      method,
      quantity: 'aspectRatio',
      value: aspectRatio,
      range: [1 / 3, 3],
      message: `A ring of ${aspectRatio.toPrecision(3)} diameters per chord lies outside those that were tested (1/3 to 3).`,
    })
  return { dragArea, skinDrag, inducedDrag, aspectRatio }
}
