/** Blades and hubs of lift rotors: no published regression covers this size, so a printed one for helicopters stands beside a model of geometry and stress. */
import { InvalidInput } from '../errors.js'
import type { Area, Density, Force, Length, Mass, Pressure, Ratio, Speed } from '../quantity.js'
import { u } from '../units.js'
import { type MassItem, massOf, nonNegative, positive, within } from './method.js'

export interface RotorBladesMassOptions {
  /** `'geometry'` when left out. */
  readonly method?: 'geometry' | 'prouty'
  /** Blades of the rotor. */
  readonly blades: Ratio
  /** [m] */
  readonly radius: Length
  /** Mean [m]. */
  readonly chord: Length
  /** [m/s] */
  readonly tipSpeed: Speed
  /** Greatest of the rotor, one rotor lost or in a manoeuvre [N]; for `'geometry'`. */
  readonly thrust?: Force
  /** Thickness over chord; 0.12 when left out. */
  readonly thicknessRatio?: Ratio
  /** Skin thickness [m]; 0.6 mm when left out. */
  readonly skin?: Length
  /** Of skin and spar [kg/m^3]; 1600 (carbon) when left out. */
  readonly density?: Density
  /** Of the core [kg/m^3]; 75 (foam) when left out. */
  readonly coreDensity?: Density
  /** Stress allowed in the spar under the greatest thrust, fatigue included [Pa]; 200 MPa when left out. */
  readonly allowableStress?: Pressure
}

export interface HubMassOptions {
  /** `'geometry'` when left out. */
  readonly method?: 'geometry' | 'prouty'
  readonly blades: Ratio
  /** Of the rotor [m]. */
  readonly radius: Length
  /** [m/s] */
  readonly tipSpeed: Speed
  /** Of all blades of the rotor [kg]. */
  readonly bladeMass: Mass
  /** Where the blades begin [m]; a tenth of the radius when left out. */
  readonly rootCutout?: Length
  /** Of the hub [kg/m^3]; 2700 (aluminium) when left out. */
  readonly density?: Density
  /** [Pa]; 150 MPa when left out. */
  readonly allowableStress?: Pressure
  /** Metal over what the pull alone needs; 8 when left out (house value). */
  readonly fittingFactor?: Ratio
}

/** Area of a four-digit section over thickness times chord: the integral of its thickness law. */
const sectionFill = 0.685
/** Girth of a thin section over chord. */
const girth = 2.05
/** Distance of the spar's caps over the section's thickness. */
const capDistance = 0.85

interface BladeNumbers {
  readonly blades: number
  readonly radius: number
  readonly chord: number
  readonly tipSpeed: number
  readonly thrust: number
  readonly thicknessRatio: number
  readonly skin: number
  readonly density: number
  readonly coreDensity: number
  readonly allowableStress: number
}

/** House model of the blades of one rotor [kg]; derivation in the doc comment of `rotorBlades`. */
function bladesByGeometry(o: BladeNumbers): number {
  const core: Mass = o.coreDensity * sectionFill * o.thicknessRatio * o.chord * o.chord * o.radius
  const shell: Mass = o.density * girth * o.chord * o.skin * o.radius
  const moment = (0.7 * o.radius * o.thrust) / o.blades
  const caps: Area = (2 * moment) / (o.allowableStress * capDistance * o.thicknessRatio * o.chord)
  const spar: Mass = (o.density * caps * o.radius) / 3
  // Pull of the blade m V^2/(2 R) carried by metal that tapers to nothing: rho R/(3 sigma) of it.
  const pullShare = (o.density * o.tipSpeed * o.tipSpeed) / (6 * o.allowableStress)
  if (pullShare >= 0.9)
    throw new InvalidInput({
      method: 'mass.rotorBlades',
      argument: 'tipSpeed',
      value: o.tipSpeed,
      unit: 'm/s',
      accepted: `below ${Math.sqrt((5.4 * o.allowableStress) / o.density).toFixed(0)} m/s, at which the spar could not hold even itself`,
    })
  return (o.blades * (core + shell + spar)) / (1 - pullShare)
}

export const rotorBladesItem: MassItem<RotorBladesMassOptions> = {
  call: 'mass.rotorBlades',
  checks: {
    blades: within('1', 1, 12),
    radius: positive('m'),
    chord: positive('m'),
    tipSpeed: positive('m/s'),
    thrust: nonNegative('N'),
    thicknessRatio: within('1', 0.04, 0.4),
    skin: positive('m'),
    density: positive('kg/m^3'),
    coreDensity: nonNegative('kg/m^3'),
    allowableStress: positive('Pa'),
  },
  fill: (o) => ({
    blades: o.blades,
    radius: o.radius,
    chord: o.chord,
    tipSpeed: o.tipSpeed,
    thrust: o.thrust,
    thicknessRatio: o.thicknessRatio ?? 0.12,
    skin: o.skin ?? 0.6e-3,
    density: o.density ?? 1600,
    coreDensity: o.coreDensity ?? 75,
    allowableStress: o.allowableStress ?? 200e6,
  }),
  methods: [
    {
      name: 'geometry',
      needs: ['blades', 'radius', 'chord', 'tipSpeed', 'thrust'],
      mass: bladesByGeometry,
    },
    {
      name: 'prouty',
      needs: ['blades', 'radius', 'chord', 'tipSpeed'],
      mass: (o) =>
        u.lb *
        0.026 *
        o.blades ** 0.66 *
        (o.chord / u.ft) *
        (o.radius / u.ft) ** 1.3 *
        (o.tipSpeed / (u.ft / u.s)) ** 0.67,
      caution:
        'The equation "prouty" was fitted to helicopter rotors of several metres; lift rotors of one to two metres are outside.',
    },
  ],
}

export const hubItem: MassItem<HubMassOptions> = {
  call: 'mass.hub',
  checks: {
    blades: within('1', 1, 12),
    radius: positive('m'),
    tipSpeed: positive('m/s'),
    bladeMass: positive('kg'),
    rootCutout: positive('m'),
    density: positive('kg/m^3'),
    allowableStress: positive('Pa'),
    fittingFactor: within('1', 1, 100),
  },
  fill: (o) => ({
    blades: o.blades,
    radius: o.radius,
    tipSpeed: o.tipSpeed,
    bladeMass: o.bladeMass,
    rootCutout: o.rootCutout,
    density: o.density ?? 2700,
    allowableStress: o.allowableStress ?? 150e6,
    fittingFactor: o.fittingFactor ?? 8,
  }),
  methods: [
    {
      name: 'geometry',
      needs: ['blades', 'radius', 'tipSpeed', 'bladeMass'],
      mass: (o) => {
        const pull = (o.bladeMass * o.tipSpeed * o.tipSpeed) / (2 * o.radius)
        return (o.fittingFactor * o.density * pull * (o.rootCutout ?? 0.1 * o.radius)) / o.allowableStress
      },
    },
    {
      name: 'prouty',
      needs: ['blades', 'radius', 'tipSpeed', 'bladeMass'],
      mass: (o) =>
        u.lb *
        0.0037 *
        o.blades ** 0.28 *
        (o.radius / u.ft) ** 1.5 *
        (o.tipSpeed / (u.ft / u.s)) ** 0.43 *
        (o.bladeMass / u.lb) ** 0.55,
      caution: 'The equation "prouty" was fitted to helicopter hubs with hinges; a stiff lift rotor is outside.',
    },
  ],
}

/**
 * Mass of the blades of one rotor, from geometry and stress or by a printed equation for helicopters.
 *
 * @equation geometry: m = b (core + skin + spar)/(1 - rho V^2/(6 sigma)); core = 0.685 rho_c (t/c) c^2 R; skin = 2.05 rho c t_s R; spar = rho A R/3, A = 2 (0.7 R T/b)/(0.85 sigma (t/c) c);
 * prouty: W = 0.026 b^0.66 c R^1.3 V^0.67 [lb, ft, ft/s]
 * @param options - `method`, `blades` b, `radius` R [m], `chord` c [m], `tipSpeed` V [m/s]; for geometry `thrust` T, the greatest of the rotor [N], and optional `thicknessRatio` (0.12), `skin` t_s
 * (0.6 mm), `density` rho (1600), `coreDensity` rho_c (75 kg/m^3), `allowableStress` sigma (200 MPa)
 * @returns mass of all blades of one rotor [kg]
 * @throws InvalidInput as `mass.wing`, and for a tip speed at which the spar could not hold itself
 * @method House model: a foam core, a skin of constant thickness, two caps that carry the thrust (acting at 0.7 R) and taper with its moment, and metal for the pull of rotation.
 * Reasonable because each part is the least that the job needs; fittings, erosion strips and balance weights come on top (10 to 20 %, from memory).
 * @validity Geometry: stiff rotors without hinges, tip speed up to 250 m/s. Prouty: helicopters; always an advisory.
 * @source House model. Prouty, R. W., Helicopter Performance, Stability, and Control, chapter 10 (from memory). Section area: integral of the four-digit thickness law.
 * @example
 * const blade = { blades: 2, radius: 1.5 * u.m, chord: 0.18 * u.m, tipSpeed: 165 * u.mps, thrust: 4 * u.kN }
 * mass.rotorBlades({ ...blade, method: 'prouty' }) // 5.925
 */
export function rotorBlades(options: RotorBladesMassOptions): Mass {
  return massOf(rotorBladesItem, options)
}

/**
 * Mass of the hub of one rotor, from the pull of its blades or by a printed equation for helicopters.
 *
 * @equation geometry: m = k rho F r/sigma, F = m_b V^2/(2 R) of all blades; prouty: W = 0.0037 b^0.28 R^1.5 V^0.43 W_b^0.55 [lb, ft, ft/s]
 * @param options - `method`, `blades` b, `radius` R [m], `tipSpeed` V [m/s], `bladeMass` m_b of all blades [kg]; for geometry optional `rootCutout` r (0.1 R), `density` rho (2700 kg/m^3),
 * `allowableStress` sigma (150 MPa), `fittingFactor` k (8)
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method House model: metal that carries the blades' pull from the shaft to the root, times a factor for grips, bolts and bending, which is a guess within a factor of two.
 * @validity Geometry: fixed pitch. Prouty: helicopters; always an advisory. A variable-pitch hub is two to three times as heavy (from memory).
 * @source House model. Prouty, R. W., Helicopter Performance, Stability, and Control, chapter 10, with the polar inertia of uniform blades (from memory).
 * @example
 * mass.hub({ blades: 2, radius: 1.5 * u.m, tipSpeed: 165 * u.mps, bladeMass: 6 * u.kg }) // 1.1761
 */
export function hub(options: HubMassOptions): Mass {
  return massOf(hubItem, options)
}
