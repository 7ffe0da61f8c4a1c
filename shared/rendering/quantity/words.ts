/** Names of code as a reader says them. */

/**
 * `grossMass` is `gross mass`, `liftToDrag` is `lift to drag`, `CLmax` and `E` stay, `wing_area` is `wing area`.
 * Runs of capitals and single letters are symbols and keep their case.
 */
export function humaniseName(name: string): string {
  const words = name
    .replace(/^\$+|^_+/, '')
    .split(/[_$\s]+|(?<=[a-z])(?=[A-Z])|(?<=[0-9])(?=[A-Z][a-z])|(?<=[A-Z]{2})(?=[A-Z][a-z]{2})|(?<=[a-z]{2})(?=\d)/)
    .filter((word) => word !== '')
  if (words.length === 0) return name
  return words.map((word) => (/^[A-Z][a-z]+$/.test(word) && words.length > 1 ? word.toLowerCase() : word)).join(' ')
}

/** `1 line`, `18 lines`. */
export function countOf(count: number, singular: string, plural = `${singular}s`): string {
  return `${count} ${count === 1 ? singular : plural}`
}
