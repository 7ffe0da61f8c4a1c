/** How the child process is started: each flag takes something away from it. */

/** Arguments for `node`; `childText` is the compiled text of `child.ts`, and `longestRun` [ms] when it gives a run up by itself. */
export function childArguments(childText: string, megabytes: number, longestRun: number): string[] {
  return [
    '--no-warnings',
    // No file, no child process, no worker thread, no add-on: nothing is allowed back.
    permissionFlag(process.versions.node),
    // Neither the outer realm can make code from text ...
    '--disallow-code-generation-from-strings',
    // ... nor can its intrinsics be changed, should an object of it ever be reached from a cell.
    '--frozen-intrinsics',
    // Lets the child answer a dynamic import itself, with a text; without it Node rejects with an object of the outer realm.
    '--experimental-vm-modules',
    `--max-old-space-size=${megabytes}`,
    '--input-type=module',
    '--eval',
    childText,
    String(longestRun),
  ]
}

/** The permission model lost its prefix in Node 22.13 and 23.5. */
export function permissionFlag(version: string): '--permission' | '--experimental-permission' {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  const settled = major >= 24 || (major === 23 && minor >= 5) || (major === 22 && minor >= 13)
  return settled ? '--permission' : '--experimental-permission'
}
