/** Mean skin-friction lines of a flat plate wetted on one side: plain functions of the Reynolds number. */

export const frictionMethods = [
  'laminar',
  'Prandtl-Schlichting',
  'Karman-Schoenherr',
  'ITTC-1957',
  'White',
  'fifth-root',
] as const
export type FrictionMethod = (typeof frictionMethods)[number]

/** Blasius: 1.328/sqrt(Re). */
export function laminarFriction(reynolds: number): number {
  return 1.328 / Math.sqrt(reynolds)
}

export function frictionOf(method: FrictionMethod, reynolds: number): number {
  switch (method) {
    case 'laminar':
      return laminarFriction(reynolds)
    case 'Prandtl-Schlichting':
      return 0.455 / Math.log10(reynolds) ** 2.58
    case 'Karman-Schoenherr':
      return karmanSchoenherr(reynolds)
    case 'ITTC-1957':
      return 0.075 / (Math.log10(reynolds) - 2) ** 2
    case 'White':
      return 0.523 / Math.log(0.06 * reynolds) ** 2
    case 'fifth-root':
      return 0.074 / reynolds ** 0.2
  }
}

/**
 * 1/sqrt(C) = 4.13 log10(Re C), solved for y = 1/sqrt(C) by Newton's method.
 *
 * y + 8.26 log10 y rises without bend back, so Newton from above the root comes down steadily; eight steps leave rounding only.
 */
function karmanSchoenherr(reynolds: number): number {
  const right = 4.13 * Math.log10(reynolds)
  let y = right
  for (let step = 0; step < 8; step += 1) {
    const excess = y + 8.26 * Math.log10(y) - right
    y = Math.max(0.1 * y, y - excess / (1 + 8.26 / (Math.LN10 * y)))
  }
  return 1 / (y * y)
}
