/**
 * Erasing types with esbuild, wherever it runs: the package's `transform` is handed in, so that this file neither starts a
 * compiler nor knows a platform. Types are only taken away; nothing is minified, dropped or lowered, so that what runs is what
 * is shown.
 */
import type { ErasedSource } from '../../../shared/contracts/index.js'
import { BoundedCache, type Eraser } from '../program/index.js'
import { readTransformFailure } from './transform-failure.js'

/**
 * What esbuild is asked for. `alwaysStrict` makes it read cells as the strict code they run as; `verbatimModuleSyntax` keeps
 * imports in the output, so that they can be refused; `esnext` leaves new syntax as it is, for the analyser to judge.
 */
export const eraseOptions = {
  loader: 'ts',
  target: 'esnext',
  sourcemap: 'external',
  sourcesContent: false,
  sourcefile: 'cell.ts',
  treeShaking: false,
  minify: false,
  keepNames: false,
  charset: 'utf8',
  legalComments: 'none',
  logLevel: 'silent',
  tsconfigRaw: {
    compilerOptions: { alwaysStrict: true, useDefineForClassFields: true, verbatimModuleSyntax: true },
  },
} as const

export type EraseOptions = typeof eraseOptions

/** The part of esbuild's `transform` that erasing needs; `esbuild-wasm` has it in Node and in the browser. */
export type Transform = (
  source: string,
  options: EraseOptions,
) => Promise<{ readonly code: string; readonly map: string }>

/**
 * Makes an eraser that remembers the texts it has seen (the newest `capacity` of them).
 *
 * @throws what `transform` throws when it failed for another reason than the source (a compiler that did not start); such an
 *   outcome is not remembered.
 */
export function createEraser(transform: Transform, capacity = 4000): Eraser {
  const erased = new BoundedCache<string, Promise<ErasedSource>>(capacity)
  const eraseOne = (source: string): Promise<ErasedSource> => {
    const known = erased.get(source)
    if (known !== undefined) return known
    const running = erase(transform, source)
    erased.set(source, running)
    running.catch(() => erased.delete(source))
    return running
  }
  return (sources) => Promise.all(sources.map(eraseOne))
}

async function erase(transform: Transform, source: string): Promise<ErasedSource> {
  if (nestsDeeperThan(deepestBrackets, source))
    return { ok: false, line: 1, column: 1, message: `Brackets are nested more than ${deepestBrackets} deep.` }
  try {
    const { code, map } = await transform(source, eraseOptions)
    return { ok: true, code, map }
  } catch (failure) {
    const place = readTransformFailure(failure)
    if (place === undefined) throw failure
    return { ok: false, ...place }
  }
}

/** Beyond this the compiler's own recursion comes near its end; no person nests a fiftieth of it. */
const deepestBrackets = 500

/** Counts brackets in texts and comments too, which is the safe side. */
function nestsDeeperThan(limit: number, source: string): boolean {
  let depth = 0
  for (let index = 0; index < source.length; index += 1) {
    const character = source[index]
    if (character === '(' || character === '[' || character === '{') depth += 1
    else if ((character === ')' || character === ']' || character === '}') && depth > 0) depth -= 1
    if (depth > limit) return true
  }
  return false
}
