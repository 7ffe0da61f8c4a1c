/** One record of the live log: sequence, mark, perhaps the hash of a text brought in from outside, the update. */

export interface LiveRecord {
  readonly sequence: number
  readonly update: Uint8Array
  /** SHA-256 in hexadecimal. */
  readonly broughtIn?: string
}

const headBytes = 9
const hashBytes = 32

export function encodeRecord({ sequence, update, broughtIn }: LiveRecord): Uint8Array {
  const hash = broughtIn === undefined ? new Uint8Array() : Buffer.from(broughtIn, 'hex')
  const bytes = new Uint8Array(headBytes + hash.length + update.length)
  const view = new DataView(bytes.buffer)
  view.setFloat64(0, sequence)
  view.setUint8(8, hash.length === 0 ? 0 : 1)
  bytes.set(hash, headBytes)
  bytes.set(update, headBytes + hash.length)
  return bytes
}

/** `undefined` for a record of a kind this version does not know. */
export function decodeRecord(bytes: Uint8Array): LiveRecord | undefined {
  if (bytes.length < headBytes) return undefined
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const sequence = view.getFloat64(0)
  const kind = view.getUint8(8)
  if (kind === 0) return { sequence, update: bytes.subarray(headBytes) }
  if (kind !== 1 || bytes.length < headBytes + hashBytes) return undefined
  const broughtIn = Buffer.from(bytes.subarray(headBytes, headBytes + hashBytes)).toString('hex')
  return { sequence, update: bytes.subarray(headBytes + hashBytes), broughtIn }
}
