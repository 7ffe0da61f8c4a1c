/** Where a method stands: its name is its anchor on the page of methods. */

export const methodsPath = '/methods'

/** `/methods#rotor.hover` */
export function methodAddress(name: string): string {
  return `${methodsPath}#${encodeURIComponent(name)}`
}

/** The method that an address leads to; `undefined` for any other address. */
export function methodOfAddress(address: string): string | undefined {
  const match = /^(?:https?:\/\/[^/]+)?\/methods#([\w.%-]+)$/.exec(address)
  if (match?.[1] === undefined) return undefined
  try {
    return decodeURIComponent(match[1])
  } catch {
    return undefined
  }
}
