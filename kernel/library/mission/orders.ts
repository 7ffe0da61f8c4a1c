/** What the segments of one mission are told alike. */

export interface Orders {
  readonly method: string
  /** Along the path, from behind positive; where a segment says nothing. */
  readonly tailwind: number
  /** Over ground, of a cruise without time and distance; negative where the others already fly further than the sector. */
  readonly openDistance: number
}

/** Climbs are flown in layers no higher than this, over which air changes little [m]. */
export const layer = 500
