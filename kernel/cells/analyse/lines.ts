/** The lines of a source, by any of the language's line ends. */
export const linesOf = (source: string): readonly string[] => source.split(/\r\n|[\n\r\u2028\u2029]/)
