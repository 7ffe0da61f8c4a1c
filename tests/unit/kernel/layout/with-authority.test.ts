/** That a layout goes straight into trim after the loss of a rotor, and its limits into the picture of the centre of gravity. */
import { expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { skerryLink } from './skerry-link.js'

const { authority, layout } = preloaded
const weight = 16_000

it('layout.units(layout, options) are rotors of authority.trim: the 2 x 4 plan peaks at 16/11 and 4/3 of a share (house linear program, exact)', () => {
  // x = +-1.5, y = +-1.5, +-3, spins - + + - in front from the left outwards, the other way behind, torque ratio 0.08 m.
  const plan = layout.record({
    rotors: [1.5, -1.5].flatMap((x) =>
      [-3, -1.5, 1.5, 3].map((y, column) => ({ x, y, radius: 0.7, spin: (column % 2 === 0 ? 1 : -1) * Math.sign(x) })),
    ),
  })
  const rotors = layout.units(plan, { maxThrust: weight, torqueRatio: 0.08 })
  const hold = ['lift', 'roll', 'pitch', 'yaw'] as const
  const peak = (lost: number) => 8 * (authority.trim({ rotors, weight, hold, lost: [lost] }).peakShare ?? Number.NaN)
  expectClose(peak(0), 16 / 11, 1e-6)
  expectClose(peak(1), 4 / 3, 1e-6)
})

it('a mirrored layout trims alike after mirrored losses', () => {
  const rotors = layout.units(skerryLink, { maxThrust: weight, torqueRatio: 0.1 })
  const hold = ['lift', 'roll', 'pitch'] as const
  for (const left of [0, 2, 4, 6]) {
    const [one, other] = [left, left + 1].map(
      (lost) => authority.trim({ rotors, weight, hold, lost: [lost] }).peakShare,
    )
    expectClose(one ?? Number.NaN, other ?? 0, 1e-6)
  }
})

it('layout.hoverLimits(options) ends where authority.trim of lift, roll and pitch does', () => {
  const rotors = layout.units(skerryLink, { maxThrust: 2600, torqueRatio: 0.1 })
  const { forward, aft } = layout.hoverLimits({ units: rotors, masses: [weight / 9.80665] })
  const feasible = (x: number) =>
    authority.trim({ rotors, weight, hold: ['lift', 'roll', 'pitch'], centreOfGravity: { x, y: 0 } }).feasible
  for (const end of [forward[0] ?? 0, aft[0] ?? 0]) {
    expect(feasible(end - 1e-5 * Math.sign(end))).toBe(true)
    expect(feasible(end + 1e-5 * Math.sign(end))).toBe(false)
  }
})

it('layout.lossLimits(options) ends where authority.trim fails for the rotor it names, and only there', () => {
  const maxThrust = 4200
  const rotors = layout.units(skerryLink, { maxThrust, torqueRatio: 0.1 })
  const { mass, forward, aft, binds } = layout.lossLimits({ units: rotors, masses: [weight / 9.80665] })
  expect(mass).toHaveLength(1)
  const every = rotors.map((_, lost) => lost)
  const trims = (x: number, lost: number) =>
    authority.trim({ rotors, weight, centreOfGravity: { x, y: 0 }, lost: [lost] }).feasible
  for (const [end, rotor, out] of [
    [forward[0] ?? 0, binds[0]?.forward ?? 0, 1],
    [aft[0] ?? 0, binds[0]?.aft ?? 0, -1],
  ] as const) {
    expect(every.every((lost) => trims(end, lost))).toBe(true)
    expect(trims(end + 1e-4 * out, rotor)).toBe(false)
  }
  const intact = layout.hoverLimits({ units: rotors, masses: [weight / 9.80665] })
  expect(forward[0]).toBeLessThan(intact.forward[0] ?? 0)
  expect(aft[0]).toBeGreaterThan(intact.aft[0] ?? 0)
})

it('layout.lossLimits(options) is empty where no place will do, wider with yaw given up, and narrower with less thrust', () => {
  const of = (maxThrust: number, more = {}) =>
    layout.lossLimits({
      units: layout.units(skerryLink, { maxThrust, torqueRatio: 0.1 }),
      masses: [weight / 9.80665],
      ...more,
    })
  expect(of(2100)).toMatchObject({ mass: [], forward: [], aft: [], binds: [] })
  const wide = of(4200, { hold: ['lift', 'roll', 'pitch'] }).forward[0] ?? 0
  const held = of(4200).forward[0] ?? 0
  expect(wide).toBeGreaterThanOrEqual(held)
  expect(of(4200, { usableShare: 0.9 }).forward[0]).toBeLessThan(held)
  expect(() => of(4200, { hold: ['yawn'] })).toThrow(/hold\[0\]/)
})
