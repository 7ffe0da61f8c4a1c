/** Small notebooks and ready stores for tests. */
import type { Processes } from '../../server/store/index.js'
import { FilesStore } from '../../server/store/index.js'
import { CellId, type Notebook } from '../../shared/contracts/index.js'
import type { LabFileSystem } from './file-system.js'

export const labFolder = '/data'

/** Processes by number; those in `alive` live. */
export function labProcesses(pid: number, alive: ReadonlySet<number> = new Set([pid])): Processes {
  return { own: { pid, started: 'lab' }, isAlive: (process) => alive.has(process.pid) }
}

export async function labStore(
  files: LabFileSystem,
  pid = 1,
  alive: ReadonlySet<number> = new Set(),
): Promise<FilesStore> {
  const store = new FilesStore({ files, folder: labFolder, processes: labProcesses(pid, alive) })
  await store.start()
  return store
}

export function sampleNotebook(title = 'Tern Watch', changes: Partial<Notebook> = {}): Notebook {
  return {
    format: 'hoverfolio notebook',
    version: 1,
    title,
    titleBlock: { question: 'How long can a 32 kg aircraft watch seabirds?' },
    cells: [
      { id: CellId.parse('about'), kind: 'rationale', source: ['## Aim', '', 'Endurance.'] },
      { id: CellId.parse('masses'), kind: 'sizing', source: ['const payload = 4 * u.kg'] },
    ],
    threads: [{ cell: 'masses', text: 'Is 4 kg enough?' }],
    revisions: [{ number: 'A' }],
    ...changes,
  }
}
