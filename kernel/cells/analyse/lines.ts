/** A line of a source, counted from 1; empty when there is none. */
export function lineAt(source: string, line: number): string {
  return source.split(/\r\n|[\n\r\u2028\u2029]/)[line - 1] ?? ''
}
