/** How far a run is, on one line of a terminal that is wiped at the end; nothing where the output goes to a file. */

export interface Terminal {
  readonly isTTY?: boolean
  write(text: string): unknown
}

export function showProgress(name: string, terminal: Terminal): (done: number, asked: number) => void {
  return (done, asked) => {
    if (terminal.isTTY !== true) return
    const words = `${name}: ${done} of ${asked}`
    terminal.write(done < asked ? `\r${words}` : `\r${' '.repeat(words.length)}\r`)
  }
}
