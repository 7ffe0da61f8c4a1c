/**
 * Resident memory of the child, watched from outside: `--max-old-space-size` bounds objects and text but not array buffers, and
 * a child in an endless loop cannot watch itself.
 */
import { execFile } from 'node:child_process'
import { readFile } from 'node:fs/promises'

const interval = 25

/** Calls `onExceeded` once if the process comes to hold more than `megabytes`; the function returned ends the watch. */
export function watchMemory(processId: number, megabytes: number, onExceeded: () => void): () => void {
  let over = false
  const look = async () => {
    const held = await residentMegabytes(processId)
    if (over) return
    if (held !== undefined && held > megabytes) {
      over = true
      onExceeded()
    } else timer = setTimeout(look, interval)
  }
  let timer = setTimeout(look, interval)
  return () => {
    over = true
    clearTimeout(timer)
  }
}

/** [MB]; undefined when it cannot be told (the process has just ended). */
export async function residentMegabytes(processId: number): Promise<number | undefined> {
  try {
    const status = await readFile(`/proc/${processId}/status`, 'utf8')
    const kilobytes = /^VmRSS:\s+(\d+) kB/m.exec(status)?.[1]
    return kilobytes === undefined ? undefined : Number(kilobytes) / 1024
  } catch {
    return process.platform === 'linux' || process.platform === 'win32' ? undefined : askProcessList(processId)
  }
}

/** Systems without /proc. */
function askProcessList(processId: number): Promise<number | undefined> {
  return new Promise((resolve) =>
    execFile('ps', ['-o', 'rss=', '-p', String(processId)], (fault, output) =>
      resolve(fault === null && /^\s*\d+\s*$/.test(output) ? Number(output) / 1024 : undefined),
    ),
  )
}
