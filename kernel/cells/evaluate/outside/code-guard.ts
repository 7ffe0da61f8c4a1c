/**
 * The one form of the language that reaches out of a realm by itself: `import(...)` and `import.meta`. Analysis refuses it in
 * cells; this looks again at the text that is about to run, because in Node a failed `import(...)` hands the caller an object
 * from outside the sandbox.
 */
import { parse } from 'acorn'
import { pipelineMessage } from '../../program/index.js'

/** A sentence when the code must not run. The word `import` cannot be spelled another way, so other code is not even parsed. */
export function refusedCode(code: string): string | undefined {
  if (!code.includes('import')) return undefined
  try {
    const program = parse(code, { ecmaVersion: 'latest', sourceType: 'script' })
    return holdsImport(program) ? sentence('it loads code with import') : undefined
  } catch (fault) {
    return sentence(`it cannot be read: ${(fault as Error).message}`)
  }
}

function sentence(reason: string): string {
  return pipelineMessage('CODE_REFUSED', { reason })
}

/** Walks the tree with a list instead of recursion: depth is the author's choice. */
function holdsImport(root: unknown): boolean {
  const waiting: unknown[] = [root]
  while (waiting.length > 0) {
    const node = waiting.pop()
    if (typeof node !== 'object' || node === null) continue
    const { type, meta } = node as { type?: unknown; meta?: { name?: unknown } }
    if (type === 'ImportExpression' || (type === 'MetaProperty' && meta?.name === 'import')) return true
    waiting.push(...Object.values(node))
  }
  return false
}
