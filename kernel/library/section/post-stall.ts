/** Lift and drag of a section past its stall, to any angle: the flat plate that it then resembles, joined to the stall point. */

/** Lift of a plate that meets the stream with its rear edge first, over that of one the right way round (house value). */
const reversedLift = 0.7
/** Drag of a section that meets the stream with its rear edge first over its least drag. */
const reversedDrag = 2

/**
 * Drag coefficient of the blade square to the stream: 1.11 + 0.018 AR, two-dimensional from an aspect ratio of 50 on.
 * Viterna and Corrigan, Fixed Pitch Rotor Performance of Large Horizontal Axis Wind Turbines, 1982 (from memory).
 */
export function plateDrag(aspectRatio: number): number {
  return 1.11 + 0.018 * Math.min(aspectRatio, 50)
}

/** Where attached flow ends; angles and lift as magnitudes of the side that is asked about. */
export interface StallPoint {
  /** From zero lift [rad], between 0 and pi/2. */
  angle: number
  lift: number
  drag: number
  /** Drag square to the stream. */
  plate: number
  /** Least drag, for flow from behind. */
  least: number
}

/** Lift at an angle of `stall.angle` to pi, as a magnitude with its sign for a positive side. */
export function liftPastStall(angle: number, stall: StallPoint): number {
  if (angle <= Math.PI / 2) return viternaLift(angle, stall)
  const mirrored = Math.PI - angle
  if (mirrored >= stall.angle) return -reversedLift * viternaLift(mirrored, stall)
  return (-reversedLift * stall.lift * mirrored) / stall.angle
}

/** Drag at an angle of `stall.angle` to pi. */
export function dragPastStall(angle: number, stall: StallPoint): number {
  if (angle <= Math.PI / 2) return viternaDrag(angle, stall)
  const mirrored = Math.PI - angle
  if (mirrored >= stall.angle) return viternaDrag(mirrored, stall)
  const rear = reversedDrag * stall.least
  const share = mirrored / stall.angle
  return rear + (stall.drag - rear) * share * share
}

function viternaLift(angle: number, stall: StallPoint): number {
  const sine = Math.sin(angle)
  const cosine = Math.cos(angle)
  const stallSine = Math.sin(stall.angle)
  const stallCosine = Math.cos(stall.angle)
  const excess = ((stall.lift - stall.plate * stallSine * stallCosine) * stallSine) / (stallCosine * stallCosine)
  return stall.plate * sine * cosine + (excess * cosine * cosine) / sine
}

function viternaDrag(angle: number, stall: StallPoint): number {
  const sine = Math.sin(angle)
  const stallSine = Math.sin(stall.angle)
  const excess = (stall.drag - stall.plate * stallSine * stallSine) / Math.cos(stall.angle)
  return stall.plate * sine * sine + excess * Math.cos(angle)
}
