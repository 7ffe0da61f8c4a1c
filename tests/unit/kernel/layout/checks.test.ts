import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { commonArea } from '../../../../kernel/library/layout/blocked-area.js'
import type { Checks } from '../../../../kernel/library/layout/checks.js'
import { hoverDisk, nearestTo } from '../../../../kernel/library/layout/disk-clearance.js'
import { obstaclesOf } from '../../../../kernel/library/layout/obstacles.js'
import { seededChance } from '../../../lab/seeded.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { skerryLink } from './skerry-link.js'

const { layout, rotor } = preloaded
const one = { x: 0, y: 0, radius: 1, spin: 1 }

const finding = ({ findings }: Checks, check: string) => {
  const found = findings.find((item) => item.check === check)
  if (found === undefined) throw new Error(`no finding "${check}"`)
  return found
}

describe('layout.checks(layout, options)', () => {
  it('says that the Skerry Link fits within 14 m, with every check told', () => {
    const seen = layout.checks(skerryLink, { footprint: 14, overall: 14 })
    expect(seen.met).toBe(true)
    expect(seen).toMatchObject({ netSpin: 0, interference: 1 })
    expect(new Set(seen.findings.map(({ check }) => check)).size).toBe(12)
    expect(finding(seen, 'footprint').text).toBe(
      'The circle around the turning rotors is 13.261 m across; 14 m is allowed.',
    )
    expectClose(finding(seen, 'rotor to rotor').clearance, 0.1, 1e-6)
    expect(finding(seen, 'rotor to rotor').text).toBe('Rotor 1 passes rotor 3 at 0.1 m; 0.065 m is enough.')
  })

  it('measures what can be measured by hand', () => {
    const plan = layout.record({
      rotors: [
        { ...one, x: 3, z: -1 },
        { ...one, x: -4, z: -1, cant: { lateral: 0.3 } },
      ],
      booms: [{ from: { x: 4, y: 0, z: -0.5 }, to: { x: -5, y: 0, z: -0.5 }, diameter: 0.2 }],
      wing: { x: 0.5, z: -0.5, span: 10, rootChord: 1, tipChord: 1, thicknessRatio: 0.1 },
      body: { x: 1.5, z: 0, length: 3, width: 1, height: 1 },
      propellers: [{ x: -7, radius: 0.5 }],
      ground: 2,
    })
    const seen = layout.checks(plan, { wanted: { boom: 0.5 } })
    // The wing's front edge is 1.5 m behind the first disk's rim and 0.5 m under it; half a thickness comes off.
    expectClose(finding(seen, 'rotor to wing').clearance, Math.hypot(1.5, 0.5) - 0.05, 1e-6)
    // The boom square under the leaning disk, less its radius.
    expectClose(finding(seen, 'rotor to boom').clearance, 0.5 * Math.cos(0.3) - 0.1, 1e-6)
    expect(finding(seen, 'rotor to boom')).toMatchObject({ met: false, required: 0.5 })
    // The leaning disk's lower rim.
    expectClose(finding(seen, 'rotor to ground').clearance, 3 - Math.sin(0.3), 1e-9)
    // The body's round nose, of radius 0.5, begins 0.5 m ahead of x = 1.5 - 0.5.
    expectClose(finding(seen, 'rotor to body').clearance, Math.hypot(1, 1) - 0.5, 1e-6)
    expectClose(finding(seen, 'hub on boom').clearance, 1, 1e-12)
    expectClose(finding(seen, 'boom on wing').clearance, 4.9, 1e-12)
  })

  it('finds the nearest point as a dense search of the disk does (seed 21)', () => {
    const chance = seededChance(21)
    const between = (low: number, high: number) => low + (high - low) * chance.next()
    for (let turn = 0; turn < 25; turn += 1) {
      const plan = layout.record({
        rotors: [
          {
            ...{ x: between(-3, 3), y: between(-3, 3), z: between(-2, 0.5), radius: between(0.5, 2), spin: 1 },
            cant: { lateral: between(-0.5, 0.5), longitudinal: between(-0.5, 0.5) },
          },
        ],
        wing: { x: 1, span: 8, rootChord: 1.5, tipChord: 0.7, sweep: 0.3, dihedral: 0.1 },
        fins: [{ x: -3, y: 1, span: 1, rootChord: 0.8, tipChord: 0.5, sweep: 0.4 }],
        body: { x: 2, length: 5, width: 1.2, height: 1.5 },
        propellers: [{ x: -3, radius: 0.8 }],
      })
      const disk = hoverDisk(plan.rotors[0] as (typeof plan.rotors)[number])
      for (const obstacle of obstaclesOf(plan)) {
        let least = Number.POSITIVE_INFINITY
        for (let ring = 0; ring <= 40; ring += 1)
          for (let step = 0; step < 120; step += 1) {
            const [p, q] = [Math.cos((step * Math.PI) / 60), Math.sin((step * Math.PI) / 60)]
            const size = (disk.radius * ring) / 40
            const at = [0, 1, 2].map(
              (axis) => (disk.middle[axis] ?? 0) + size * (p * (disk.along[axis] ?? 0) + q * (disk.across[axis] ?? 0)),
            ) as [number, number, number]
            least = Math.min(least, obstacle.distance(...at))
          }
        const { distance } = nearestTo(disk, obstacle)
        expect(distance, `${obstacle.name}, turn ${turn}`).toBeLessThanOrEqual(least + 1e-9)
        expect(distance, `${obstacle.name}, turn ${turn}`).toBeGreaterThan(least - 0.06)
      }
    }
  })

  it('says how far disks overlap in one plane, what it costs, and how far apart they are in two', () => {
    const level = layout.record({ rotors: [one, { ...one, x: 1.5, spin: -1 }] })
    const seen = layout.checks(level)
    expect(finding(seen, 'rotor to rotor')).toMatchObject({ met: false, between: 'rotor 1 and rotor 2' })
    expectClose(finding(seen, 'rotor to rotor').clearance, -0.5, 1e-9)
    expect(finding(seen, 'rotor to rotor').text).toBe('Rotor 1 overlaps rotor 2 by 0.5 m; it must keep 0.05 m clear.')
    const positions = [
      [0, 0],
      [1.5, 0],
    ] as const
    expectClose(seen.interference, rotor.overlap({ radius: 1, positions }).interference, 1e-15)
    expect(seen.remarks.join(' ')).toContain('more induced power')
    const stepped = layout.checks(layout.record({ rotors: [one, { ...one, x: 1.5, z: -0.4, spin: -1 }] }))
    expectClose(finding(stepped, 'rotor to rotor').clearance, 0.4, 1e-6)
    expect(finding(stepped, 'rotor to rotor').met).toBe(true)
    const unequal = layout.checks(layout.record({ rotors: [one, { ...one, radius: 0.7, x: 1.5, spin: 1 }] }))
    expect(unequal.interference).toBe(1)
    expect(unequal.remarks.join(' ')).toMatch(
      /Spins do not cancel: 2 more rotors turn anticlockwise.*different sizes overlap/,
    )
  })

  it('says how deep a blade reaches into the body, and a hub that stands off its boom', () => {
    const plan = layout.record({
      rotors: [one, { ...one, x: 6, y: 0.5, spin: -1 }],
      booms: [{ from: { x: 5, y: 0, z: 0.4 }, to: { x: -1, y: 0, z: 0.4 }, diameter: 0.1 }],
      body: { x: 0.5, length: 4, width: 1, height: 1 },
    })
    const { findings, met } = layout.checks(plan)
    expect(met).toBe(false)
    expect(findings.filter((item) => !item.met).map(({ text }) => text)).toEqual([
      'Rotor 2 sits 1.118 m off boom 1.',
      'Rotor 1 reaches 0.5 m into the body; it must keep 0.1 m clear.',
    ])
  })

  it('looks at rotors that tilt in cruise too', () => {
    const plan = layout.record({
      rotors: [
        { ...one, x: 0, z: -0.5, role: 'tilt' },
        { ...one, x: 0, y: 2.5, z: -0.5, spin: -1, role: 'tilt' },
      ],
      booms: [0, 2.5].map((y) => ({ from: { x: 0.1, y, z: 0 }, to: { x: -3, y, z: 0 }, diameter: 0.2 })),
      ground: 0.8,
    })
    const seen = layout.checks(plan)
    // Turned about the boom, the disk stands 0.5 m ahead of it and reaches 1 m down: into the ground.
    expect(finding(seen, 'rotor to ground').text).toBe(
      'Rotor 1 tilted reaches 0.2 m into the ground; it must keep 0.25 m clear.',
    )
    expectClose(finding(seen, 'rotor to boom').clearance, 0.5 - 0.1 - 0.1, 1e-6)
  })

  it('says nothing else of footprints than their signed distance, and advises of each that is not met', () => {
    const six = layout.multirotor({ count: 6, rotorRadius: 1 })
    let seen: Checks | undefined
    const { advisories } = listenWhile(() => {
      seen = layout.checks(six, { footprint: 5, overall: 6 })
    })
    expect(advisories.map(({ code, quantity }) => [code, quantity])).toEqual([
      ['LAYOUT', 'footprint'],
      ['LAYOUT', 'overall'],
    ])
    expectClose(finding(seen as Checks, 'footprint').margin, 5 - 2 * (1 + 1.05 / Math.sin(Math.PI / 6)), 1e-12)
    expect(finding(seen as Checks, 'overall').text).toContain('6 m is all that is allowed')
  })

  it.each<[string, () => unknown, RegExp]>([
    ['a limit of nothing', () => layout.checks(skerryLink, { footprint: 0 }), /footprint/],
    ['an overall limit below 0', () => layout.checks(skerryLink, { overall: -1 }), /overall/],
    ['a negative clearance', () => layout.checks(skerryLink, { wanted: { wing: -1 } }), /wanted\.wing/],
    ['an unknown part', () => layout.checks(skerryLink, { wanted: { wng: 1 } as object }), /did you mean "wing"/],
    ['an unknown option', () => layout.checks(skerryLink, { footprnt: 1 } as object), /did you mean "footprint"/],
  ])('refuses %s', (_, call, message) => {
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('layout.blockedArea(layout)', () => {
  it('is a circle and a strip, by hand', () => {
    // A wing of chord 2 h through the middle of a disk: the strip has the area 2 (h sqrt(R^2 - h^2) + R^2 asin(h/R)).
    const plan = layout.record({ rotors: [one], wing: { x: 0.3, span: 9, rootChord: 0.6, tipChord: 0.6 } })
    const strip = 2 * (0.3 * Math.sqrt(1 - 0.09) + Math.asin(0.3))
    const { wing, total, diskArea } = layout.blockedArea(plan)
    expectClose(wing, strip, 1e-12)
    expectClose(total, strip, 1e-12)
    expectClose(diskArea, Math.PI, 1e-15)
    expect(rotor.download({ blockedArea: total, dragCoefficient: 0.5, diskArea }).share).toBeGreaterThan(0)
  })

  it('is all of a disk over a large plate, all of a plate under a large disk, and nothing beside it', () => {
    const plate = [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
    expectClose(commonArea(plate, 0.2, 0.1, 0.5), Math.PI / 4, 1e-12)
    expectClose(commonArea(plate, 0.2, 0.1, 5), 4, 1e-12)
    expect(commonArea(plate, 4, 4, 1)).toBe(0)
    expectClose(commonArea(plate, 1, 1, 1), Math.PI / 4, 1e-12)
  })

  it('is what counting points finds (seed 5)', () => {
    const chance = seededChance(5)
    const shape = [
      [-1.2, -0.4],
      [0.3, -1.1],
      [1.4, 0.2],
      [0.1, 0.9],
    ] as const
    const within = (x: number, y: number) =>
      shape.every(([ax, ay], index) => {
        const [bx, by] = shape[(index + 1) % 4] as readonly [number, number]
        return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0
      })
    const count = 40_000
    let hits = 0
    for (let k = 0; k < count; k += 1) {
      const [x, y] = [chance.next() * 2 - 0.6, chance.next() * 2 - 0.8]
      if (within(x, y) && Math.hypot(x - 0.4, y - 0.2) < 1) hits += 1
    }
    expectClose(commonArea(shape, 0.4, 0.2, 1), (4 * hits) / count, 0.02)
  })
})

describe('layout.pad(layout)', () => {
  it('needs no more than the box around everything, and no less than its longer side', () => {
    const { diameter, overall, length, width, diskArea, around } = layout.pad(skerryLink)
    expect(overall).toBeGreaterThanOrEqual(Math.max(length, width, diameter) - 1e-9)
    expect(overall).toBeLessThanOrEqual(Math.hypot(length, width) + 1e-9)
    expectClose(2 * around.radius, overall, 1e-15)
    expectClose(diskArea, 8 * Math.PI * 1.69, 1e-12)
  })
})
