/**
 * Open-circuit voltage of a measured 5 Ah 21700 cell (nickel-rich positive, graphite with silicon oxide negative), from the
 * published fits of its two electrodes. Kept as the fits, because a table of them would be longer and less exact.
 *
 * Source: Chen, C.-H., et al., Development of Experimental Techniques for Parameterization of Multi-scale Lithium-ion Battery Models,
 * Journal of the Electrochemical Society 167, 2020, 080534 (fits and cell data read in a public parameter file that cites the paper).
 */

/** Potential of the negative electrode [V] at its stoichiometry. */
export function negativePotential(x: number): number {
  return (
    1.9793 * Math.exp(-39.3631 * x) +
    0.2482 -
    0.0909 * Math.tanh(29.8538 * (x - 0.1234)) -
    0.04478 * Math.tanh(14.9159 * (x - 0.2769)) -
    0.0205 * Math.tanh(30.4444 * (x - 0.6103))
  )
}

/** Potential of the positive electrode [V] at its stoichiometry. */
export function positivePotential(y: number): number {
  return (
    -0.809 * y +
    4.4875 -
    0.0428 * Math.tanh(18.5138 * (y - 0.5542)) -
    17.7326 * Math.tanh(15.789 * (y - 0.3117)) +
    17.5842 * Math.tanh(15.9308 * (y - 0.312))
  )
}

/** Stoichiometries at which the pair stands at 2.5 V and at 4.2 V: roots of the fits on the cell's lithium inventory. */
export const stoichiometry = Object.freeze({
  negative: Object.freeze({ empty: 0.026345790270645767, full: 0.9106180466524074 }),
  positive: Object.freeze({ empty: 0.853974674630047, full: 0.2638452245913312 }),
})

/** Charge between the two voltages [C]; the nominal capacity is 3 % below. */
export const fittedCapacity = 5.153198325955143 * 3600

/** Open-circuit voltage [V] of the pair at a state of charge: 0 at 2.5 V, 1 at 4.2 V. */
export function fittedVoltage(stateOfCharge: number): number {
  const { negative, positive } = stoichiometry
  const x = negative.empty + stateOfCharge * (negative.full - negative.empty)
  const y = positive.empty + stateOfCharge * (positive.full - positive.empty)
  return positivePotential(y) - negativePotential(x)
}

/** Knots: close together below a tenth, where the negative electrode runs out and a straight line would be 10 mV off. */
export const fittedKnots: readonly number[] = Object.freeze([
  ...Array.from({ length: 40 }, (_, index) => index / 400),
  ...Array.from({ length: 91 }, (_, index) => (10 + index) / 100),
])
