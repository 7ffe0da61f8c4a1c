/**
 * The one registry of what can be wrong on the way from a cell to a number: code, and the sentence built from the data.
 * `errors.md` beside this file lists the same codes; a test keeps both equal. Errors of the kernel itself (a negative area, a
 * sizing that does not close) keep the kernel's own codes and pass through untouched.
 *
 * A cell is written `cell "ID"` everywhere, so that a page that numbers its cells can put the number in its place.
 */

const registry = {
  /* While a cell is read. */
  SYNTAX: (d: { reason: string }) => d.reason,
  FORM_REFUSED: (d: { form: string; remedy: string }) => `${d.form} cannot be used in a cell. ${d.remedy}`,
  NAME_TWICE: (d: { name: string; others: string }) =>
    `"${d.name}" is declared more than once: also in ${d.others}. A name has one owner; rename or remove one of them.`,
  NAME_OF_LANGUAGE: (d: { name: string }) => `"${d.name}" belongs to the language; choose another name.`,
  NAME_UNKNOWN: (d: { name: string; suggestion: string }) =>
    `No cell declares "${d.name}" and the kernel has no such name${d.suggestion === '' ? '.' : d.suggestion}`,
  NOT_IN_CELLS: (d: { name: string; reason: string }) => `"${d.name}" is not available in cells: ${d.reason}`,
  NOT_OWN_NAME: (d: { name: string; owner: string }) =>
    `"${d.name}" belongs to ${d.owner} and cannot be changed here; cells do not change each other's names. Declare a new name: const ${d.name}2 = ...`,
  ASSIGNED_UNDECLARED: (d: { name: string }) =>
    `"${d.name}" is given a value but never declared; write const ${d.name} = ... (or let, if it changes later in this cell).`,
  CYCLE: (d: { path: string }) =>
    `These cells go round in a circle and none can be first: ${d.path}. Break the circle: close it in one cell with sizing.close, or move one of the names to a cell of its own.`,
  ASSUMPTION_FORM: (d: { name: string }) =>
    `An assumption is declared at the top level of its cell and named like its constant: const ${d.name} = assumption('${d.name}', ...).`,

  /* Warnings: the cell runs. */
  KERNEL_NAME_OWNED: (d: { name: string }) =>
    `"${d.name}" is also a name of the kernel, which gives way in this notebook; rename it if the kernel's is wanted.`,
  HIDDEN_STATE: (d: { name: string; by: string }) =>
    `${d.by} changes "${d.name}", so what it returns depends on how often it was called before; return the value instead.`,

  /* While a program runs. */
  THROWN: (d: { reason: string }) => d.reason,
  TIME_LIMIT: (d: { milliseconds: number }) =>
    `The cell was still running after ${d.milliseconds / 1000} s and was ended. Look for a loop that does not end, or make the study smaller.`,
  MEMORY_LIMIT: (d: { megabytes: number }) =>
    `The cell needed more than ${d.megabytes} MB of memory and was ended. Keep fewer values at a time.`,
  OUTPUT_TOO_LARGE: (d: { bytes: number; limit: number }) =>
    `The result of the cell takes ${d.bytes} bytes; at most ${d.limit} are kept. Declare fewer or shorter values at the top level.`,
  STOPPED: () => 'The run was stopped before this cell was finished.',
  STACK_OVERFLOW: () =>
    'Functions called each other too deep, most likely without end. Look for a function that calls itself and never returns.',
  NOT_SHAREABLE: (d: { reason: string }) => d.reason,
  FIGURE_INVALID: (d: { number: number; problem: string }) =>
    `Figure ${d.number} of the cell cannot be drawn: ${d.problem}. Give finite numbers in SI and text labels.`,
  OUTPUT_INVALID: (d: { problem: string }) => `The result of the cell was not accepted: ${d.problem}.`,
  CODE_REFUSED: (d: { reason: string }) => `The cell's code was not run: ${d.reason}.`,
  EVALUATOR_LOST: (d: { reason: string }) =>
    `The evaluator ended while this cell was computing (${d.reason}) and was replaced. Compute again; if it happens again, the cell asks for more than the evaluator can give.`,

  /* A wrong call of the pipeline. */
  ASSUMPTION_UNKNOWN: (d: { name: string; suggestion: string; known: string }) =>
    `There is no assumption "${d.name}"${d.suggestion === '' ? '.' : d.suggestion} ${d.known === '' ? 'This notebook has no assumptions.' : `Its assumptions: ${d.known}.`}`,
  KERNEL_DIFFERS: (d: { wanted: string; present: string }) =>
    `The program was compiled for kernel ${d.wanted.slice(0, 12)}, but the evaluator holds ${d.present.slice(0, 12)}; reload the page, or build again.`,
  OVERRIDE_INVALID: (d: { name: string; value: string }) =>
    `The trial value ${d.value} for "${d.name}" is not a finite number; give a number in SI units.`,
} as const

export type PipelineCode = keyof typeof registry
export const pipelineCodes = Object.keys(registry) as readonly PipelineCode[]
export type PipelineData<C extends PipelineCode> = Parameters<(typeof registry)[C]>[0]

/** The sentence for a code and its data. */
export function pipelineMessage<C extends PipelineCode>(code: C, data: PipelineData<C>): string {
  return (registry[code] as (data: PipelineData<C>) => string)(data)
}

/** A wrong call of the pipeline, as thrown: an override that names no assumption. */
export class PipelineTrouble<C extends PipelineCode = PipelineCode> extends Error {
  override readonly name = 'PipelineTrouble'
  readonly code: C
  readonly data: PipelineData<C>

  constructor(code: C, data: PipelineData<C>) {
    super(pipelineMessage(code, data))
    this.code = code
    this.data = data
  }
}
