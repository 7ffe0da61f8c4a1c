/** What the bar says while a run lasts. DOM-free. */

export interface RunProgress {
  /** Cells of the run that have their result. */
  readonly done: number
  readonly of: number
  /** Number in the margin of the cell that computes now. */
  readonly cell?: string
}

/** `computing cell 12, 3 of 140 done, 4 s` */
export function progressWords({ done, of, cell }: RunProgress, milliseconds: number): string {
  const where = cell === undefined ? 'computing' : `computing cell ${cell}`
  return `${where}, ${done} of ${of} done, ${durationWords(milliseconds)}`
}

/** `4 s`, `2 min 5 s` */
function durationWords(milliseconds: number): string {
  const seconds = Math.floor(milliseconds / 1000)
  return seconds < 60 ? `${seconds} s` : `${Math.floor(seconds / 60)} min ${seconds % 60} s`
}
