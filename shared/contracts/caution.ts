/** The safety caution, worded once for screens, title blocks, exports and command output. */

export const cautionLine =
  'Concept estimate. Not a basis for flight, construction or certification; airworthiness rules, local codes and licensed engineers decide.'

export const cautionInFull: readonly string[] = [
  'These are estimates for concept studies only. They are not a basis for flight, construction or certification.',
  'High-voltage batteries, rotating blades and loss of thrust can kill.',
  'The applicable airworthiness rules, local codes and licensed or approved engineers decide.',
  'Where a method leaves the range of its data, the result says so beside the number.',
]
