/** Bytes as base64 text, the form in which updates travel. */

export function toBase64(bytes: Uint8Array): string {
  let binary = ''
  // In slices: one call with a million arguments would overflow the stack.
  for (let start = 0; start < bytes.length; start += 8192)
    binary += String.fromCharCode(...bytes.subarray(start, start + 8192))
  return btoa(binary)
}

export function fromBase64(text: string): Uint8Array {
  const binary = atob(text)
  const bytes = new Uint8Array(binary.length)
  for (let index = 0; index < binary.length; index += 1) bytes[index] = binary.charCodeAt(index)
  return bytes
}
