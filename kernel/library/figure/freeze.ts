import type { Figure } from '../../../shared/contracts/figure.js'

/** Freezes a figure through: it is data that crosses cells. Lists of numbers are frozen too. */
export function freezeFigure(figure: Figure): Figure {
  freeze(figure)
  return figure
}

function freeze(value: unknown): void {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return
  Object.freeze(value)
  for (const part of Object.values(value)) freeze(part)
}
