import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from '../wing/refusals.js'

const { drag } = preloaded
type Records = ReturnType<typeof drag.stowageOptions>

const rotors = {
  count: 8,
  rotorMass: 16,
  blades: 2,
  radius: 1.3,
  chord: 0.14,
  hubDiameter: 0.25,
  hubHeight: 0.1,
  podDiameter: 0.25,
  podHeight: 0.15,
  speed: 58,
  density: 1.1,
  dynamicViscosity: 1.79e-5,
}
const best = (records: Records, name: string) => records.find((one) => one.name === name)?.dragArea.best ?? Number.NaN

describe('drag.stowageOptions(options)', () => {
  const records = drag.stowageOptions(rotors)

  it('are the seven ways, the open cavity with and without a step, all of one shape', () => {
    expect(records.map((one) => one.name)).toEqual([
      'exposed',
      'feathered and lined up',
      'retracted into the body',
      'folded into a wing edge',
      'buried with an open cavity',
      'buried with an open cavity and a lower-surface step',
      'buried with doors',
      'ducted',
    ])
    for (const record of records) {
      expect(Object.keys(record).sort()).toEqual(
        ['name', 'dragArea', 'mechanismMass', 'complexity', 'limits', 'source', 'tested'].sort(),
      )
      expect(Object.isFrozen(record) && Object.isFrozen(record.dragArea)).toBe(true)
      expect(record.source).toMatch(/^house model/)
      expect(record.tested).toBe(false)
    }
  })

  it('carry a band of 30 to 50 % because none is tested', () => {
    for (const { dragArea } of records) {
      const width = (dragArea.high - dragArea.low) / (2 * dragArea.best)
      expect(width).toBeGreaterThanOrEqual(0.3)
      expect(width).toBeLessThanOrEqual(0.5)
    }
  })

  it('put stowed below lined up below exposed, and a duct across the stream above all', () => {
    expect(best(records, 'retracted into the body')).toBeLessThan(best(records, 'feathered and lined up'))
    expect(best(records, 'feathered and lined up')).toBeLessThan(best(records, 'exposed'))
    expect(best(records, 'buried with doors')).toBeLessThan(best(records, 'buried with an open cavity'))
    expect(Math.max(...records.map((one) => one.dragArea.best))).toBe(best(records, 'ducted'))
  })

  it('cost less in line along the stream than spread across it (common practice, no source)', () => {
    const row = drag.stowageOptions({ ...rotors, inLine: { count: 4, spacing: 2.8 } })
    for (const name of ['exposed', 'feathered and lined up']) expect(best(row, name)).toBeLessThan(best(records, name))
    expect(best(row, 'buried with doors')).toBe(best(records, 'buried with doors'))
  })

  it('can reach the 38 % of parasite drag that retracting took from a tested, rotor-heavy model', () => {
    // Aerospace Science and Technology, 2021 (abstract read). The ratio belongs to that model, not to every aircraft.
    const [retracted, exposed] = [best(records, 'retracted into the body'), best(records, 'exposed')]
    const airframe = (exposed * (1 - 0.38) - retracted) / 0.38
    expect(airframe).toBeGreaterThan(0.2)
    expect(airframe).toBeLessThan(0.6)
  })

  it('takes no more from a step than the quarter that was seen at most (common practice, no source)', () => {
    const open = best(records, 'buried with an open cavity')
    expect(best(records, 'buried with an open cavity and a lower-surface step')).toBeGreaterThanOrEqual(
      open / 1.25 - 1e-12,
    )
  })

  it('say where each fits: wing edges, open cavity, lip radius (common practice, no source)', () => {
    const limits = (name: string) => records.find((one) => one.name === name)?.limits.join(' ') ?? ''
    expect(limits('folded into a wing edge')).toMatch(/only at the edges of a wing/)
    expect(limits('buried with an open cavity')).toMatch(/stays open in cruise/)
    expect(limits('buried with an open cavity')).toMatch(/lip radius/)
  })

  it('scale with the number of rotors, and may be asked for one by one', () => {
    const [one] = drag.stowageOptions({ ...rotors, count: 1, only: ['ducted'], ductHeight: 0.2 })
    const [eight] = drag.stowageOptions({ ...rotors, only: ['ducted'], ductHeight: 0.2 })
    expectClose(eight?.dragArea.best ?? 0, 8 * (one?.dragArea.best ?? 0), 1e-14)
    expectClose(eight?.mechanismMass.best ?? 0, 8 * (one?.mechanismMass.best ?? 0), 1e-14)
  })

  it('advise once that they are a house model', () => {
    expect(listenWhile(() => drag.stowageOptions(rotors)).advisories.map((one) => one.code)).toEqual(['HOUSE_MODEL'])
  })

  itRefuses(drag.stowageOptions, rotors as Parameters<typeof drag.stowageOptions>[0], [
    ['half a rotor', { count: 0.5 }],
    ['rotors without mass', { rotorMass: 0 }],
    ['a duct without height', { ductHeight: 0 }],
    ['a radius of 0', { radius: 0 }],
    ['no names', { only: [] }],
    ['names that are no list', { only: 'ducted' }],
    ['an unknown name', { only: ['retracted'] }],
    ['an unknown field of the row', { inLine: { count: 2, distance: 3 } }],
    ['half a rotor in the row', { inLine: { count: 0.5, spacing: 3 } }],
    ['a row without spacing', { inLine: { count: 2, spacing: 0 } }],
    ['rows that do not divide the rotors', { inLine: { count: 3, spacing: 3 } }],
    ['hubs that overlap', { inLine: { count: 2, spacing: 0.1 } }],
    ['a size beyond numbers', { rotorMass: 1e308 }],
  ])
})

describe('drag.stowageRecord(options)', () => {
  const report = { name: 'own', dragArea: 0.1, mechanismMass: 20, source: 'report 7' }

  it('gives a number a band of 40 %, a tested drag one of 10 %, and leaves a band as it is', () => {
    expect(drag.stowageRecord(report).dragArea).toEqual({ low: 0.06, best: 0.1, high: 0.13999999999999999 })
    const tested = drag.stowageRecord({ ...report, tested: true })
    expectClose(tested.dragArea.high, 0.11, 1e-14)
    expectClose(tested.mechanismMass.high, 28, 1e-14)
    const band = { low: 0.09, best: 0.1, high: 0.2 }
    expect(drag.stowageRecord({ ...report, dragArea: band }).dragArea).toEqual(band)
  })

  it('has the shape of the built-in ones', () => {
    const [builtIn] = drag.stowageOptions({ ...rotors, only: ['exposed'] })
    expect(Object.keys(drag.stowageRecord(report)).sort()).toEqual(Object.keys(builtIn ?? {}).sort())
  })

  itRefuses(drag.stowageRecord, report as Parameters<typeof drag.stowageRecord>[0], [
    ['no name', { name: '' }],
    ['no source', { source: ' ' }],
    ['negative drag', { dragArea: -1 }],
    ['a mass that is text', { mechanismMass: '5' }],
    ['a band out of order', { dragArea: { low: 2, best: 1, high: 3 } }],
    ['a band below nothing', { dragArea: { low: -1, best: 1, high: 3 } }],
    ['a band without a best', { dragArea: { low: 1, high: 3 } }],
    ['a band without end', { dragArea: { low: 1, best: 2, high: Number.POSITIVE_INFINITY } }],
    ['an unknown field of a band', { dragArea: { low: 1, best: 2, high: 3, middle: 2 } }],
    ['a complexity of 100', { complexity: 100 }],
    ['limits that are no list', { limits: 'none' }],
    ['limits that are no sentences', { limits: [1] }],
    ['tested as text', { tested: 'yes' }],
  ])
})

describe('drag.breakEvenGrowth(options)', () => {
  it('is 27 % for range and 8.3 % for endurance at a cut of 38 %, by the exact closed forms', () => {
    const limit = drag.breakEvenGrowth({ dragCut: 0.38 })
    expectClose(limit.range, 0.62 ** -0.5 - 1, 1e-15)
    expectClose(limit.endurance, 0.62 ** (-1 / 6) - 1, 1e-15)
    expect(limit.range.toFixed(2)).toBe('0.27')
    expect(limit.endurance.toFixed(3)).toBe('0.083')
  })

  it('agrees with the best speeds of the polar flown before and after', () => {
    const at = (zeroLiftDrag: number, weight: number) => {
      const flight = {
        polar: drag.polar({ zeroLiftDrag, aspectRatio: 10, spanEfficiency: 0.8 }),
        weight,
        wingArea: 14,
        density: 1.1,
      }
      return { drag: drag.leastDragSpeed(flight).drag, power: drag.leastPowerSpeed(flight).power }
    }
    const limit = drag.breakEvenGrowth({ dragCut: 0.2 })
    const before = at(0.05, 16_000)
    expectClose(at(0.04, 16_000 * (1 + limit.range)).drag, before.drag, 1e-13)
    expectClose(at(0.04, 16_000 * (1 + limit.endurance)).power, before.power, 1e-13)
    expectClose(before.drag / at(0.04, 16_000).drag, 1 + limit.rangeGain, 1e-13)
    expectClose(before.power / at(0.04, 16_000).power, 1 + limit.enduranceGain, 1e-13)
  })

  it('gains more range than endurance, and endurance is eaten by mass sooner', () => {
    // Direction and sizes: 21 % speed at the same range, 13 % range at the same speed, about 7 % endurance (abstract read).
    for (const dragCut of [0.05, 0.17, 0.38]) {
      const limit = drag.breakEvenGrowth({ dragCut })
      expect(limit.rangeGain).toBeGreaterThan(limit.enduranceGain)
      expect(limit.enduranceGain).toBeGreaterThan(0)
      expect(limit.endurance).toBeLessThan(limit.range)
    }
    // The quoted endurance needs a cut of 24 %, the two of range one near 18 %: none fits the 38 % of the model.
    expect(drag.breakEvenGrowth({ dragCut: 0.17 }).enduranceGain).toBeLessThan(0.07)
    expect(drag.breakEvenGrowth({ dragCut: 0.38 }).enduranceGain).toBeGreaterThan(0.12)
  })

  it('is a loss of mass where drag rises', () => {
    expect(drag.breakEvenGrowth({ dragCut: -0.2 }).range).toBeLessThan(0)
  })

  itRefuses(drag.breakEvenGrowth, { dragCut: 0.2 }, [
    ['no drag left', { dragCut: 1 }],
    ['a cut that is no number', { dragCut: Number.NaN }],
  ])
})

describe('drag.compareStowage(options)', () => {
  const record = (name: string, dragArea: number, mechanismMass: number) =>
    drag.stowageRecord({
      name,
      dragArea: { low: dragArea * 0.9, best: dragArea, high: dragArea * 1.1 },
      mechanismMass,
      source: 'invented',
    })
  const aircraft = {
    mass: 1600,
    airframeDragArea: 0.42,
    wingArea: 15,
    aspectRatio: 11,
    spanEfficiency: 0.8,
    density: 1.1,
    speed: 58,
  }
  const compare = (...records: ReturnType<typeof record>[]) => drag.compareStowage({ ...aircraft, records })

  it('finds what pays at both ends, what does not, and what is undecided', () => {
    const answers = compare(
      record('bare', 0.3, 0),
      record('light', 0.05, 20),
      record('heavy', 0.05, 1000),
      record('near', 0.05, 330),
    )
    expect(answers.map((one) => one.verdict.range)).toEqual(['reference', 'pays', 'does not pay', 'undecided'])
  })

  it('can pay for range and not for endurance, which is more sensitive to mass', () => {
    const [, one] = compare(record('bare', 0.3, 0), record('middling', 0.05, 230))
    expect(one?.verdict).toEqual({ range: 'pays', endurance: 'does not pay' })
    expect(one?.gain.range.best).toBeGreaterThan(0)
    expect(one?.gain.endurance.best).toBeLessThan(0)
  })

  it('breaks even at the mass it names: there the gain is nothing', () => {
    const [, one] = compare(record('bare', 0.3, 10), record('hidden', 0.05, 30))
    const atRange = compare(record('bare', 0.3, 10), record('hidden', 0.05, one?.breakEvenMass.range.best ?? 0))
    const atEndurance = compare(record('bare', 0.3, 10), record('hidden', 0.05, one?.breakEvenMass.endurance.best ?? 0))
    expect(Math.abs(atRange[1]?.gain.range.best ?? 1)).toBeLessThan(1e-14)
    expect(Math.abs(atEndurance[1]?.gain.endurance.best ?? 1)).toBeLessThan(1e-14)
  })

  it('tells the power at cruise with the growth in it', () => {
    const [bare, hidden] = compare(record('bare', 0.3, 0), record('hidden', 0.05, 40))
    const polar = drag.polar({ zeroLiftDrag: 0.47 / 15, aspectRatio: 11, spanEfficiency: 0.8 })
    const flown = drag.powerRequired({ polar, weight: 1640 * 9.80665, wingArea: 15, density: 1.1, speed: 58 })
    expectClose(hidden?.cruisePower.best ?? 0, flown.power, 1e-13)
    expect(bare?.cruisePower.best).toBeGreaterThan(flown.power)
  })

  it('multiplies the mechanism by the growth factor of the closure', () => {
    const records = [record('bare', 0.3, 0), record('hidden', 0.05, 40)]
    const [, grown] = drag.compareStowage({ ...aircraft, records, growthFactor: 2.5 })
    expectClose(grown?.massGrowth.best ?? 0, (2.5 * 40) / 1600, 1e-15)
  })

  it('turns round when the other one is the reference', () => {
    const records = [record('bare', 0.3, 0), record('light', 0.05, 20)]
    const [bare, light] = drag.compareStowage({ ...aircraft, records, reference: 'light' })
    expect(bare?.verdict.range).toBe('does not pay')
    expect(light?.verdict.range).toBe('reference')
  })

  it('takes built-in and own records together', () => {
    const records = [...drag.stowageOptions(rotors), record('own', 0.02, 15)]
    const answers = drag.compareStowage({ ...aircraft, records })
    expect(answers).toHaveLength(9)
    expect(answers.at(-1)?.verdict.range).toBe('pays')
    expect(answers.find((one) => one.name === 'ducted')?.verdict.range).toBe('does not pay')
  })

  const records = [record('bare', 0.3, 0), record('hidden', 0.05, 40)]
  itRefuses(drag.compareStowage, { ...aircraft, records } as Parameters<typeof drag.compareStowage>[0], [
    ['no records', { records: [] }],
    ['records that are no list', { records: records[0] }],
    ['what is no record', { records: [null] }],
    ['a record without drag', { records: [{ ...records[0], dragArea: undefined }] }],
    ['a record without mass', { records: [{ ...records[0], mechanismMass: Number.NaN }] }],
    ['a record without complexity', { records: [{ ...records[0], complexity: undefined }] }],
    ['a name twice', { records: [records[0], records[0]] }],
    ['a reference that is not there', { reference: 'bear' }],
    ['no mass', { mass: 0 }],
    ['no airframe', { airframeDragArea: 0 }],
    ['no wing', { wingArea: 0 }],
    ['no aspect ratio', { aspectRatio: 0 }],
    ['an efficiency above 1', { spanEfficiency: 1.1 }],
    ['no air', { density: 0 }],
    ['no speed', { speed: 0 }],
    ['a growth factor of 0', { growthFactor: 0 }],
    ['a mechanism heavier than twenty aircraft', { records: [records[0], record('anvil', 0.05, 1e6)] }],
    ['a lighter one than nothing', { records: [record('anvil', 0.05, 1e4), record('feather', 0.05, 0)] }],
    ['a size beyond numbers', { speed: 1e110 }],
  ])
})
