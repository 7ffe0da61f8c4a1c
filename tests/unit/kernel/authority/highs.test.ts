/** Trims of random plans against HiGHS, an independent solver: least peaks by its linear programs, thrusts by its quadratic ones. */
import highsLibrary from 'highs'
import { beforeAll, describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { randomPlan, seededShare } from './plans.js'

const { authority } = preloaded
const axes = ['lift', 'roll', 'pitch', 'yaw'] as const
// Its types are those of its CommonJS form, in which the function is a member; what an ES module gets is the function itself.
const loadHighs = highsLibrary as unknown as typeof highsLibrary.default
type Solver = Awaited<ReturnType<typeof loadHighs>>
let highs: Solver

beforeAll(async () => {
  highs = await loadHighs()
})

interface Rows {
  readonly rows: readonly (readonly number[])[]
  readonly sums: readonly number[]
  readonly limits: readonly number[]
}

const sumText = (row: readonly number[]) =>
  row.map((value, at) => `${value < 0 ? '-' : '+'} ${Math.abs(value)} f${at}`).join(' ')

function solve({ rows, sums, limits }: Rows, objective: string, peakLimit: string) {
  const text = [
    'Minimize',
    ` obj: ${objective}`,
    'Subject To',
    ...rows.map((row, at) => ` e${at}: ${sumText(row)} = ${sums[at]}`),
    ...limits.map((_, at) => ` p${at}: f${at} - t <= 0`),
    'Bounds',
    ...limits.map((limit, at) => ` 0 <= f${at} <= ${limit}`),
    ` ${peakLimit}`,
    'End',
  ].join('\n')
  return highs.solve(text, { primal_feasibility_tolerance: 1e-9, dual_feasibility_tolerance: 1e-9 })
}

/** Sets that have shrunk to a point are too much for its quadratic programs now and then. */
function maybeSolve(...problem: Parameters<typeof solve>) {
  try {
    return solve(...problem)
  } catch {
    return undefined
  }
}

/** The same problem in numbers of about 1, for the other solver. */
function rowsOf(plan: ReturnType<typeof randomPlan>): Rows {
  const { rotors, weight, lost, centreOfGravity } = plan
  const columns = authority.effectiveness({ rotors, centreOfGravity })
  const alive = [...rotors.keys()].filter((at) => !lost.includes(at))
  const scale = axes.map((axis) => Math.max(...columns[axis].map(Math.abs)) || 1)
  return {
    rows: axes.map((axis, row) => alive.map((at) => (columns[axis][at] as number) / (scale[row] as number))),
    sums: [10 / (scale[0] as number), 0, 0, 0],
    limits: alive.map((at) => (10 * (rotors[at]?.maxThrust as number)) / weight),
  }
}

describe('authority.trim(options) against HiGHS', () => {
  it('agrees on feasibility and least peak for 120 random plans of 2 to 24 rotors, none to two lost, with cant and off-centre', () => {
    const share = seededShare(20)
    let feasible = 0
    for (let run = 0; run < 120; run += 1) {
      const plan = randomPlan(share)
      const found = authority.trim(plan)
      const other = solve(rowsOf(plan), 't', '0 <= t')
      expect({ run, feasible: found.feasible }).toEqual({ run, feasible: other.Status === 'Optimal' })
      // A demand inside or outside the attainable set by more than rounding must be called so.
      if (found.index > 1e-6 * plan.weight) expect(found.feasible).toBe(true)
      if (!found.feasible) {
        expect(found.cannotHold.length).toBeGreaterThan(0)
        continue
      }
      feasible += 1
      expect((found.peakShare as number) / (other.ObjectiveValue / 10)).toBeCloseTo(1, 7)
      for (const axis of axes) expect(Math.abs(found.leftOver[axis])).toBeLessThan(1e-7 * plan.weight)
    }
    expect(feasible).toBeGreaterThan(50)
  })

  it('gives, under the least peak, the thrusts of least sum of squares', () => {
    const share = seededShare(4)
    let compared = 0
    for (let run = 0; run < 120; run += 1) {
      const plan = randomPlan(share)
      const found = authority.trim(plan)
      if (!found.feasible) continue
      const rows = rowsOf(plan)
      const squares = rows.limits.map((_, at) => `+ 2 f${at}^2`).join(' ')
      // What the slack gains grows with it: a hair of 1e-8 is worth up to 1e-5 of the sum.
      const peak = 10 * (found.peakShare as number) * (1 + 1e-8)
      const other = maybeSolve(rows, `[ ${squares} ] / 2`, `0 <= t <= ${peak}`)
      if (other?.Status !== 'Optimal') continue
      compared += 1
      const ours = found.thrusts.reduce((sum, thrust) => sum + ((10 * thrust) / plan.weight) ** 2, 0)
      expect(ours / other.ObjectiveValue).toBeLessThan(1 + 1e-5)
    }
    expect(compared).toBeGreaterThan(25)
  })
})
