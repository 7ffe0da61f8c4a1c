import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import type { Layout } from '../../../../kernel/library/layout/parts.js'
import { expectClose } from '../close-to.js'
import { skerryLink, skerryLinkOptions } from './skerry-link.js'

const { layout, u } = preloaded
const body = { length: 6.6, width: 1.5, height: 1.5 }
const winged = { rotorRadius: 1.2, wing: { area: 14, aspectRatio: 10 }, body }

/** Every rotor as text, and every rotor's image in the plane of symmetry. */
const rotorsOf = ({ rotors }: Layout, side: 1 | -1) =>
  rotors
    .map(
      ({ x, y, z, spin, cant, role }) =>
        [x, side * y, z, side * spin, side * cant.lateral, cant.longitudinal].map((value) => value.toFixed(9)).join() +
        role,
    )
    .map((text) => text.replaceAll('-0.000000000', '0.000000000'))
    .sort()

describe('builders of layouts', () => {
  it.each<[string, Layout]>([
    ['layout.liftPlusCruise', skerryLink],
    [
      'layout.liftPlusCruise with cant, sweep and three columns',
      layout.liftPlusCruise({
        ...winged,
        columns: 3,
        rowsAhead: 1,
        rowsBehind: 1,
        cant: { lateral: 0.1, longitudinal: -0.05 },
        wing: { area: 20, aspectRatio: 12, sweep: 0.2, dihedral: 0.05 },
        spin: 'ahead and behind',
      }),
    ],
    ['layout.vectoredThrust', layout.vectoredThrust({ ...winged, rowsAhead: 1, rowsBehind: 1, spin: 'by side' })],
    ['layout.mixedThrust', layout.mixedThrust({ ...winged, spin: [1, -1, -1, 1] })],
    ['layout.multirotor, ring', layout.multirotor({ rotorRadius: 1, count: 8 })],
    ['layout.multirotor, grid', layout.multirotor({ rotorRadius: 1, plan: 'grid', rows: 3, columns: 4 })],
  ])('%s gives its own mirror image, spins that cancel, and is frozen through', (_, plan) => {
    expect(rotorsOf(plan, -1)).toEqual(rotorsOf(plan, 1))
    expect(plan.rotors.reduce((sum, { spin }) => sum + spin, 0)).toBe(0)
    expect([plan, plan.rotors, plan.rotors[0], plan.rotors[0]?.cant, plan.booms[0]].every(Object.isFrozen)).toBe(true)
  })

  it('layout.liftPlusCruise(options) numbers rows from the front, left before right, and mirrors spins', () => {
    expect(skerryLink.rotors).toHaveLength(8)
    const xs = skerryLink.rotors.map(({ x }) => x)
    expect(xs).toEqual([...xs].sort((a, b) => b - a))
    expect(skerryLink.rotors.map(({ y }) => Math.sign(y))).toEqual([-1, 1, -1, 1, -1, 1, -1, 1])
    expect(skerryLink.rotors.map(({ spin }) => spin)).toEqual([-1, 1, 1, -1, -1, 1, 1, -1])
    expect(skerryLink.booms).toHaveLength(2)
    expect(skerryLink.fins).toHaveLength(2)
  })

  it('layout.liftPlusCruise(options) keeps the gaps asked for, to wing, body and between disks', () => {
    const { rotors, wing } = skerryLink
    const [r3, r5] = [rotors[2], rotors[4]] as const
    if (r3 === undefined || r5 === undefined || wing === undefined) throw new Error('no such rotors')
    const leading = (y: number) => wing.x - Math.abs(y) * Math.tan(wing.sweep)
    const reach = Math.max(...[-1.3, 0, 1.3].map((dy) => leading(r3.y + dy)))
    expectClose(r3.x - 1.3 - reach, skerryLinkOptions.gapAhead, 1e-9)
    expectClose((rotors[0]?.x ?? 0) - r3.x, 2.6 + skerryLinkOptions.rotorGap, 1e-12)
    expectClose(Math.abs(r3.y) - 1.3 - 0.75, 0.2 * 1.3, 1e-12)
  })

  it('puts the quarter point of the mean chord at the origin, as wing.planform has it', () => {
    const shape = preloaded.wing.planform({ area: 20, aspectRatio: 12, taper: 0.5, sweep: 0.2 })
    const plan = layout.liftPlusCruise({ ...winged, wing: { area: 20, aspectRatio: 12, taper: 0.5, sweep: 0.2 } })
    expectClose(plan.wing?.x ?? 0, shape.quarterChordBehind, 1e-12)
    expectClose(plan.wing?.rootChord ?? 0, shape.rootChord, 1e-12)
    const { leadingEdge, chord } = layout.cruiseLimits(plan, { neutralPoint: 0.4 })
    expectClose(chord, shape.meanAerodynamicChord, 1e-12)
    expectClose(leadingEdge, shape.meanAerodynamicChord / 4, 1e-9)
  })

  it('layout.multirotor(options) packs a ring: R over the circle around it (3 to 6 are the densest packings of circles in a circle, from memory)', () => {
    // Graham, Lubachevsky, Nurmela, Ostergard, Congruent circles packed in a circle, 1998: 0.4641, 0.4142, 0.3702, 0.3333; the
    // rings of 7 and 8 are those of the packings of 8 and 9 with one in the middle, 0.3026 and 0.2768 (all from memory).
    const published = { 3: 0.4641, 4: 0.4142, 5: 0.3702, 6: 0.3333, 7: 0.3026, 8: 0.2768 }
    for (const [count, share] of Object.entries(published)) {
      const { diameter } = layout.pad(layout.multirotor({ count: Number(count), rotorRadius: 1, rotorGap: 0 }))
      expect(Number((2 / diameter).toFixed(4)), count).toBe(share)
      expectClose(diameter / 2, 1 + 1 / Math.sin(Math.PI / Number(count)), 1e-12)
    }
  })

  it('layout.multirotor(options) of an odd ring leaves a spin over, and takes spins by list', () => {
    expect(layout.checks(layout.multirotor({ count: 5, rotorRadius: 1 })).netSpin).toBe(1)
    const listed = layout.multirotor({ count: 6, rotorRadius: 1, spin: [1, 1, -1, -1, 1, -1] })
    expect(listed.rotors.map(({ spin }) => spin)).toEqual([1, 1, -1, -1, 1, -1])
  })

  it('layout.vectoredThrust(options) hangs the rotors behind the wing under their booms, layout.mixedThrust tilts one side', () => {
    const tilting = layout.vectoredThrust({ ...winged, rowsAhead: 1, rowsBehind: 1 })
    const boomZ = tilting.booms[0]?.from.z ?? 0
    expect(tilting.rotors.map(({ z }) => Math.sign(z - boomZ))).toEqual([-1, -1, 1, 1])
    expect(layout.checks(tilting).findings.filter(({ met }) => !met)).toEqual([])
    const behind = layout.mixedThrust({ ...winged, tilting: 'behind' })
    expect(behind.rotors.map(({ role }) => role)).toEqual([...Array(4).fill('lift'), ...Array(4).fill('tilt')])
  })

  it('layout.liftPlusCruise(options) puts a tail on the body, fewer rows, and booms that end at the wing', () => {
    const plan = layout.liftPlusCruise({ ...winged, rowsBehind: 0, tail: { area: 3, arm: 4, on: 'body' } })
    expect(plan.fins).toHaveLength(1)
    expectClose((plan.tail?.span ?? 0) ** 2 / 3, 4.5, 1e-12)
    const { wing, booms } = plan
    const trailing = (wing?.x ?? 0) - (wing?.rootChord ?? 0)
    expect(booms[0]?.to.x).toBeGreaterThan(trailing)
    expect(layout.liftPlusCruise({ ...winged, tail: { area: 3, arm: 4, finArea: 0 } }).fins).toEqual([])
  })

  it('layout.record(options) fills in what is left out', () => {
    const plan = layout.record({
      rotors: [{ x: 1, y: 2, radius: 1, spin: 1, cant: { lateral: 0.1 } }],
      wing: { x: 0, span: 10, rootChord: 1, tipChord: 1 },
      body: { x: 3, length: 6, width: 1, height: 1 },
      propellers: [{ x: -3, radius: 1 }],
    })
    expect(plan.rotors[0]).toEqual({
      ...{ x: 1, y: 2, z: 0, radius: 1, spin: 1 },
      cant: { lateral: 0.1, longitudinal: 0 },
      role: 'lift',
    })
    expect(plan.wing).toMatchObject({ y: 0, z: 0, sweep: 0, dihedral: 0, thicknessRatio: 0.12 })
    expect(plan).toMatchObject({ kind: 'lift plus cruise', ground: 1.5, booms: [], fins: [] })
    expect(layout.record(plan)).toEqual(plan)
  })

  it('layout.units(layout, options) joins each rotor with what it can give', () => {
    const same = layout.units(skerryLink, { maxThrust: 3.4 * u.kN, torqueRatio: 0.1 })
    expect(same[3]).toEqual({ ...skerryLink.rotors[3], maxThrust: 3400, torqueRatio: 0.1 })
    const each = layout.units(skerryLink, { maxThrust: [1, 2, 3, 4, 5, 6, 7, 8], torqueRatio: 0.1 })
    expect(each.map(({ maxThrust }) => maxThrust)).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
  })

  const rotor = { x: 0, y: 0, radius: 1, spin: 1 }
  const surface = { x: 0, span: 10, rootChord: 1, tipChord: 1 }
  it.each<[string, () => unknown, RegExp]>([
    ['no rotors', () => layout.record({ rotors: [] }), /rotors is a list of 0/],
    ['a spin of 2', () => layout.record({ rotors: [{ ...rotor, spin: 2 }] }), /rotors\[0\]\.spin is 2/],
    ['a cant beyond 1.2', () => layout.record({ rotors: [{ ...rotor, cant: { lateral: 2 } }] }), /cant\.lateral/],
    ['an unknown role', () => layout.record({ rotors: [{ ...rotor, role: 'tlt' as 'tilt' }] }), /did you mean "tilt"/],
    ['a place far away', () => layout.record({ rotors: [{ ...rotor, x: 5000 }] }), /rotors\[0\]\.x is 5000 m/],
    [
      'no place at all',
      () => layout.record({ rotors: [{ y: 0, radius: 1, spin: 1 } as typeof rotor] }),
      /rotors\[0\]\.x/,
    ],
    ['a wing without span', () => layout.record({ rotors: [rotor], wing: { ...surface, span: 0 } }), /wing\.span/],
    [
      'a thick wing',
      () => layout.record({ rotors: [rotor], wing: { ...surface, thicknessRatio: 2 } }),
      /thicknessRatio/,
    ],
    [
      'a body of no width',
      () => layout.record({ rotors: [rotor], body: { x: 0, length: 1, width: 0, height: 1 } }),
      /body\.width/,
    ],
    ['a kind that is no text', () => layout.record({ kind: '', rotors: [rotor] }), /kind/],
    ['what is no layout', () => layout.pad([] as unknown as Layout), /layout is a list of 0; it must be a layout/],
    [
      'a changed layout',
      () => layout.pad({ ...skerryLink, rotors: [{ ...rotor, radius: -1 }] } as unknown as Layout),
      /radius/,
    ],
    ['no rows', () => layout.liftPlusCruise({ ...winged, rowsAhead: 0, rowsBehind: 0 }), /both 0/],
    ['half a row', () => layout.liftPlusCruise({ ...winged, rowsAhead: 1.5 }), /rowsAhead is 1\.5/],
    ['spins too few', () => layout.liftPlusCruise({ ...winged, spin: [1, -1] }), /a list of 4 of \+1 and -1/],
    ['spins of another kind', () => layout.liftPlusCruise({ ...winged, spin: [1, 1, 0, 1] }), /something else/],
    [
      'an unknown pattern',
      () => layout.liftPlusCruise({ ...winged, spin: 'alternate' as 'alternating' }),
      /did you mean/,
    ],
    [
      'a propeller list that is none',
      () => layout.liftPlusCruise({ ...winged, propellers: 1 as unknown as [] }),
      /propellers/,
    ],
    [
      'a tail on nothing',
      () => layout.liftPlusCruise({ ...winged, tail: { area: 3, arm: 4, on: 'wing' as 'body' } }),
      /tail\.on/,
    ],
    [
      'an unknown option',
      () => layout.liftPlusCruise({ ...winged, rotorRadios: 1 } as typeof winged),
      /did you mean "rotorRadius"/,
    ],
    ['no row that tilts', () => layout.mixedThrust({ ...winged, rowsAhead: 0 }), /the rotors that tilt/],
    ['an unknown side', () => layout.mixedThrust({ ...winged, tilting: 'above' as 'ahead' }), /tilting/],
    ['a ring of two', () => layout.multirotor({ count: 2, rotorRadius: 1 }), /count is 2/],
    ['rows of a ring', () => layout.multirotor({ count: 4, rows: 2, rotorRadius: 1 }), /left out for a ring/],
    [
      'a count of a grid',
      () => layout.multirotor({ plan: 'grid', count: 4, rows: 2, columns: 2, rotorRadius: 1 }),
      /left out for a grid/,
    ],
    [
      'a grid without columns',
      () => layout.multirotor({ plan: 'grid', rows: 2, rotorRadius: 1 }),
      /columns is missing/,
    ],
    [
      'thrusts too few',
      () => layout.units(skerryLink, { maxThrust: [1, 2], torqueRatio: 1 }),
      /a list of 8, one per rotor/,
    ],
    ['no thrust', () => layout.units(skerryLink, { maxThrust: 0, torqueRatio: 1 }), /maxThrust/],
  ])('refuse %s', (_, call, message) => {
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
