import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { mass, u } = preloaded

/** The aircraft of the course notebook whose numbers were read: 5354 lb, q 106.456 psf. */
const notebook = { grossMass: 5354 * u.lb, ultimateLoadFactor: 5.25, dynamicPressure: 106.456 * u.psf }
/** One electric aircraft on which all equations were worked out apart. */
const shuttle = {
  grossMass: 2000,
  ultimateLoadFactor: 5.7,
  area: 14,
  aspectRatio: 10,
  taper: 0.45,
  thicknessRatio: 0.15,
  dynamicPressure: 2000.9565,
  speed: 60,
}

describe('mass.wing(options)', () => {
  it('gives what Torenbeek and Cessna give for one aircraft (from memory; read)', () => {
    expectClose(mass.wing({ ...shuttle, method: 'torenbeek' }), 164.844, 1e-5)
    expectClose(mass.wing({ ...shuttle, method: 'cessna' }), 370.992, 1e-5)
  })

  it.each(['raymer', 'torenbeek', 'nicolai', 'cessna'] as const)(
    'by %s grows with area, load and gross mass',
    (method) => {
      const base = mass.wing({ ...shuttle, method })
      expect(mass.wing({ ...shuttle, method, grossMass: 2200 })).toBeGreaterThan(base)
      expect(mass.wing({ ...shuttle, method, ultimateLoadFactor: 6 })).toBeGreaterThan(base)
      expect(mass.wing({ ...shuttle, method, aspectRatio: 12 })).toBeGreaterThan(base)
    },
  )

  it('names the option that the method lacks', () => {
    const { dynamicPressure: _, ...without } = shuttle
    expect(() => mass.wing(without)).toThrow(/dynamicPressure is missing.*method "raymer"/)
  })

  it('refuses a method it does not have', () => {
    const wrong = { ...shuttle, method: 'guess' as 'raymer' }
    expect(() => mass.wing(wrong)).toThrow(/one of "raymer", "torenbeek", "nicolai", "cessna"/)
  })

  it('advises on aircraft lighter than the fit, and on slender wings by Cessna', () => {
    const heard = listenWhile(() => mass.wing({ ...shuttle, grossMass: 32, method: 'cessna' }))
    expect(heard.advisories.map((one) => one.code)).toEqual(['OUTSIDE_FIT', 'MASS_METHOD'])
  })

  it.each<[string, object]>([
    ['no area', { area: 0 }],
    ['a taper above 1', { taper: 2 }],
    ['a gross mass that is not a number', { grossMass: Number.NaN }],
    ['an unknown option', { wingArea: 14 }],
  ])('refuses %s', (_, wrong) => {
    expect(() => mass.wing({ ...shuttle, ...wrong })).toThrow(InvalidInput)
  })
})

describe('mass.verticalTail(options)', () => {
  it('gives the printed 39 lb of the course notebook, with the wing ratios in it (read), within the pound printed', () => {
    const fin = mass.verticalTail({
      ...notebook,
      area: 17 * u.ft2,
      aspectRatio: 8,
      taper: 0.55,
      thicknessRatio: 0.16,
      sweep: 30 * u.deg,
    })
    expectClose(fin / u.lb, 39, 0.013)
  })
})

describe('mass.flightControls, mass.avionics, mass.furnishing', () => {
  it('give the printed 90, 83 and 213 lb of the course notebook (read)', () => {
    expectClose(mass.flightControls(notebookMass) / u.lb, 90, 0.01)
    expectClose(mass.avionics(notebookMass) / u.lb, 83, 0.01)
    expectClose(mass.furnishing({ ...notebookMass, occupants: 6 }) / u.lb, 213, 0.01)
  })

  it('give 86.92 kg of furnishing by Raymer for 2000 kg (from memory), and nothing with an advisory where it turns negative', () => {
    expectClose(mass.furnishing({ grossMass: 2000, method: 'raymer' }), 86.92, 1e-4)
    const heard = listenWhile(() => expect(mass.furnishing({ grossMass: 400, method: 'raymer' })).toBe(0))
    expect(heard.advisories).toMatchObject([{ code: 'NEGATIVE_MASS' }])
  })

  it('give avionics from the boxes and controls from the size, by Raymer', () => {
    expectClose(mass.avionics({ uninstalledMass: 20, method: 'raymer' }) / u.lb, 2.117 * (20 / u.lb) ** 0.933, 1e-12)
    const controls = mass.flightControls({
      method: 'raymer',
      grossMass: 2000,
      length: 7,
      span: 11.8,
      ultimateLoadFactor: 5.7,
    })
    expect(controls).toBeGreaterThan(5)
    expect(controls).toBeLessThan(60)
  })
})
const notebookMass = { grossMass: 5354 * u.lb }

describe('mass.gear(options)', () => {
  it('takes 1.4 % of the gross mass off for fixed legs by Raymer: 134.42 kg (from memory)', () => {
    expectClose(mass.gear({ grossMass: 2000 }), 134.42, 1e-4)
  })

  it('gives 3 to 9 % of gross mass by any method for light aircraft (common practice, no source)', () => {
    for (const grossMass of [1500, 2000, 3000])
      for (const fixed of [true, false])
        for (const one of mass.spread('gear', { grossMass, fixed }).methods) {
          expect(one.mass / grossMass, one.method).toBeGreaterThan(0.025)
          expect(one.mass / grossMass, one.method).toBeLessThan(0.09)
        }
  })

  it('warns of the unit of the leg in the equation by Nicolai, and refuses a flag that is text', () => {
    expect(listenWhile(() => mass.gear({ grossMass: 2000, method: 'nicolai' })).advisories).toMatchObject([
      { code: 'MASS_METHOD' },
    ])
    expect(() => mass.gear({ grossMass: 2000, fixed: 'yes' as unknown as boolean })).toThrow(/true or false/)
  })
})

describe('mass.motor(options)', () => {
  it('gives the examples of the sources: 13.93 kg for 60 kW, 16.5 kg, 49.6 kg for 500 N m, 45.0 kg for a peak of 1000 N m (read)', () => {
    expectClose(mass.motor({ method: 'specificPower', power: 60e3 }), 13.93, 1e-3)
    expectClose(mass.motor({ method: 'regression', power: 60e3, torque: 1 }), 16.5, 1e-3)
    expectClose(mass.motor({ method: 'regression', power: 1, torque: 500 }), 49.6, 1e-3)
    expectClose(mass.motor({ method: 'regression', power: 1, torque: 1, peakTorque: 1000 }), 45.04, 1e-3)
    expectClose(mass.motor({ method: 'regression', power: 1, torque: 1, peakPower: 100e3 }), 15.65, 1e-3)
  })

  it('falls with the gear ratio, and is set by whichever of continuous and peak torque asks for more', () => {
    const direct = mass.motor({ torque: 300, peakTorque: 500 })
    expectClose(mass.motor({ torque: 300, peakTorque: 500, gearRatio: 4 }), direct / 4, 1e-14)
    expectClose(direct, 30, 1e-14)
    expectClose(mass.motor({ torque: 300, peakTorque: 800 }), 40, 1e-14)
  })
})

describe('mass.controller(options) and mass.propeller(options)', () => {
  it('give the examples of the sources: 1.555 kg, 0.0618 kg, 0.2569 kg; 0.0887 kg and 10.78 kg (read; the last from memory)', () => {
    expectClose(mass.controller({ method: 'inverter', power: 60e3 }), 1.555, 1e-3)
    expectClose(mass.controller({ method: 'small', power: 2e3 }), 0.0618, 1e-3)
    expectClose(mass.controller({ method: 'small', power: 10e3 }), 0.2569, 1e-3)
    expectClose(mass.propeller({ diameter: 0.6, power: 2e3, blades: 2 }), 0.0887, 1e-3)
    expectClose(mass.propeller({ diameter: 1.5, power: 60e3, blades: 3, materialFactor: 1 }), 10.78, 1e-3)
  })

  it('give a controller by specific power', () => {
    expectClose(mass.controller({ power: 60e3, specificPower: 20e3 }), 3, 1e-14)
  })
})

describe('mass.rotorBlades(options) and mass.hub(options)', () => {
  const blade = { blades: 2, radius: 1.3, chord: 0.16, tipSpeed: 165, thrust: 3000 }

  it('by geometry lie within a factor of two and a half of the printed equation for helicopters', () => {
    const blades = mass.spread('rotorBlades', blade)
    expect(blades.methods.map((one) => one.method)).toEqual(['geometry', 'prouty'])
    expect(blades.ratio).toBeLessThan(2.5)
    const hubs = mass.spread('hub', { ...pickHub(blade), bladeMass: blades.mean })
    expect(hubs.ratio).toBeLessThan(2.5)
  })

  it('grow with thrust and with the speed of the tip', () => {
    const base = mass.rotorBlades(blade)
    expect(mass.rotorBlades({ ...blade, thrust: 6000 })).toBeGreaterThan(base)
    expect(mass.rotorBlades({ ...blade, tipSpeed: 220 })).toBeGreaterThan(base)
  })

  it('refuse a tip speed at which the spar could not hold itself', () => {
    expect(() => mass.rotorBlades({ ...blade, tipSpeed: 900 })).toThrow(/below 822 m\/s/)
  })
})

function pickHub(blade: { blades: number; radius: number; tipSpeed: number }) {
  return { blades: blade.blades, radius: blade.radius, tipSpeed: blade.tipSpeed }
}

describe('mass.spread(item, options)', () => {
  it('shows four wings of one aircraft that differ by 2.25 (read and from memory)', () => {
    const wings = mass.spread('wing', shuttle)
    expect(wings.methods.map((one) => one.method)).toEqual(['raymer', 'torenbeek', 'nicolai', 'cessna'])
    expectClose(wings.ratio, 2.25, 1e-2)
    expectClose(wings.low, 164.844, 1e-5)
    expectClose(wings.high, 370.992, 1e-5)
    expect(wings.leftOut).toEqual([])
  })

  it('leaves out what lacks an option, and says which', () => {
    const { speed: _, ...without } = shuttle
    expect(mass.spread('wing', without).leftOut).toEqual([{ method: 'nicolai', needs: 'speed' }])
  })

  it('shows the four bodies of one aircraft within a factor of two', () => {
    const body = { grossMass: 2000, ultimateLoadFactor: 5.7, wettedArea: 30, length: 7, depth: 1.6, tailArm: 4 }
    const bodies = mass.spread('fuselage', {
      ...body,
      dynamicPressure: 2000.9565,
      speed: 60,
      diveSpeed: 80,
      occupants: 4,
    })
    expect(bodies.methods).toHaveLength(4)
    expectClose(bodies.methods[0]?.mass ?? 0, 145.85, 1e-4)
    expect(bodies.ratio).toBeLessThan(2)
  })

  it.each(['horizontalTail', 'verticalTail'] as const)('shows %s three ways within a factor of three', (item) => {
    const tail = { ...shuttle, area: 2.5, aspectRatio: item === 'horizontalTail' ? 5 : 1.6, thicknessRatio: 0.1 }
    const { speed: _, ...options } = tail
    const tails = mass.spread(item, item === 'horizontalTail' ? { ...options, arm: 4 } : options)
    expect(tails.methods).toHaveLength(3)
    expect(tails.ratio).toBeLessThan(3)
  })

  it('refuses an item it does not know, and options too few for any method', () => {
    expect(() => mass.spread('rudder' as 'wing', shuttle)).toThrow(/one of wing, horizontalTail/)
    expect(() => mass.spread('hub', { blades: 2 } as unknown as Parameters<typeof mass.hub>[0])).toThrow(/too few/)
    expect(listenWhile(() => mass.spread('gear', { grossMass: 30 })).advisories).toMatchObject([
      { code: 'OUTSIDE_FIT' },
    ])
  })
})
