/** Drag area of one blade that stands still in the stream, by the angle at which it stands: cross flow and flow along it apart. */

export interface StoppedBlade {
  /** Of the tip circle [m]. */
  readonly radius: number
  /** Mean [m]. */
  readonly chord: number
  /** Share of the radius without blade. */
  readonly rootCutout: number
  /** Thickness over chord. */
  readonly thickness: number
  /** Section drag with the leading edge forward at no lift. */
  readonly sectionDrag: number
  /** Mean pitch against the plane of the rotor [rad]. */
  readonly pitch: number
  /** Mean skin-friction coefficient of the flow along the blade. */
  readonly skinFriction: number
}

/** Drag with the trailing edge forward over drag with the leading edge forward: about 2 (NACA TN 3361, summary read). */
const backwardRatio = 2
/** On the area that a blade shows to the stream end on; rounded root and tip, house value. */
const endCoefficient = 0.4

/**
 * Drag area [m^2] of a blade whose axis points `azimuth` [rad] away from downstream, in the sense of rotation.
 *
 * Cross-flow principle: the component V sin t across the blade makes the section's drag, of which sin t acts along the stream, so
 * sin^3; the component along it makes friction and the drag of the ends, cos^2. On the side where sin t is negative the trailing edge leads.
 */
export function bladeDragArea(blade: StoppedBlade, azimuth: number): number {
  const { radius, chord, rootCutout, thickness, skinFriction } = blade
  const across = Math.sin(azimuth)
  const along = Math.cos(azimuth)
  const planform = radius * (1 - rootCutout) * chord
  // Between the two edges the section turns round: blended over the last degrees so that drag has no step where a blade is in line.
  const backward = 0.5 * (1 - Math.tanh(across / 0.05))
  const section = crossDrag(blade) + (backwardRatio - 1) * backward * blade.sectionDrag
  const ends = chord * chord * (thickness + Math.abs(Math.sin(blade.pitch)))
  const square = across * across
  return (
    planform * section * square * Math.abs(across) +
    (2 * skinFriction * planform + endCoefficient * ends) * along * along
  )
}

/**
 * Section drag across the blade at its pitch: at no lift, plus what the lift of a pitched blade costs.
 *
 * With full suction at the leading edge that is the induced drag C_L^2/(pi AR); with none the normal force times sin pitch. A stopped
 * blade of usual thickness lies between: the mean is taken (house). Past the stall the normal force is that of a plate, 1.11 + 0.018 AR.
 */
function crossDrag(blade: StoppedBlade): number {
  const aspectRatio = Math.max(1, (blade.radius * (1 - blade.rootCutout)) / blade.chord)
  const sine = Math.abs(Math.sin(blade.pitch))
  const slope = (2 * Math.PI * aspectRatio) / (aspectRatio + 2)
  const plate = 1.11 + 0.018 * Math.min(aspectRatio, 50)
  const normal = Math.min(slope * sine, plate)
  const suction = (normal * normal) / (Math.PI * aspectRatio)
  return blade.sectionDrag + 0.5 * (suction + normal * sine)
}
