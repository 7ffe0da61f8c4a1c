/** Messages name cells by id; readers know them by the number in the margin. */
import type { CellResult, Finding } from '../../contracts/index.js'

/** `cell "a"` as `cell 3`; ids of cells that are not there stay. */
export function withCellNumbers(text: string, numbers: ReadonlyMap<string, string>): string {
  return text.replace(/\bcell "([A-Za-z0-9_-]{1,64})"/g, (whole, id: string) => {
    const number = numbers.get(id)
    return number === undefined ? whole : `cell ${number}`
  })
}

/** The result with its error in words of the margin; the same object when nothing changes. */
export function numberedResult(result: CellResult, numbers: ReadonlyMap<string, string>): CellResult {
  const { error } = result
  if (error === undefined) return result
  const message = withCellNumbers(error.message, numbers)
  return message === error.message ? result : { ...result, error: { ...error, message } }
}

export function numberedFinding(finding: Finding, numbers: ReadonlyMap<string, string>): Finding {
  return { ...finding, message: withCellNumbers(finding.message, numbers) }
}
