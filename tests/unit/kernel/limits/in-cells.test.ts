/** That limits and the diagrams of sizing keep their dimensions through a cell, tables included, and that a wrong unit is caught. */
import { describe, expect, it } from 'vitest'
import { checkCell } from '../../cells/check/notebook.js'

const sizingCell = `
const polar = drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 11, spanEfficiency: 0.8 })
const diagram = sizing.constraintDiagram({
  polar, propellerEfficiency: 0.84, constraints: [
    { kind: 'stall', name: 'conversion', density: 1.1 * u.kg / u.m3, speed: 45 * u.mps, maximumLift: 1.5, margin: 1.2 },
    { kind: 'cruise', density: 1.1 * u.kg / u.m3, speed: 58 * u.mps },
  ],
})
const wingArea = 1600 * u.kg * u.g0 / diagram.best.wingLoading
const motorPower = 1600 * u.kg * diagram.best.specificPower
const reach = sizing.payloadRange({
  mostPayload: 400 * u.kg, evaluate: (payload, range) => (1200 * u.kg + payload) * u.g0 * range / 9 - 60 * u.kWh,
})
const furthest = reach.corners[0].range
const pack = limits.packPower({
  cell: battery.cells.power18650, energy: 60 * u.kWh, floor: 0.1, demands: [{ name: 'landing', power: 320 * u.kW, stateOfCharge: 0.15 }],
})
const corners = table('corners', pack.rows, { units: { mass: 'kg' } })
const grid = limits.hotAndHigh({
  altitudes: [0 * u.m, 1000 * u.m], temperatureOffsets: [0 * u.K, 20 * u.K],
  margins: (there) => limits.margins({
    grossMass: 1600 * u.kg, density: there.density, lift: { diskArea: 42 * u.m2, figureOfMerit: 0.72, shaftPower: 400 * u.kW },
  }),
})
const ceiling = grid.ceilings[0].altitude
const list = limits.whatSizesWhat({ limits: [{ component: 'battery', limit: 'energy', size: pack.mass, unit: 'kg' }] })
const own = [{ part: 'wing', mass: 180 * u.kg, arm: 2 * u.m, share: 0.3 }]
const closed = sizing.close({ from: 500 * u.kg, requiredMass: (m) => ({ payload: 400 * u.kg, structure: 0.4 * m }) })
const growth = sizing.growthFactor({ grossMass: closed.grossMass, requiredMass: (m) => 400 * u.kg + 0.4 * m })
const heavier = 10 * u.kg * growth.growthFactor
const structure = closed.masses.structure
const omitted = limits.notModelled({ subjects: ['rotor'] })
`

describe('cells that ask what limits the aircraft', () => {
  it('have no findings, the dimensions of their results, and those of the columns of their tables', async () => {
    const { names, said, report } = await checkCell(sizingCell)
    expect(said).toEqual([])
    expect(names).toMatchObject({
      wingArea: 'm^2',
      motorPower: 'kg m^2 s^-3',
      furthest: 'm',
      ceiling: 'm',
      heavier: 'kg',
      structure: 'kg',
    })
    const columnsOf = (name: string) => report.names.find((one) => one.name === name)?.columns
    expect(columnsOf('corners')).toMatchObject({ mass: 'kg', availableSpecificPower: 'm^2 s^-3' })
    // Sizes stand in the unit that each row names; only the gap is a pure number.
    expect(columnsOf('list')).toEqual({ gap: '1' })
    expect(columnsOf('own')).toEqual({ mass: 'kg', arm: 'm', share: '1' })
    expect(columnsOf('pack')).toMatchObject({ mass: 'kg', nextShare: '1' })
    expect(columnsOf('omitted')).toBeUndefined()
    expect(columnsOf('wingArea')).toBeUndefined()
  })

  it('are told of a wrong unit', async () => {
    const { said } = await checkCell(`
const floors = limits.speedFloors({
  weight: 1600 * u.kg, density: 1.1 * u.kg / u.m3, wingArea: 15 * u.m2, maximumLift: 1.5, speeds: [{ name: 'cruise', speed: 58 * u.mps }],
})`)
    expect(said.join(' ')).toMatch(/weight/)
  })
})
