/**
 * A long notebook that repeats: the same seed gives the same document. Rationale with mathematics, sizing cells that read each other, and
 * figures of every common kind, as in a concept study that has grown for months.
 */

/** The 32-bit generator known as mulberry32 (T. Ettinger, public domain, from memory). */
function chance(seed) {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let value = state
    value = Math.imul(value ^ (value >>> 15), value | 1)
    value ^= value + Math.imul(value ^ (value >>> 7), value | 61)
    return ((value ^ (value >>> 14)) >>> 0) / 4294967296
  }
}

const figures = [
  (n) => [
    `const speeds${n} = Array.from({ length: 61 }, (_, step) => (30 + step) * u.mps)`,
    `const figure${n} = figure.line({`,
    `  caption: 'Power required, variant ${n}.',`,
    `  x: { label: 'true airspeed', unit: 'm/s', values: speeds${n} },`,
    "  y: { label: 'power', unit: 'kW' },",
    '  series: [',
    `    { label: 'clean', values: speeds${n}.map((v) => (0.31 * v ** 3 + 1.2e6 / v) * step${n} * u.W) },`,
    `    { label: 'rotors stopped', values: speeds${n}.map((v) => (0.36 * v ** 3 + 1.2e6 / v) * step${n} * u.W) },`,
    '  ],',
    `  rules: [{ axis: 'x', at: 58 * u.mps, label: 'cruise' }],`,
    '})',
  ],
  (n) => [
    `const figure${n} = figure.massBreakdown({`,
    `  masses: { payload: 400 * u.kg, battery: 420 * step${n} * u.kg, structure: 510 * u.kg, motors: 120 * step${n} * u.kg, rotors: 52 * u.kg },`,
    `  caption: 'Mass build-up, variant ${n}.',`,
    '})',
  ],
  (n) => [
    `const drawn${n} = propeller.efficiencyMap({`,
    '  ...air.standard(0), radius: 0.9, chord: 0.12, blades: 3, tipSpeed: 190, twist: -0.6, section: { liftSlope: 5.9, minimumDrag: 0.01 },',
    '  advanceRatios: [0.4, 0.6, 0.8, 1.0, 1.2], bladeAngles: [0.3, 0.4, 0.5, 0.6, 0.7],',
    '})',
    `const figure${n} = figure.efficiencyMap({ map: drawn${n} })`,
  ],
]

function rationale(n, random) {
  return [
    `## Step ${n}`,
    '',
    `The rotors carry the weight and what the body loses under the downwash, $T = m g / (1 - d)$, and the *shaft power* follows from momentum theory (variant ${Math.floor(random() * 1000)}):`,
    '',
    '$$P_\\mathrm{hover} = \\frac{T}{\\mathrm{FM}} \\sqrt{\\frac{T}{2 \\rho A}}, \\qquad A = n \\pi R^2 .$$',
    '',
    `- the disk loading stays near ${Math.floor(300 + random() * 200)} N/m²`,
    '- what follows is a comparison, not a choice',
  ]
}

function sizing(n, withFigure) {
  const before = n === 1 ? '1' : `step${n - 1}`
  const kind = figures[n % 3]
  return [
    `// Sizing step ${n}`,
    `const share${n} = assumption('share${n}', ${(0.98 + (n % 5) / 100).toFixed(2)}, { range: [0.9, 1.1], source: 'invented' })`,
    `const step${n} = result('step${n}', 1 + (${before} - 1) * 0.5 + (share${n} - 1), { symbol: 's_{${n}}' })`,
    `const area${n} = 8 * Math.PI * (1.3 * u.m) ** 2 * step${n}`,
    `const thrust${n} = (1637 * u.kg * u.g0 * step${n}) / (1 - 0.05)`,
    `const hoverPower${n} = result('hoverPower${n}', (thrust${n} / 0.72) * Math.sqrt(thrust${n} / (2 * 1.098 * (u.kg / u.m3) * area${n})), { unit: 'kW' })`,
    ...(withFigure ? kind(n) : []),
  ]
}

/** `cells` in all, `figures` of them with a figure; every third cell is rationale. */
export function longNotebook({ cells = 200, figures: figureCount = 60, seed = 1 } = {}) {
  const random = chance(seed)
  const sizings = Array.from({ length: cells }, (_, index) => index).filter((index) => index % 3 !== 0).length
  let step = 0
  return {
    format: 'hoverfolio notebook',
    version: 1,
    title: `A long study of ${cells} cells`,
    cells: Array.from({ length: cells }, (_, index) => {
      if (index % 3 === 0) return { id: `words-${index}`, kind: 'rationale', source: rationale(index + 1, random) }
      step += 1
      const withFigure = Math.floor((step * figureCount) / sizings) > Math.floor(((step - 1) * figureCount) / sizings)
      return { id: `step-${step}`, kind: 'sizing', source: sizing(step, withFigure) }
    }),
  }
}
