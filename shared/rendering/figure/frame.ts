/** Where the plot's field lies on the paper, and the way from display values to pixels. */
import type { DisplayAxis } from './axes.js'

export interface Frame {
  readonly width: number
  readonly height: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly left: number
  readonly x: DisplayAxis
  readonly y: DisplayAxis
  /** Unique in a page: begins the ids of patterns. */
  readonly id: string
}

export function pixelX(frame: Frame, value: number): number {
  return frame.left + shareAlong(frame.x, value) * (frame.width - frame.left - frame.right)
}

export function pixelY(frame: Frame, value: number): number {
  return frame.height - frame.bottom - shareAlong(frame.y, value) * (frame.height - frame.top - frame.bottom)
}

function shareAlong(axis: DisplayAxis, value: number): number {
  if (axis.logarithmic) return Math.log(value / axis.low) / Math.log(axis.high / axis.low)
  return (value - axis.low) / (axis.high - axis.low)
}

/** Width of text at the figures' size [px], on the wide side so that a fallback font fits as well. */
export function textWidth(text: string): number {
  return text.length * characterWidth
}

export const characterWidth = 6.1
export const textSize = 12

/** Both axes as long per unit; the shorter one gets more room, kept in the middle. */
export function drawnToScale(frame: Frame, tallest: number): Frame {
  const wide = frame.width - frame.left - frame.right
  const spanX = (frame.x.high - frame.x.low) * frame.x.factor
  const spanY = (frame.y.high - frame.y.low) * frame.y.factor
  const tall = Math.min(tallest, (wide * spanY) / spanX)
  const perPixel = Math.max(spanX / wide, spanY / tall)
  return {
    ...frame,
    height: tall + frame.top + frame.bottom,
    x: widened(frame.x, wide * perPixel),
    y: widened(frame.y, tall * perPixel),
  }
}

function widened(axis: DisplayAxis, span: number): DisplayAxis {
  const room = (span / axis.factor - (axis.high - axis.low)) / 2
  return { ...axis, low: axis.low - room, high: axis.high + room }
}
