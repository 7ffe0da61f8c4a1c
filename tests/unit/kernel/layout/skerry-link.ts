/** The invented Skerry Link: eight lift rotors in line on two booms, within 14 m. */
import { preloaded } from '../../../../kernel/library/index.js'

export const skerryLinkOptions = {
  rotorRadius: 1.3,
  rotorGap: 0.1,
  gapAhead: 0.12,
  gapBehind: 0.12,
  wing: { area: 15, aspectRatio: 11 },
  body: { length: 6.6, width: 1.5, height: 1.5 },
  tail: { area: 3.2, arm: 6.79, finArea: 1.4 },
  propellers: [{ radius: 0.95 }],
} as const

export const skerryLink = preloaded.layout.liftPlusCruise(skerryLinkOptions)
