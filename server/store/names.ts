/** Ids of new notebooks: made from a title, never a path, never one in use. */
import { NotebookId } from '../../shared/contracts/index.js'

const longest = 48

/** `Worked sizing of the Skerry Link` -> `worked-sizing-of-the-skerry-link`; text without any usable letter gives `notebook`. */
export function slugOf(wish: string): string {
  const words = wish
    .replace(/ß/g, 'ss')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, longest)
    .replace(/^-+|-+$/g, '')
  return words === '' ? 'notebook' : words
}

/** The slug itself, or with the first free number behind it. Names that differ only in case count as the same file. */
export function freeId(wish: string, isUsed: (id: string) => boolean): NotebookId {
  const slug = slugOf(wish)
  let candidate = slug
  for (let number = 2; isUsed(candidate); number += 1) candidate = `${slug}-${number}`
  return NotebookId.parse(candidate)
}
