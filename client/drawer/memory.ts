/** Whether the drawer of a notebook is open and at which view: kept while this tab of the browser lives. */

export interface DrawerMemory {
  /** The view that was open; `null` when it was closed. */
  read(): string | null
  write(view: string | null): void
}

export const forgetful: DrawerMemory = { read: () => null, write() {} }

export function drawerMemory(notebook: string, storage: Storage | undefined): DrawerMemory {
  const key = `hoverfolio drawer ${notebook}`
  if (storage === undefined) return forgetful
  return {
    read: () => attempt(() => storage.getItem(key)) ?? null,
    write: (view) => attempt(() => (view === null ? storage.removeItem(key) : storage.setItem(key, view))),
  }
}

/** Asking for the storage throws where the browser forbids it. */
export function sessionStorageOf(from: Window): Storage | undefined {
  return attempt(() => from.sessionStorage)
}

/** What cannot be kept is let go: it is a convenience. */
function attempt<T>(make: () => T): T | undefined {
  try {
    return make()
  } catch {
    return undefined
  }
}
