/** The trace of a number of a notebook: the text is read, the part of the program that counts is found, and its names are tried. */
import type { AssumptionRecord, Point, Trace } from '../../../../shared/contracts/index.js'
import type { NumbersHost, NumbersOptions, Program, StopSignal, WantedNumbers } from '../../program/index.js'
import { type ReadProgram, sliceProgram } from '../slice/index.js'
import { type HandledProgram, withHandles } from './handles.js'
import { runTrace, traceBefore } from './trace.js'
import { type NumberPlace, namesApart, readUpstream, type UpstreamName } from './upstream.js'

export interface TraceOptions {
  readonly read: ReadProgram
  readonly target: NumberPlace
  /** Of the notebook. */
  readonly assumptions: readonly AssumptionRecord[]
  /** Trial values in force. */
  readonly trials?: Point
  readonly signal?: StopSignal
  /** Points evaluated so far and points asked for so far; more may be asked for. */
  readonly onProgress?: (done: number, asked: number) => void
  /** Numbers that are known already, so that there is something to read at once. */
  readonly known?: Readonly<Record<string, number>>
  /** The trace so far: first as the text has it, then as things are found out. */
  readonly onTrace?: (trace: Trace) => void
}

/** @throws EvidenceTrouble where the number does not compute as it stands */
export async function traceNumber(options: TraceOptions, host: NumbersHost): Promise<Trace> {
  const { read, target, assumptions, trials = {}, signal, onProgress, known = {}, onTrace } = options
  const wanted: WantedNumbers = { names: [target], requirements: [] }
  const stop: NumbersOptions = signal === undefined ? {} : { signal }
  const upstream = readUpstream(read, target)
  const request = { target: target.name, assumptions, base: trials }
  onTrace?.(traceBefore({ ...request, names: upstream, values: known, handled: new Set() }))
  const slice = sliceProgram(read, wanted)
  const reaching = cellAssumptions(read, target)
  const unseen = reaching.filter((name) => !upstream.some((one) => one.name === name))
  const probes = probesFor(assumptions, unseen, trials)
  const sliced = await agrees([slice, read.program], probes, wanted, host, stop)
  const program = sliced ? slice : read.program
  const names = sliced ? upstream : [...apartNames(unseen, read), ...upstream]
  const values = await valuesOf(program, names, trials, host, stop)
  const { program: handledProgram, handled } = await checkedHandles({ ...read, program }, values, wanted, trials, host)
  return runTrace(
    { ...request, names, values, handled },
    {
      evaluateMany: (points) => host.evaluateNumbers(program, points, wanted, stop),
      evaluateHandled: (points) => host.evaluateNumbers(handledProgram, points, wanted, stop),
      ...stop,
      ...(onProgress === undefined ? {} : { onProgress }),
      ...(onTrace === undefined ? {} : { onTrace }),
    },
  )
}

/** Assumptions of the cell of the number and of all cells above it. */
function cellAssumptions({ program }: ReadProgram, { cell: target }: NumberPlace): readonly string[] {
  const needed = new Set([target])
  const names: string[] = []
  for (const { id, reads, assumptions } of program.cells.toReversed()) {
    if (!needed.has(id)) continue
    for (const { from } of reads) needed.add(from)
    names.unshift(...assumptions)
  }
  return names
}

function apartNames(unseen: readonly string[], { graph }: ReadProgram): readonly UpstreamName[] {
  return unseen.flatMap((name) => {
    const owner = graph.owner.get(name)
    return namesApart(
      name,
      graph.cells.find(({ id }) => id === owner),
    )
  })
}

/** As it stands; all that the text leads to 1 % more or less; all the others at their ends, or 10 % more or less. */
function probesFor(
  assumptions: readonly AssumptionRecord[],
  unseen: readonly string[],
  trials: Point,
): readonly Point[] {
  const apart = new Set(unseen)
  const all = assumptions.flatMap(({ name, value, low, high }) => {
    const held = trials[name] ?? Number(value)
    if (!Number.isFinite(held)) return []
    const ends = typeof low === 'number' && typeof high === 'number' ? [low, high] : [0.9 * held, 1.1 * held]
    return [{ name, ends: apart.has(name) ? ends : [0.99 * held, 1.01 * held] }]
  })
  const point = (names: typeof all, at: 0 | 1): Point => ({
    ...trials,
    ...Object.fromEntries(names.map(({ name, ends }) => [name, ends[at] ?? 0])),
  })
  const others = all.filter(({ name }) => apart.has(name))
  const led = all.filter(({ name }) => !apart.has(name))
  return [trials, point(others, 0), point(others, 1), point(led, 0), point(led, 1)]
}

/**
 * Whether the part gives what the whole cells give. Where the whole has failed beside the number it says nothing about the number, so only
 * numbers are held against each other.
 */
async function agrees(
  [part, whole]: readonly [Program, Program],
  points: readonly Point[],
  wanted: WantedNumbers,
  host: NumbersHost,
  options: NumbersOptions,
): Promise<boolean> {
  const one = await host.evaluateNumbers(part, points, wanted, options)
  const other = await host.evaluateNumbers(whole, points, wanted, options)
  const [target] = wanted.names
  return other.every(({ numbers }, at) => {
    const value = target === undefined ? undefined : numbers[target.name]
    return value === undefined || Object.is(one[at]?.numbers[target?.name ?? ''], value)
  })
}

async function valuesOf(
  program: Program,
  names: readonly UpstreamName[],
  trials: Point,
  host: NumbersHost,
  options: NumbersOptions,
): Promise<Readonly<Record<string, number>>> {
  const wanted = { names: names.map(({ name, cell }) => ({ name, cell })), requirements: [] }
  const [outcome] = await host.evaluateNumbers(program, [trials], wanted, options)
  return Object.fromEntries(Object.entries(outcome?.numbers ?? {}).filter(([, value]) => Number.isFinite(value)))
}

/** Setting nothing must change nothing; where it does, nothing is set. */
async function checkedHandles(
  read: ReadProgram,
  values: Readonly<Record<string, number>>,
  wanted: WantedNumbers,
  trials: Point,
  host: NumbersHost,
): Promise<HandledProgram> {
  const made = withHandles(read, new Set(Object.keys(values)))
  const [outcome] = made.handled.size === 0 ? [] : await host.evaluateNumbers(made.program, [trials], wanted)
  const [target] = wanted.names
  const same = target !== undefined && Object.is(outcome?.numbers[target.name], values[target.name])
  return same ? made : { program: read.program, handled: new Set() }
}
