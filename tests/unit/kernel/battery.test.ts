import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'

const { battery, u } = preloaded
const pack = { specificEnergy: (235 * u.Wh) / u.kg, usableShare: 0.8 }

describe('battery.massForEnergy(options)', () => {
  it('is the energy over what a kilogram can give', () => {
    const sized = battery.massForEnergy({ ...pack, energy: 47 * u.kWh })
    expectClose(sized.mass, 250, 1e-14)
    expectClose(sized.installedEnergy / u.kWh, 58.75, 1e-14)
    expectClose(sized.usableSpecificEnergy, 188 * u.Wh, 1e-14)
  })

  it('is inverted by battery.usableEnergy, at the end of life too', () => {
    const aged = { ...pack, capacityLeft: 0.85 }
    const { mass } = battery.massForEnergy({ ...aged, energy: 1e8 })
    expectClose(battery.usableEnergy({ ...aged, mass }), 1e8, 1e-14)
  })

  it('needs no pack for no energy', () => {
    expect(battery.massForEnergy({ ...pack, energy: 0 }).mass).toBe(0)
  })

  it('advises above the cells in service', () => {
    const heard = listenWhile(() => battery.massForEnergy({ ...pack, energy: 1, specificEnergy: 400 * 3600 }))
    expect(heard.advisories).toMatchObject([{ code: 'SPECIFIC_ENERGY', method: 'battery.massForEnergy' }])
    expect(listenWhile(() => battery.massForEnergy({ ...pack, energy: 1 })).advisories).toEqual([])
  })

  it.each<[string, object]>([
    ['a negative energy', { energy: -1 }],
    ['no specific energy', { specificEnergy: 0 }],
    ['a share above 1', { usableShare: 1.2 }],
    ['no share', { usableShare: 0 }],
    ['a capacity above new', { capacityLeft: 1.1 }],
    ['an unknown option', { usableshare: 0.8 }],
  ])('refuses %s', (_, wrong) => {
    expect(() => battery.massForEnergy({ ...pack, energy: 1, ...wrong })).toThrow(InvalidInput)
  })
})

describe('battery.usableEnergy(options)', () => {
  it('refuses a negative mass and an unknown option', () => {
    expect(() => battery.usableEnergy({ ...pack, mass: -1 })).toThrow(InvalidInput)
    const wrong = { ...pack, mass: 1, energy: 1 } as unknown as Parameters<typeof battery.usableEnergy>[0]
    expect(() => battery.usableEnergy(wrong)).toThrow(/option "energy"/)
  })
})
