/** One cell, read without knowledge of the others: a function of its text alone, and so remembered by it. */
import { type Program, parse } from 'acorn'
import type { ErasedSource } from '../../../shared/contracts/index.js'
import { type Declaration, type Eraser, languageNames } from '../program/index.js'
import { readAssumptions } from './assumptions.js'
import { readDeclarations } from './declarations.js'
import { guessDeclarations } from './guess.js'
import { hiddenState } from './hidden-state.js'
import { refusedMembers } from './language-members.js'
import { createPlacer, type Place, type Placer } from './places.js'
import { type Problem, problem } from './problem.js'
import { refuse, refusedForms } from './refused-forms.js'
import { resolveScopes, type Scopes, type Use } from './scopes.js'
import { isDeeperThan } from './tree.js'
import { typeOnlyForm } from './type-only.js'

/** The first use of a free name. */
export interface FreeName {
  readonly name: string
  readonly place: Place
}

export interface CellReading {
  readonly code?: string
  readonly map?: string
  readonly declares: readonly Declaration[]
  readonly reads: readonly FreeName[]
  /** Free names that the cell assigns to. */
  readonly assigns: readonly FreeName[]
  readonly assumptions: readonly string[]
  /** Count only where `assumption` is the kernel's. */
  readonly assumptionProblems: readonly Problem[]
  readonly problems: readonly Problem[]
}

export async function readCell(source: string, erased: ErasedSource, erase: Eraser): Promise<CellReading> {
  if (!erased.ok) return unreadable(source, problem('SYNTAX', { reason: erased.message }, erased))
  if (source.startsWith('#!'))
    return unreadable(source, problem('SYNTAX', { reason: '"#!" does not fit here.' }, { line: 1, column: 1 }))
  const placer = createPlacer(erased.map)
  const program = parseCode(erased.code, placer)
  if ('code' in program) return unreadable(source, program)
  const typeOnly = await typeOnlyForm(source, erase)
  const scopes = resolveScopes(program)
  const { names, problems } = readAssumptions(program, scopes, placer)
  return {
    code: erased.code,
    map: erased.map,
    declares: readDeclarations(program, scopes, placer),
    ...freeNames(scopes, placer),
    assumptions: names,
    assumptionProblems: problems,
    problems: [
      ...(typeOnly === undefined ? [] : [typeOnly]),
      ...refusedForms(program, source, placer),
      ...refusedMembers(program, scopes, placer),
      ...hiddenState(scopes, placer),
    ],
  }
}

function unreadable(source: string, why: Problem): CellReading {
  return {
    declares: guessDeclarations(source),
    reads: [],
    assigns: [],
    assumptions: [],
    assumptionProblems: [],
    problems: [why],
  }
}

/** Trees are walked by functions that call themselves; nothing that a person writes comes near this depth. */
const deepestTree = 1000

/**
 * Reads the code as a script, since that is how it runs, with the liberties of a module, so that `await`, `import` and
 * `return` are found in the tree and get a sentence of their own.
 */
function parseCode(code: string, placer: Placer): Program | Problem {
  try {
    const program = parse(code, {
      ecmaVersion: 2023,
      sourceType: 'script',
      locations: true,
      ranges: true,
      allowAwaitOutsideFunction: true,
      allowImportExportEverywhere: true,
      allowReturnOutsideFunction: true,
    })
    return isDeeperThan(program, deepestTree) ? nestedTooDeeply() : program
  } catch (error) {
    return unparsed(code, error, placer)
  }
}

/** What acorn does not know is newer than the language of cells (esbuild has accepted it), or nested beyond measure. */
function unparsed(code: string, error: unknown, placer: Placer): Problem {
  const { pos, loc, message } = error as { pos?: number; loc?: { line: number; column: number }; message: string }
  if (pos === undefined || loc === undefined) return nestedTooDeeply()
  const place = placer.at({ line: loc.line, column: loc.column + 1 })
  const line = code.slice(code.lastIndexOf('\n', pos - 1) + 1, pos)
  if (code[pos] === '@') return refuse('decorator', place)
  const word = /\b(using|accessor)(\s+)$/.exec(line)
  if (word !== null)
    return refuse(word[1] === 'using' ? 'using' : 'accessor', { ...place, column: place.column - word[0].length })
  return problem('SYNTAX', { reason: `${message.replace(/ \(\d+:\d+\)$/, '')}.` }, place)
}

function nestedTooDeeply(): Problem {
  return problem('SYNTAX', { reason: 'The cell is nested too deeply to be read.' }, { line: 1, column: 1 })
}

function freeNames(scopes: Scopes, placer: Placer): { reads: FreeName[]; assigns: FreeName[] } {
  const free = scopes.uses.filter((use) => use.variable === undefined)
  const firsts = (uses: readonly Use[]): FreeName[] => {
    const byName = new Map<string, Use>()
    for (const use of uses) if (!byName.has(use.name)) byName.set(use.name, use)
    return [...byName.values()].map((use) => ({ name: use.name, place: placer.of(use.node) }))
  }
  return {
    reads: firsts(free.filter((use) => use.reads && !languageNames.has(use.name))),
    assigns: firsts(free.filter((use) => use.writes)),
  }
}
