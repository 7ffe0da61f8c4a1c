/** Directions that practitioners hold to be true, shown on layouts: common practice, no source. */
import { expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { skerryLinkOptions } from './skerry-link.js'

const { air, drag, layout, rotor } = preloaded
const footprint = 14

/** The largest rotors of a layout whose circle just fills the footprint: lengths scale together. */
function diskAreaWithin(build: (rotorRadius: number) => ReturnType<typeof layout.multirotor>): number {
  let [low, high] = [0.05, footprint / 2]
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2
    if (layout.pad(build(middle)).diameter <= footprint) low = middle
    else high = middle
  }
  return layout.pad(build(low)).diskArea
}

it('layout.pad(layout): in a ring at a fixed footprint four rotors have most disk area, more have less (row 1; packing decides)', () => {
  const areas = [3, 4, 5, 6, 8, 12].map((count) =>
    diskAreaWithin((rotorRadius) => layout.multirotor({ count, rotorRadius, rotorGap: 0 })),
  )
  // n/(1 + 1/sin(pi/n))^2 of the footprint: 0.646, 0.686, 0.685, 0.667, 0.613, 0.507.
  const shares = areas.map((area) => area / (Math.PI * (footprint / 2) ** 2))
  for (const [index, count] of [3, 4, 5, 6, 8, 12].entries())
    expectClose(shares[index] ?? 0, count / (1 + 1 / Math.sin(Math.PI / count)) ** 2, 1e-9)
  expect(shares.indexOf(Math.max(...shares))).toBe(1)
  // Three and more by the packing, but from four on fewer and larger is less power.
  const power = areas.map(
    (diskArea) => rotor.hover({ thrust: 16_000, diskArea, density: air.standard(0).density, figureOfMerit: 0.7 }).power,
  )
  expect(power.slice(1)).toEqual([...power.slice(1)].sort((a, b) => a - b))
})

it('layout.liftPlusCruise(options): on twin booms within 14 m fewer and larger rotors have more disk area (row 1)', () => {
  const areas = [1, 2, 3].map((rows) =>
    diskAreaWithin((rotorRadius) =>
      layout.liftPlusCruise({
        rotorRadius,
        rowsAhead: rows,
        rowsBehind: rows,
        wing: skerryLinkOptions.wing,
        body: skerryLinkOptions.body,
      }),
    ),
  )
  expect(areas).toEqual([...areas].sort((a, b) => b - a))
})

it('layout.units(layout, options): half of the rotors turn each way, so that torques cancel at equal thrust (row 2)', () => {
  for (const spin of ['alternating', 'ahead and behind', 'by side'] as const) {
    const plan = layout.liftPlusCruise({ ...skerryLinkOptions, spin })
    const torque = layout
      .units(plan, { maxThrust: 2000, torqueRatio: 0.1 })
      .reduce((sum, one) => sum + one.spin * one.torqueRatio * one.maxThrust, 0)
    expect(torque).toBe(0)
  }
})

it('layout.liftPlusCruise(options): rotors in line along the stream have less drag than the same spread across it (row 11)', () => {
  const common = { rotorRadius: 1.3, wing: skerryLinkOptions.wing, body: skerryLinkOptions.body }
  const inLine = layout.liftPlusCruise({ ...common, rowsAhead: 2, rowsBehind: 2, columns: 1 })
  const across = layout.liftPlusCruise({ ...common, rowsAhead: 1, rowsBehind: 1, columns: 2 })
  const dragOf = (plan: typeof inLine) => {
    const columns = [...new Set(plan.rotors.map(({ y }) => y))]
    const hubs = columns.map((y) => plan.rotors.filter((one) => one.y === y).map(({ x }) => x))
    const sheltered = hubs.map((xs) => {
      const spacing = (Math.max(...xs) - Math.min(...xs)) / (xs.length - 1)
      return drag.inLineShielding({ dragArea: 0.018, frontalArea: 0.025, spacing, count: xs.length }).dragArea
    })
    const booms = plan.booms.map(
      ({ from, to, diameter }) =>
        drag.boom({ length: from.x - to.x, diameter, speed: 58, density: 1.1, dynamicViscosity: 1.79e-5 }).dragArea,
    )
    return [...sheltered, ...booms].reduce((sum, one) => sum + one, 0)
  }
  expect(inLine.rotors).toHaveLength(across.rotors.length)
  expect(dragOf(inLine)).toBeLessThan(dragOf(across))
})
