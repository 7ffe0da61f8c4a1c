/**
 * Records in a file: length, CRC-32, payload. A reader takes whole records until the first one that is short or damaged;
 * after a kill that is the torn tail, which holds nothing acknowledged.
 */
import { crc32 } from 'node:zlib'

const headBytes = 8

export function writeFrame(payload: Uint8Array): Uint8Array {
  const frame = new Uint8Array(headBytes + payload.length)
  const view = new DataView(frame.buffer)
  view.setUint32(0, payload.length)
  view.setUint32(4, crc32(payload))
  frame.set(payload, headBytes)
  return frame
}

export interface Frames {
  readonly payloads: readonly Uint8Array[]
  /** Bytes up to the end of the last whole record. */
  readonly validBytes: number
}

export function readFrames(bytes: Uint8Array): Frames {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const payloads: Uint8Array[] = []
  let position = 0
  while (position + headBytes <= bytes.length) {
    const length = view.getUint32(position)
    const end = position + headBytes + length
    // An empty payload is never written; a run of zeros (a hole left by a cut) would read as one.
    if (length === 0 || end > bytes.length) break
    const payload = bytes.subarray(position + headBytes, end)
    if (crc32(payload) !== view.getUint32(position + 4)) break
    payloads.push(payload)
    position = end
  }
  return { payloads, validBytes: position }
}
