/** Branded identifiers: a cell's id can never be passed where a fingerprint is meant. */
import { z } from 'zod'

const word = /^[A-Za-z0-9_-]{1,64}$/

/** Names one cell for as long as the notebook lives; never reused, never derived from its position. */
export const CellId = z.string().regex(word, 'an id is 1 to 64 letters, digits, hyphens or underscores').brand('CellId')
export type CellId = z.infer<typeof CellId>

/** Names one notebook in the store; also its file name there, so it holds no dots or slashes. */
export const NotebookId = z
  .string()
  .regex(word, 'an id is 1 to 64 letters, digits, hyphens or underscores')
  .brand('NotebookId')
export type NotebookId = z.infer<typeof NotebookId>

/** SHA-256 in hexadecimal over a cell's source, the fingerprints upstream of it and the kernel's hash. */
export const Fingerprint = z
  .string()
  .regex(/^[0-9a-f]{64}$/, 'a fingerprint is 64 hexadecimal digits')
  .brand('Fingerprint')
export type Fingerprint = z.infer<typeof Fingerprint>

/** Names one life of a live document. A client that knows another epoch rebases its text instead of merging. */
export const Epoch = z
  .string()
  .regex(word, 'an epoch is 1 to 64 letters, digits, hyphens or underscores')
  .brand('Epoch')
export type Epoch = z.infer<typeof Epoch>
