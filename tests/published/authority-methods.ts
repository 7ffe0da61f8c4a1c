/** How the kernel answers the published cases of lift rotors lost and of reliability: one entry per kind of case. */
import { preloaded } from '../../kernel/library/index.js'
import type { Case } from './cases.js'
import type { Methods } from './check-cases.js'

const { authority, reliability } = preloaded
type Inputs = Case['inputs']
type Axes = readonly ('lift' | 'roll' | 'pitch' | 'yaw')[]

const at = (inputs: Inputs, key: string): number => {
  const value = inputs[key]
  if (value === undefined) throw new Error(`the case lacks ${key}`)
  return value
}

/** Some inputs of these cases are words or lists, which the type of the common file does not know. */
const spinsOf = (inputs: Inputs) => [...(inputs.spin as unknown as string)].map((letter) => (letter === 'P' ? 1 : -1))
const generatorOf = (inputs: Inputs) => inputs.generator as unknown as readonly (readonly number[])[]

/** Rotors on a ring, the first ahead, numbered clockwise; P yaws the aircraft nose right. */
export const ring = (spins: readonly number[], maxThrust: number, arm = 1, torqueRatio = 0.1) =>
  spins.map((spin, place) => {
    const angle = (2 * Math.PI * place) / spins.length
    return { x: arm * Math.cos(angle), y: arm * Math.sin(angle), spin, maxThrust, torqueRatio }
  })

/** Rotors are numbered from 1 in the sources; null is none lost. */
const lostOf = (inputs: Inputs) => (inputs.failed_rotor ? [inputs.failed_rotor - 1] : [])

function index(inputs: Inputs): number {
  return authority.trim({
    rotors: ring(spinsOf(inputs), at(inputs, 'K_max_N'), at(inputs, 'arm_m'), at(inputs, 'k_mu_m')),
    weight: at(inputs, 'mass_kg') * at(inputs, 'g'),
    lost: lostOf(inputs),
  }).index
}

/** The cases know no thrust limit; a hundred weights are none. */
export function trimOf(inputs: Inputs, hold: Axes) {
  return authority.trim({ rotors: ring(spinsOf(inputs), 100), weight: 1, lost: lostOf(inputs), hold })
}

const peak = (inputs: Inputs, hold: Axes): number => {
  const { peakShare } = trimOf(inputs, hold)
  if (peakShare === undefined) throw new Error('no trim')
  return peakShare
}

export const methods: Methods = [
  [/^acai-/, index],
  [/^lp-.*-noyaw$/, (i) => peak(i, ['lift', 'roll', 'pitch'])],
  [/^lp-/, (i) => peak(i, ['lift', 'roll', 'pitch', 'yaw'])],
  [
    /^kofn-qmax-/,
    (i) => reliability.requiredUnitFailure({ needed: at(i, 'k'), of: at(i, 'n'), target: at(i, 'target') }),
  ],
  [/^kofn-/, (i) => reliability.kOfN({ needed: at(i, 'k'), of: at(i, 'n'), unitFailure: at(i, 'q_unit') })],
  [/^markov-/, (i) => reliability.chain({ generator: generatorOf(i), time: at(i, 'lam_t') }).reliability],
  [/^mttf-/, (i) => reliability.chain({ generator: generatorOf(i), time: 1 }).meanTime ?? Number.NaN],
]
