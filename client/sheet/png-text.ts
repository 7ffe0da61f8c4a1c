/** Words inside a PNG file: international text chunks (PNG specification, 3rd edition, 11.3.3.4), put before the picture's data. */

const signature = 8
/** The first chunk, IHDR: 13 bytes of data, 12 around them. */
const header = 25

/** The file with the words by keyword; keywords are plain letters. */
export function withPngText(png: Uint8Array, words: Readonly<Record<string, string>>): Uint8Array<ArrayBuffer> {
  const chunks = Object.entries(words).map(([keyword, text]) => textChunk(keyword, text))
  const made = new Uint8Array(png.length + chunks.reduce((sum, chunk) => sum + chunk.length, 0))
  let at = signature + header
  made.set(png.subarray(0, at))
  for (const chunk of chunks) {
    made.set(chunk, at)
    at += chunk.length
  }
  made.set(png.subarray(signature + header), at)
  return made
}

function textChunk(keyword: string, text: string): Uint8Array {
  const encoder = new TextEncoder()
  // Keyword, end; not compressed, method 0; no language, no translated keyword.
  const data = [...encoder.encode(keyword), 0, 0, 0, 0, 0, ...encoder.encode(text)]
  const body = Uint8Array.from([...encoder.encode('iTXt'), ...data])
  const chunk = new Uint8Array(body.length + 8)
  const view = new DataView(chunk.buffer)
  view.setUint32(0, data.length)
  chunk.set(body, 4)
  view.setUint32(body.length + 4, crc32(body))
  return chunk
}

/** CRC-32 of ISO 3309, bit by bit: a few hundred bytes at a time. */
function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff
  for (const byte of bytes) {
    rest ^= byte
    for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1
  }
  return (rest ^ 0xffffffff) >>> 0
}
