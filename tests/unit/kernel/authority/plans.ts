/** Plans of lift rotors that the tests of authority share: rings, a lift-plus-cruise plan, and random ones from a seed. */
import type { LiftRotor } from '../../../../kernel/library/authority/index.js'

export const signs = (text: string) => [...text].map((letter) => (letter === 'P' || letter === '+' ? 1 : -1))

/** Rotors on a ring, the first ahead, numbered clockwise. */
export function ring(text: string, maxThrust: number, arm = 3, torqueRatio = 0.1): LiftRotor[] {
  return signs(text).map((spin, at, all) => {
    const angle = (2 * Math.PI * at) / all.length
    return { x: arm * Math.cos(angle), y: arm * Math.sin(angle), spin, maxThrust, torqueRatio }
  })
}

/** Three on either side, as a lift-plus-cruise aircraft may have them; `outward` leans each away from the middle. */
export function threePerSide(spins: readonly number[], outward = 0): LiftRotor[] {
  const places = [
    [2, -2],
    [0, -2.5],
    [-2, -2],
    [2, 2],
    [0, 2.5],
    [-2, 2],
  ] as const
  return places.map(([x, y], at) => ({
    x,
    y,
    spin: spins[at] ?? 1,
    maxThrust: 1e5,
    torqueRatio: 0.1,
    cant: outward * Math.sign(y),
  }))
}

/** Numbers from 0 to 1, the same for the same seed. */
export function seededShare(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296
    return state / 4_294_967_296
  }
}

/** Half of them with mirror images, places on a grid of half metres so that rotors stand in line now and then. */
export function randomPlan(share: () => number) {
  const count = 2 + Math.floor(share() * 23)
  const weight = 1 + 1000 * share()
  const mirrored = share() < 0.5
  const alike = share() < 0.5
  const rotors: (LiftRotor & { cant: number })[] = []
  for (let at = 0; at < count; at += 1) {
    const before = rotors[at - 1]
    if (mirrored && at % 2 === 1 && before !== undefined) {
      rotors.push({ ...before, y: -before.y, spin: -before.spin, cant: -before.cant })
      continue
    }
    rotors.push({
      x: Math.round(20 * (share() - 0.5)) / 2,
      y: Math.round(20 * (share() - 0.5)) / 2,
      spin: share() < 0.5 ? 1 : -1,
      maxThrust: alike ? (3 * weight) / count : (6 * weight * share()) / count,
      torqueRatio: 0.05 + 0.1 * share(),
      cant: share() < 0.5 ? 0 : 0.2 * (share() - 0.5),
    })
  }
  const wanted = Math.min(count - 1, Math.floor(3 * share()))
  const lost: number[] = []
  while (lost.length < wanted) {
    const place = Math.floor(share() * count)
    if (!lost.includes(place)) lost.push(place)
  }
  return { rotors, weight, lost, centreOfGravity: { x: share() - 0.5, y: mirrored ? 0 : 0.5 * (share() - 0.5) } }
}
