/** That authority and reliability keep their dimensions through a cell, and run in the isolated evaluator as they do here. */
import { readFileSync } from 'node:fs'
import { afterAll, describe, expect, it } from 'vitest'
import { createNodeHost } from '../../../../kernel/cells/host-node/index.js'
import { createPipeline } from '../../../../kernel/cells/index.js'
import { cellsOf, erase } from '../../cells/analyse/support.js'
import { checkCell } from '../../cells/check/notebook.js'

const built = (name: string) => readFileSync(new URL(`../../../../.build/kernel/${name}`, import.meta.url), 'utf8')
const host = createNodeHost({ sandboxText: built('sandbox.js') })
const pipeline = createPipeline({ erase, host, kernel: JSON.parse(built('kernel.json')) })
afterAll(() => host.close())

const plan = `
const places = [[1.6, -4.2], [1.6, -2.1], [1.6, 2.1], [1.6, 4.2], [-1.9, -4.2], [-1.9, -2.1], [-1.9, 2.1], [-1.9, 4.2]]
const rotors = places.map(([x = 0, y = 0], at) => ({
  x: x * u.m, y: y * u.m, spin: (at + (at > 3 ? 1 : 0)) % 2 === 0 ? -1 : 1, maxThrust: 3.6 * u.kN, torqueRatio: 9 * u.cm,
}))
const weight = 16 * u.kN
`
const sizing = `${plan}
const seen = authority.losses({ rotors, weight })
const peak = seen.worst.peakToHover
const thrust = seen.hoverThrust * peak
const torque = seen.perRotor[0]?.torque ?? 0
const left = authority.margin({ rotors, weight, inertia: { roll: 4000 * u.kg * u.m2, pitch: 5000 * u.kg * u.m2, yaw: 8000 * u.kg * u.m2 } })
const yaw = left.least.yaw
const rated = authority.rating({ rotors, weight }).thrustToHover
const unit = reliability.unitFailure({ rate: 2e-5 / u.h, time: 3 * u.min })
const failure = reliability.kOfN({ needed: 7, of: 8, unitFailure: unit })
`

describe('cells that look at lost rotors', () => {
  it('have no findings and the dimensions of their results', async () => {
    const { names, said } = await checkCell(sizing)
    expect(said).toEqual([])
    expect(names).toMatchObject({ peak: '1', thrust: 'kg m s^-2', torque: 'kg m^2 s^-2', yaw: 's^-2', failure: '1' })
  })

  it.each([
    ['authority.trim({ rotors: [], weight: 1600 * u.kg })', 'weight wants'],
    ['reliability.unitFailure({ rate: 2e-5 * u.h, time: 3 * u.min })', 'rate wants'],
  ])('are told of a wrong unit in %s', async (call, finding) => {
    const { said } = await checkCell(`const answer = ${call}`)
    expect(said.join()).toContain(finding)
  })

  it('run in the isolated evaluator, linear programs and all', async () => {
    const { results } = await pipeline.compute(cellsOf({ plan, sizing: sizing.replace(plan, '') }), {}, 'all')
    const failed = results.map((one) => one.error).filter((error) => error !== undefined)
    expect(failed).toEqual([])
    const values = results.find((one) => one.cell === 'sizing')?.values ?? []
    const rated = values.find((one) => one.name === 'rated')?.value
    // The same as outside; the centre of gravity lies ahead of the middle of the rotors.
    expect(rated?.kind === 'number' && rated.si).toBeCloseTo(1.579221, 5)
  })
})
