/** That layouts keep their dimensions through a cell, and that a wrong unit is caught. */
import { describe, expect, it } from 'vitest'
import { checkCell } from '../../cells/check/notebook.js'

const sizing = `
const plan = layout.liftPlusCruise({
  rotorRadius: 1.3 * u.m, wing: { area: 15 * u.m2, aspectRatio: 11 }, body: { length: 6.6 * u.m, width: 1.5 * u.m, height: 1.5 * u.m },
  tail: { area: 3.2 * u.m2, arm: 6.8 * u.m }, propellers: [{ radius: 0.95 * u.m }], cant: { lateral: 3 * u.deg },
})
const seen = layout.checks(plan, { footprint: 14 * u.m })
const room = 14 * u.m - seen.pad.diameter
const share = rotor.download({ blockedArea: seen.blocked.total, dragCoefficient: 1, diskArea: seen.blocked.diskArea }).share
const lifting = layout.units(plan, { maxThrust: 3.4 * u.kN, torqueRatio: 0.1 * u.m })
const aboard = layout.loading({
  fixed: [{ name: 'empty', mass: 1500 * u.kg, x: 0 * u.m, y: 0 * u.m }], loads: [{ name: 'seat', mass: 90 * u.kg, x: 1 * u.m, y: 0.4 * u.m }],
})
const hover = layout.hoverLimits({ units: lifting, masses: [1500 * u.kg, 1700 * u.kg] })
const lost = layout.lossLimits({ units: lifting, masses: [1500 * u.kg] })
const cruise = layout.cruiseLimits(plan, { neutralPoint: 0.5 })
const margins = layout.gravityMargins({ loading: aboard, limits: [hover, lost, cruise] })
const margin = margins[0].margin
const inertia = aboard.full.Izz
const hub = layout.hubMoment({ thrust: 2 * u.kN, speed: 30 * u.mps, radius: 1.3 * u.m, density: 1.1 * u.kg / u.m3, tipSpeed: 165 * u.mps, solidity: 0.14 })
const loads = layout.boomLoads({ rotors: [{ arm: 2 * u.m, mass: 20 * u.kg, maxThrust: 3.4 * u.kN, hubMoment: { roll: hub.roll, pitch: hub.pitch } }] })
const boom = mass.boom({ length: loads.length, radius: 80 * u.mm, tipForce: loads.tipForce, tipTorque: loads.tipTorque, tipMass: loads.tipMass })
const shake = layout.spinUp({ blades: 2, operating: [900 * u.rpm, 1200 * u.rpm], modes: [{ name: 'boom', frequency: boom.frequency }] })
const wind = layout.outwash({ thrust: 17 * u.kN, diskArea: seen.pad.diskArea, density: 1.1 * u.kg / u.m3, distance: 15 * u.m }).wallJet
const above = figure.planView({ layout: plan, checks: seen, centreOfGravity: { x: 0 * u.m, y: 0 * u.m } })
const ahead = figure.frontView({ layout: plan })
const envelope = figure.loadingEnvelope({ loading: aboard, limits: [hover, cruise] })
const spin = figure.spinUp({ spinUp: shake })
`

describe('cells that lay out an aircraft', () => {
  it('have no findings and the dimensions of their results', async () => {
    const { names, said } = await checkCell(sizing)
    expect(said).toEqual([])
    expect(names).toMatchObject({ room: 'm', share: '1', margin: 'm', inertia: 'kg m^2', wind: 'm s^-1' })
  })

  it.each([
    ['layout.multirotor({ count: 6, rotorRadius: 1 * u.kg })', 'wants m but got kg'],
    [
      'layout.outwash({ thrust: 17 * u.kW, diskArea: 40 * u.m2, density: 1.1 * u.kg / u.m3, distance: 15 * u.m })',
      'kg m s^-2',
    ],
  ])('are told of a wrong unit in %s', async (call, finding) => {
    const { said } = await checkCell(`const answer = ${call}`)
    expect(said).toHaveLength(1)
    expect(said[0]).toContain(finding)
  })
})
