import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { layout, mass, rotor, u } = preloaded
const passing = { thrust: 2000, speed: 30, radius: 1.3, density: 1.1, tipSpeed: 165, solidity: 0.14 }

/** Thrust and hub moments of a stiff rotor by summing its blade elements around and along, without the closed forms. */
function bySumming(collective: number, spin: number, inflow: number, gradient: number) {
  const { speed, radius, density, tipSpeed, solidity } = passing
  const [lines, turns] = [400, 360]
  const sum = { thrust: 0, roll: 0, pitch: 0 }
  for (let turn = 0; turn < turns; turn += 1) {
    const azimuth = (2 * Math.PI * (turn + 0.5)) / turns
    for (let line = 0; line < lines; line += 1) {
      const share = (line + 0.5) / lines
      const across = tipSpeed * share + speed * Math.sin(azimuth)
      // The induced part grows from front to back; its unevenness meets the speed of rotation, as in the closed form.
      const through = inflow * tipSpeed
      const uneven = gradient * share * Math.cos(azimuth) * inflow * tipSpeed * tipSpeed * share
      // Blade area spread over the disk: sigma pi R^2 of chord times radius.
      const area = (solidity * Math.PI * radius * radius) / (lines * turns)
      const lift = 0.5 * density * 5.7 * (collective * across * across - through * across - uneven) * area
      sum.thrust += lift
      // Azimuth 0 is behind the hub, 90 degrees the advancing side: right of it for spin +1.
      sum.roll -= lift * share * radius * Math.sin(azimuth) * spin
      sum.pitch -= lift * share * radius * Math.cos(azimuth)
    }
  }
  return sum
}

describe('layout.hubMoment(options)', () => {
  it('is what summing blade elements gives, thrust included', () => {
    const { inducedVelocity } = rotor.edgewise({ ...passing, inducedFactor: 1, profileDrag: 0.01 })
    const inflow = inducedVelocity / passing.tipSpeed
    const gradient = Math.tan(Math.atan2(passing.speed / passing.tipSpeed, inflow) / 2)
    for (const spin of [1, -1]) {
      const { roll, pitch, moment, collective } = layout.hubMoment({ ...passing, spin })
      const sum = bySumming(collective, spin, inflow, gradient)
      expectClose(sum.thrust, passing.thrust, 1e-4)
      expectClose(roll, sum.roll, 1e-4)
      expectClose(pitch, sum.pitch, 1e-4)
      expectClose(moment, Math.hypot(roll, pitch), 1e-15)
      expect(Math.sign(roll)).toBe(-spin)
    }
  })

  it('is none in hover, grows with speed, and a mirrored rotor rolls the other way', () => {
    expect(layout.hubMoment({ ...passing, speed: 0 }).moment).toBe(0)
    const [slow, fast] = [10, 40].map((speed) => layout.hubMoment({ ...passing, speed }).moment) as [number, number]
    expect(fast).toBeGreaterThan(slow)
    const [one, other] = [1, -1].map((spin) => layout.hubMoment({ ...passing, spin }))
    expectClose(one?.roll ?? 0, -(other?.roll ?? 0), 1e-15)
    expectClose(one?.pitch ?? 0, other?.pitch ?? 1, 1e-15)
  })

  it('is less where blades flap, and the stiff one as they grow stiff', () => {
    const stiff = layout.hubMoment(passing)
    const soft = layout.hubMoment({ ...passing, flapFrequency: 1.15, lockNumber: 6 })
    const rigid = layout.hubMoment({ ...passing, flapFrequency: 100, lockNumber: 6 })
    const give = (1.15 ** 2 - 1) / Math.hypot(1.15 ** 2 - 1, 6 / 8)
    expectClose(soft.moment / stiff.moment, give, 1e-12)
    expectClose(rigid.roll, stiff.roll, 1e-3)
  })

  it('advises beyond an advance ratio of 0.3', () => {
    const { advisories } = listenWhile(() => layout.hubMoment({ ...passing, speed: 60 }))
    expect(advisories.map(({ code }) => code)).toEqual(['ADVANCE_RATIO'])
  })
})

describe('layout.boomLoads(options)', () => {
  const rotors = [
    { arm: 1.8, mass: 20, maxThrust: 3500 },
    {
      arm: 4.5,
      mass: 20,
      maxThrust: 3500,
      transitionThrust: 1500,
      hubMoment: { roll: -300, pitch: 150 },
      stoppedForce: 400,
    },
  ]

  it('sums each case by hand and names the one that binds', () => {
    const { cases, binds, length, tipForce, tipTorque, tipMass } = layout.boomLoads({ rotors })
    const of = (name: string) => cases.find((one) => one.name === name)
    const w = 20 * u.g0
    expectClose(of('greatest thrust')?.bending ?? 0, (3500 - w) * 6.3, 1e-12)
    expectClose(of('transition')?.bending ?? 0, 1500 * 4.5 - w * 6.3 + 150, 1e-12)
    expect(of('transition')?.torsion).toBe(-300)
    expectClose(of('manoeuvre')?.shear ?? 0, -3.8 * 2 * w, 1e-12)
    expectClose(of('stopped blades in a dive')?.bending ?? 0, -(400 * 4.5) - w * 6.3, 1e-12)
    expectClose(of('landing')?.bending ?? 0, -3 * w * 6.3, 1e-12)
    expect([binds, length, tipTorque]).toEqual(['greatest thrust', 4.5, 300])
    expectClose(tipForce, ((3500 - w) * 6.3) / 4.5, 1e-12)
    expectClose(tipMass, 20 * (1 + 0.4 ** 3), 1e-12)
    expect(mass.boom({ length, radius: 0.1, tipForce, tipTorque, tipMass }).wall).toBeGreaterThan(0)
  })

  it('mirrors behind the wing: the same force bends the other way', () => {
    const behind = layout.boomLoads({ rotors: [{ arm: -2, mass: 20, maxThrust: 3500 }] })
    const ahead = layout.boomLoads({ rotors: [{ arm: 2, mass: 20, maxThrust: 3500 }] })
    expectClose(behind.cases[0]?.bending ?? 0, -(ahead.cases[0]?.bending ?? 1), 1e-15)
    expect(behind.tipForce).toBe(ahead.tipForce)
  })

  it('lets the landing bind where rotors are heavy', () => {
    const heavy = [{ arm: 1, mass: 100, maxThrust: 2000 }]
    expect(layout.boomLoads({ rotors: heavy, landingFactor: 6 }).binds).toBe('landing')
  })
})

describe('layout.spinUp(options)', () => {
  const modes = [
    { name: 'boom', frequency: 12 },
    { name: 'blade', frequency: 9, stiffening: 1.2 },
  ]

  it('finds each meeting where the mode equals the excitation', () => {
    const { crossings } = layout.spinUp({ blades: 3, operating: [80, 130], modes })
    expect(crossings.map(({ mode, order }) => `${mode} ${order}`)).toEqual(['blade 3', 'boom 3', 'boom 1'])
    for (const { mode, order, speed, frequency } of crossings) {
      const { frequency: still, stiffening = 0 } = modes.find(({ name }) => name === mode) as (typeof modes)[number]
      expectClose(Math.sqrt(still ** 2 + stiffening * (speed / 2 / Math.PI) ** 2), (order * speed) / 2 / Math.PI, 1e-12)
      expectClose(frequency, (order * speed) / 2 / Math.PI, 1e-12)
    }
  })

  it('calls a meeting within the range of work by its name and advises of it', () => {
    const { advisories } = listenWhile(() => {
      const { crossings, margins, met } = layout.spinUp({
        blades: 2,
        operating: [70, 80],
        modes: [{ name: 'boom', frequency: 12 }],
      })
      expect(crossings.map(({ where }) => where)).toEqual(['spin-up', 'working'])
      expect(met).toBe(false)
      expect(margins.map(({ margin }) => margin === 0)).toEqual([true, false])
      expect(margins[0]?.text).toBe('boom meets once per turn while the rotor works.')
    })
    expect(advisories.map(({ code }) => code)).toEqual(['RESONANCE'])
  })

  it('keeps the distance that 12 Hz has from 1000 rpm', () => {
    const { margins } = layout.spinUp({
      blades: 2,
      operating: [1000 * u.rpm, 1300 * u.rpm],
      modes: [{ name: 'boom', frequency: 12 }],
    })
    expectClose(margins[0]?.margin ?? 0, 1 - 12 / (1000 / 60), 1e-12)
    expect(margins[0]?.text).toBe('boom stays 28 % away from once per turn while the rotor works.')
  })

  it('takes a single blade and orders of one’s own', () => {
    expect(layout.spinUp({ blades: 1, operating: [70, 80], modes }).orders).toEqual([1])
    expect(layout.spinUp({ blades: 2, operating: [70, 80], modes, orders: [4] }).margins).toHaveLength(2)
  })
})

describe('layout.outwash(options)', () => {
  const hovering = { thrust: 17_000, diskArea: 42.5, density: 1.1, distance: 20 }

  it('begins as the far wake of rotor.hover and falls with the distance to the power 1.1', () => {
    const { inducedVelocity } = rotor.hover({ thrust: 17_000, diskArea: 42.5, density: 1.1, figureOfMerit: 0.7 })
    const near = layout.outwash({ ...hovering, distance: 0 })
    expectClose(near.farWake, 2 * inducedVelocity, 1e-12)
    expect(near.wallJet).toBe(near.farWake)
    const far = layout.outwash(hovering)
    expectClose(layout.outwash({ ...hovering, distance: 40 }).wallJet / far.wallJet, 2 ** -1.1, 1e-12)
    const edge = layout.outwash({ ...hovering, distance: far.wakeReach * (1 + 1e-9) })
    expectClose(edge.wallJet, far.farWake, 1e-8)
  })

  it('advises where people cannot work', () => {
    const { advisories } = listenWhile(() => layout.outwash({ ...hovering, distance: 5 }))
    expect(advisories.map(({ code }) => code)).toEqual(['OUTWASH'])
  })
})

const sound = { blades: 2, operating: [70, 80] as const, modes: [{ name: 'boom', frequency: 12 }] }
const boom = { arm: 1, mass: 1, maxThrust: 1 }
it.each<[string, () => unknown, RegExp]>([
  ['a spin of 0', () => layout.hubMoment({ ...passing, spin: 0 }), /spin is 0/],
  ['a Lock number alone', () => layout.hubMoment({ ...passing, lockNumber: 5 }), /flapFrequency is missing/],
  ['a flapping frequency alone', () => layout.hubMoment({ ...passing, flapFrequency: 1.1 }), /lockNumber is missing/],
  [
    'a flapping frequency of 1',
    () => layout.hubMoment({ ...passing, flapFrequency: 1, lockNumber: 5 }),
    /flapFrequency/,
  ],
  ['no thrust', () => layout.hubMoment({ ...passing, thrust: 0 }), /thrust/],
  ['rotors on both sides', () => layout.boomLoads({ rotors: [boom, { ...boom, arm: -1 }] }), /both sides of the wing/],
  ['no rotors', () => layout.boomLoads({ rotors: [] }), /rotors is a list of 0/],
  ['no arm', () => layout.boomLoads({ rotors: [{ ...boom, arm: 0 }] }), /arm/],
  ['a negative mass', () => layout.boomLoads({ rotors: [{ ...boom, mass: -1 }] }), /mass/],
  ['no modes', () => layout.spinUp({ ...sound, modes: [] }), /modes is a list of 0/],
  ['one speed', () => layout.spinUp({ ...sound, operating: [70] as unknown as [number, number] }), /least, greatest/],
  ['speeds that fall', () => layout.spinUp({ ...sound, operating: [80, 70] }), /operating\[1\]/],
  ['orders that are no list', () => layout.spinUp({ ...sound, orders: [] }), /orders is a list of 0/],
  ['an order of 0', () => layout.spinUp({ ...sound, orders: [0] }), /orders\[0\]/],
  ['a mode without a name', () => layout.spinUp({ ...sound, modes: [{ name: '', frequency: 1 }] }), /name/],
  ['no area', () => layout.outwash({ thrust: 1, diskArea: 0, density: 1, distance: 1 }), /diskArea/],
  ['a negative distance', () => layout.outwash({ thrust: 1, diskArea: 1, density: 1, distance: -1 }), /distance/],
])('methods of loads refuse %s', (_, call, message) => {
  expect(call).toThrow(InvalidInput)
  expect(call).toThrow(message)
})
