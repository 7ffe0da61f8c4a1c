/** What the methods of the kernel leave out, subject by subject: the sign of each omission and its likely size. */

/** Which way the answer errs without it. */
export type Effect = 'flatters' | 'penalises' | 'either way'

export interface Omission {
  readonly subject: string
  readonly notModelled: string
  /** What it bears on. */
  readonly on: string
  readonly effect: Effect
  /** In words, with its range. */
  readonly likelySize: string
  readonly source: string
}

type Row = readonly [notModelled: string, on: string, effect: Effect, likelySize: string, source?: string]

const house = 'common practice, no source'

const rows = {
  air: [
    ['humidity', 'density', 'flatters', 'up to 1 % at 30 degrees Celsius', 'gas law of moist air, textbook'],
    ['wind, gusts and turbulence in flight', 'energy and control', 'flatters', '3 to 10 % of energy'],
  ],
  rotor: [
    [
      'ground effect',
      'hover power near the pad',
      'penalises',
      '0 to 15 % below one diameter',
      'Leishman, 2006, chapter 5',
    ],
    ['blade flexibility and unsteady wakes', 'power and vibration', 'either way', '2 to 5 % of power'],
    [
      'interaction of rotor wakes in transition',
      'power between hover and conversion',
      'flatters',
      '5 to 20 % of rotor power',
    ],
    ['icing, rain, insects and erosion', 'profile power', 'flatters', '2 to 10 % of hover power'],
  ],
  propeller: [
    ['slipstream on body and tail', 'cruise drag', 'flatters', '2 to 6 % of thrust'],
    ['installation angle and inflow of the body', 'efficiency', 'either way', '1 to 3 %'],
  ],
  wing: [
    ['interference of booms and lift rotors on lift', 'maximum lift', 'flatters', '5 to 15 % of maximum lift'],
    ['aeroelastic twist', 'loads and control', 'either way', '2 to 5 % of load'],
  ],
  drag: [
    ['gaps, steps and leakage beyond the share stated', 'zero-lift drag', 'flatters', '3 to 10 % of drag'],
    ['unsteady wakes of stopped rotors', 'drag and vibration', 'flatters', "20 to 40 % of the rotors' own drag"],
    ['trim drag', 'cruise drag', 'flatters', '1 to 4 % of drag'],
  ],
  mass: [
    ['items that are not in any list', 'empty mass', 'flatters', '3 to 8 % of empty mass'],
    ['crash loads, lightning, bird strike and fatigue', 'structure', 'flatters', '3 to 10 % of structure'],
    ['manufacturing least gauges and joints', 'structure', 'flatters', '5 to 15 % of composite parts'],
  ],
  battery: [
    ['differences between cells and strings', 'usable energy and power', 'flatters', '2 to 5 %'],
    ['ageing by calendar and by temperature', 'life', 'flatters', '10 to 40 % of cycles'],
    ['slow voltage relaxation (diffusion)', 'power after a long cruise', 'flatters', '3 to 8 % of power'],
    ['containment of a burning cell', 'pack mass', 'flatters', '5 to 15 % of pack mass'],
  ],
  powertrain: [
    ['field weakening and hot windings', 'motor losses', 'flatters', '5 to 20 % of loss'],
    [
      'thin or hot air for cooling',
      'continuous power',
      'flatters',
      '0.3 % of torque per 100 m, 0.8 % per K',
      'powertrain.motorInAir counts it',
    ],
  ],
  mission: [
    ['manoeuvring, holding and routes that are not straight', 'energy', 'flatters', '3 to 8 % of energy'],
    ['taxi, system tests and waiting with rotors turning', 'energy', 'flatters', '0.5 to 3 % of energy'],
    ['dynamics of the transition', 'peak power and height', 'flatters', '5 to 15 % of peak power'],
  ],
  layout: [
    ['access, doors, maintenance and wiring runs', 'size and mass', 'flatters', '1 to 3 % of empty mass'],
    ['recirculation and dust between rotors, body and ground', 'power and wear', 'flatters', '2 to 8 % of hover power'],
  ],
  authority: [
    [
      'rotor dynamics and control law after a loss',
      'height lost and overshoot',
      'flatters',
      '10 to 30 % more peak thrust',
    ],
    ['gust beyond the steady wind', 'control margin', 'flatters', '10 to 20 % of the margin'],
  ],
  sizing: [
    [
      'growth of the mass with the programme',
      'gross mass',
      'flatters',
      '10 to 25 % of empty mass, see limits.massGrowth',
    ],
    ['noise as a bound', 'disk loading and tip speed', 'flatters', 'may decide the rotors'],
  ],
} as const satisfies Record<string, readonly Row[]>

export type OmissionSubject = keyof typeof rows

/** Frozen, so that no cell leaves anything behind for the next. */
export const omissions: readonly Omission[] = Object.freeze(
  Object.entries(rows as Record<string, readonly Row[]>).flatMap(([subject, list]) =>
    list.map(([notModelled, on, effect, likelySize, source = house]) =>
      Object.freeze({ subject, notModelled, on, effect, likelySize, source }),
    ),
  ),
)

export const omissionSubjects = Object.freeze(Object.keys(rows)) as readonly OmissionSubject[]
