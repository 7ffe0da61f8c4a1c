/** Worst corner and P90 of all requirements, worked out at the reader's wish. Loaded then: the engines behind it are large. DOM-free. */
import { drawSamples, runCorners, runSpread, type Tools } from '../../kernel/cells/evidence/index.js'
import type { RequirementSureness, SheetView } from '../../shared/rendering/page.js'
import { AskedNumbers, type AskedNumbersSources } from '../asked/asked-numbers.js'
import { assumptionsOf, trialsOf } from '../asked/edition.js'
import type { Turn } from '../asked/one-at-a-time.js'

/** Enough to tell 90 % from 95 %; a question about one number takes more. */
const samples = 512

/** `learn` is told what is known so far: after a stop, that stays. */
export async function workOutSureness(
  sources: AskedNumbersSources,
  { signal, onProgress }: Turn,
  learn: (found: RequirementSureness) => void,
): Promise<void> {
  const view = sources.view()
  const assumptions = assumptionsOf(view)
  const trials = trialsOf(assumptions)
  const evaluator = await new AskedNumbers(sources).open(
    { names: [], requirements: requirementCells(view) },
    { signal },
  )
  const tools: Tools = { evaluateMany: (points) => evaluator.evaluateMany(points, signal), signal, onProgress }
  const uncertain = assumptions.some(({ low, distribution }) => low !== undefined || distribution !== undefined)
  const corners = uncertain ? { corners: await runCorners(assumptions, trials, tools) } : {}
  if (!signal.aborted) learn(corners)
  if (signal.aborted || assumptions.every(({ distribution }) => distribution === undefined)) return
  const sampled = new Set(assumptions.filter(({ distribution }) => distribution !== undefined).map(({ name }) => name))
  const base = Object.fromEntries(Object.entries(trials).filter(([name]) => !sampled.has(name)))
  const request = { assumptions, target: '', base, count: samples }
  const { requirements, stopped } = await runSpread(request, drawSamples(request), tools)
  if (!stopped) learn({ ...corners, spreads: requirements })
}

function requirementCells(view: SheetView) {
  return view.cells.flatMap(({ id, result }) => ((result?.requirements.length ?? 0) > 0 ? [id] : []))
}
