/** Sizes beyond which input is refused, in one place so that messages, schemas and tests agree. */
export const limits = {
  /** A notebook file. Shipped notebooks are under 100 kB; 8 MB leaves room for years of review threads. */
  notebookBytes: 8 * 1024 * 1024,
  /** Nesting of a notebook's JSON; the format itself needs six levels. */
  jsonDepth: 32,
  cells: 1000,
  /** One cell's source. */
  sourceCharacters: 200_000,
  titleCharacters: 200,
  /** One Yjs update from one client. */
  updateBytes: 1024 * 1024,
  /** Named values of one cell. */
  cellValues: 2000,
  /** Encoded results of one cell; beyond it the cell says its output is too large. */
  resultBytes: 2 * 1024 * 1024,
  /** Time one run may take before it is ended. */
  evaluationMilliseconds: 10_000,
  /** Memory of the isolated evaluator. */
  evaluationMegabytes: 512,
} as const
