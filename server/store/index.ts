/** What keeps notebooks. */
export { asTrouble, describeFailure } from './failure.js'
export type { FileFacts, FileHandle, FileSystem } from './file-system.js'
export { FilesStore, type FilesStoreOptions } from './files-store.js'
export { LeaseHeld, LeaseLost, machineProcesses, type Processes, type ProcessIdentity } from './lease.js'
export { nodeFileSystem } from './node-file-system.js'
export type { ListedNotebook, Listing, LiveState, LiveUpdate, RefusedFile, Store } from './store.js'
export { Turns } from './turns.js'
