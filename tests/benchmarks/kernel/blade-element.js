/**
 * What a blade-element hover point costs: `rotor.bladeElement` with 24 elements, by a linear and by a tabulated section, against the
 * same integrals in closed form (no losses, no section), and a point of an efficiency map. Run by plain node against the built
 * kernel: `node tests/benchmarks/kernel/blade-element.js`. The aim is 0.2 ms a hover point.
 *
 * Rounds are interleaved, medians compared as ratios; every side's thrusts are summed and looked at, so that nothing is skipped.
 */
import { availableParallelism, cpus, loadavg } from 'node:os'

const { preloaded } = await import(new URL('../../../.build/kernel/library/index.js', import.meta.url).href).catch(
  () => {
    process.stderr.write('The kernel is not built; run "npx tsc -b kernel/library" first.\n')
    process.exit(1)
  },
)
const { air, propeller, rotor, section, u } = preloaded

const rounds = 7
const points = 1000
const ground = air.standard(0)
const linear = section.linear({
  liftSlope: 5.7,
  minimumDrag: 0.01,
  dragRise: 0.01,
  thickness: 0.12,
  referenceReynolds: 1e6,
})

/** The linear section read at every degree, as a measured polar would come. */
const angles = Array.from({ length: 25 }, (_, index) => (index - 12) * u.deg)
const read = angles.map((angleOfAttack) => section.coefficients({ section: linear, angleOfAttack }))
const rows = { angle: angles, lift: read.map((one) => one.lift), drag: read.map((one) => one.drag) }
const tabulated = section.table({
  polars: [
    { ...rows, reynolds: 5e5 },
    { ...rows, reynolds: 2e6 },
  ],
})

const rotorOptions = { ...ground, radius: 1.3, rootCutout: 0.2, chord: 0.14, blades: 4, twist: -0.17, tipSpeed: 165 }
const collectiveAt = (index) => (4 + (8 * index) / points) * u.deg

const sides = {
  linear: (index) =>
    rotor.bladeElement({ ...rotorOptions, collective: collectiveAt(index), section: linear }).thrustCoefficient,
  table: (index) =>
    rotor.bladeElement({ ...rotorOptions, collective: collectiveAt(index), section: tabulated }).thrustCoefficient,
  climb: (index) =>
    rotor.bladeElement({ ...rotorOptions, collective: collectiveAt(index), axialSpeed: 8, section: linear })
      .thrustCoefficient,
  closedForm: (index) =>
    rotor.smallAngleHover({ solidity: 0.137, liftSlope: 5.7, pitch: collectiveAt(index) }).thrustCoefficient,
}

const mapOptions = {
  ...ground,
  radius: 0.9,
  rootCutout: 0.15,
  chord: 0.12,
  blades: 3,
  tipSpeed: 190,
  twist: (x) => Math.atan(0.4 / x),
  section: linear,
  advanceRatios: Array.from({ length: 20 }, (_, index) => 0.2 + 0.07 * index),
  bladeAngles: Array.from({ length: 15 }, (_, index) => (14 + 2 * index) * u.deg),
}

function time(side) {
  const begin = performance.now()
  let sum = 0
  for (let index = 0; index < points; index += 1) sum += side(index)
  return { microseconds: ((performance.now() - begin) * 1000) / points, sum }
}

function timeMap() {
  const begin = performance.now()
  const { efficiency } = propeller.efficiencyMap(mapOptions)
  if (!(Math.max(...efficiency) > 0.7)) throw new Error('the map has no good propeller in it')
  return ((performance.now() - begin) * 1000) / efficiency.length
}

function median(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]
}

const took = Object.fromEntries([...Object.keys(sides), 'map'].map((name) => [name, []]))
for (const side of Object.values(sides)) time(side)
for (let round = 0; round < rounds; round += 1) {
  for (const [name, side] of Object.entries(sides)) {
    const { microseconds, sum } = time(side)
    if (!(sum / points > 0.001 && sum / points < 0.03)) throw new Error(`${name} has a mean thrust of ${sum / points}`)
    took[name].push(microseconds)
  }
  took.map.push(timeMap())
}

const microseconds = Object.fromEntries(
  Object.entries(took).map(([name, values]) => [name, Number(median(values).toFixed(2))]),
)
const linearOver = {
  closedForm: Number((microseconds.linear / microseconds.closedForm).toFixed(1)),
  table: Number((microseconds.linear / microseconds.table).toFixed(2)),
}

process.stdout.write(
  [
    `Blade-element points (${rounds} interleaved rounds of ${points}, medians)`,
    `  environment              ${cpus()[0]?.model ?? 'unknown'}, ${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)}, node ${process.version}`,
    `  hover, linear section    ${microseconds.linear} us; ${linearOver.closedForm} times the closed form`,
    `  hover, table section     ${microseconds.table} us`,
    `  climb, linear section    ${microseconds.climb} us`,
    `  closed form              ${microseconds.closedForm} us`,
    `  efficiency map           ${microseconds.map} us a point`,
    JSON.stringify({ benchmark: 'blade element', microseconds, linearOver, withinAim: microseconds.linear < 200 }),
    '',
  ].join('\n'),
)
