/** Keys of the cell editor beyond those of every text field, in words. */
import { type KeyEntry, keyTable } from '../../shared/contracts/keys.js'

export const editorKeys: readonly KeyEntry[] = keyTable.filter(({ where }) => where === 'editor')

/** All keys as one description, for people who cannot see a list. */
export const keysInWords: string = editorKeys.map(({ keys, does }) => `${keys}: ${does}.`).join(' ')
