/**
 * Missions flown per second: a sector of nine segments with the battery in time by coarse steps, by fine steps, and without a battery;
 * and full closures of a lift-plus-cruise aircraft with mission, drag build-up, mass equations and battery in each evaluation. Run by
 * plain node against the built kernel: `node tests/benchmarks/kernel/missions.js`. The aim is 2000 closures a second on one core.
 *
 * Rounds are interleaved, medians compared as ratios; processor time is counted, so that a busy machine blurs less. Every side's
 * answers are summed and looked at, so that nothing is skipped.
 */
import { availableParallelism, cpus, loadavg } from 'node:os'
import { median } from '../statistics.js'

const { preloaded } = await import(new URL('../../../.build/kernel/library/index.js', import.meta.url).href).catch(
  () => {
    process.stderr.write('The kernel is not built; run "npx tsc -b kernel/library" first.\n')
    process.exit(1)
  },
)
const { air, battery, drag, mass, mission, sizing, u } = preloaded

const rounds = 7
const cell = battery.aged({ cell: battery.cells.power18650, capacityLeft: 0.85, resistanceGrowth: 1.4 })
const day = { altitude: 600 * u.m, temperatureOffset: 15 * u.K }
const sector = mission.segments([
  { kind: 'hover', time: 30 * u.s },
  { kind: 'vertical climb', height: 30 * u.m, rate: 2 * u.mps },
  { kind: 'transition' },
  { kind: 'climb', to: 1200 * u.m, rate: 3 * u.mps },
  { kind: 'cruise', distance: 30 * u.km, speed: 58 * u.mps },
  { kind: 'descent', to: 630 * u.m },
  { kind: 'reserve', time: 20 * u.min },
  { kind: 'return transition' },
  { kind: 'landing', time: 30 * u.s, height: 30 * u.m },
])

function craftOf(grossMass, zeroLiftDrag, parallel) {
  return {
    mass: grossMass,
    wingArea: 15,
    maximumLift: 1.5,
    polar: drag.polar({ zeroLiftDrag, aspectRatio: 11, spanEfficiency: 0.8 }),
    lift: { diskArea: 42.5, figureOfMerit: 0.72, download: 0.05, efficiency: 0.9, powerLimit: 800 * u.kW },
    cruise: { propellerEfficiency: 0.84, efficiency: 0.91, powerLimit: 250 * u.kW },
    hotelPower: 2 * u.kW,
    battery: { cell, series: 200, parallel, rating: 'peak' },
  }
}

const flown = (index, steps) =>
  mission.fly({ aircraft: craftOf(1800 + (index % 200), 0.038, 60), segments: sector, ...day, steps }).energy

const parts = [
  { name: 'body', wettedArea: 22, length: 6.5, formFactor: 1.25 },
  { name: 'wing', wettedArea: 30, length: 1.2, formFactor: 1.3, interference: 1.05 },
  { name: 'tail', wettedArea: 8, length: 0.8, formFactor: 1.2 },
  { name: 'stopped rotors', dragArea: 0.018, count: 8 },
  { name: 'booms and gear', dragArea: 0.12 },
]
const { density, dynamicViscosity } = air.standard(1200, 15)
const flight = { wingArea: 15, leakageShare: 0.05, speed: 58, density, dynamicViscosity }

/** Gross mass at which drag, mission, structure and battery close; `ask` tells energy and landing power of an aircraft in each evaluation. */
function closure(payload, ask) {
  return sizing.close({
    from: 1900,
    requiredMass: (grossMass) => {
      const { zeroLiftDrag } = drag.buildUp(parts, flight)
      const { energy, power } = ask(craftOf(grossMass, zeroLiftDrag, 60))
      const demands = [{ name: 'landing', power, stateOfCharge: 0.15, temperature: 298.15 }]
      return {
        payload,
        battery: battery.massForMission({ cell, energy, floor: 0.1, demands }).mass,
        wing: mass.wing({ grossMass, ultimateLoadFactor: 5.7, area: 15, aspectRatio: 11, dynamicPressure: 2000 }),
        gear: mass.gear({ grossMass }),
        body: 0.14 * grossMass,
        fixed: 260,
      }
    },
  })
}

/** The battery as energy and power at the landing's charge: the usual form. */
function askDemand(aircraft) {
  const { energy, rows } = mission.demand({ aircraft, segments: sector, ...day })
  return { energy, power: rows[rows.length - 1].peakPower }
}

/** The battery integrated in time as well. */
function askFlight(aircraft) {
  const { energy, landing } = mission.fly({ aircraft, segments: sector, ...day, steps: 'coarse' })
  return { energy, power: landing.power }
}

const sides = {
  coarse: { count: 4000, run: (index) => flown(index, 'coarse') },
  fine: { count: 300, run: (index) => flown(index, 'fine') },
  demand: {
    count: 4000,
    run: (index) =>
      mission.demand({ aircraft: craftOf(1800 + (index % 200), 0.038, 60), segments: sector, ...day }).energy,
  },
  closure: { count: 500, run: (index) => closure(300 + (index % 100), askDemand).grossMass },
  flownClosure: { count: 500, run: (index) => closure(300 + (index % 100), askFlight).grossMass },
}

function time({ count, run }) {
  const begin = process.cpuUsage()
  let sum = 0
  for (let index = 0; index < count; index += 1) sum += run(index)
  const { user, system } = process.cpuUsage(begin)
  return { microseconds: (user + system) / count, mean: sum / count }
}

const took = Object.fromEntries(Object.keys(sides).map((name) => [name, []]))
for (const side of Object.values(sides)) time(side)
for (let round = 0; round < rounds; round += 1)
  for (const [name, side] of Object.entries(sides)) {
    const { microseconds, mean } = time(side)
    const within = name.endsWith('losure') ? mean > 900 && mean < 6000 : mean > 50e6 && mean < 600e6
    if (!within) throw new Error(`${name} has a mean of ${mean}`)
    took[name].push(microseconds)
  }

const microseconds = Object.fromEntries(
  Object.entries(took).map(([name, values]) => [name, Number(median(values).toFixed(2))]),
)
const perSecond = {
  closure: Math.round(1e6 / microseconds.closure),
  flownClosure: Math.round(1e6 / microseconds.flownClosure),
}
const ratios = {
  fineOverCoarse: Number((microseconds.fine / microseconds.coarse).toFixed(1)),
  coarseOverDemand: Number((microseconds.coarse / microseconds.demand).toFixed(2)),
  closureOverDemand: Number((microseconds.closure / microseconds.demand).toFixed(1)),
  flownOverClosure: Number((microseconds.flownClosure / microseconds.closure).toFixed(2)),
}

process.stdout.write(
  [
    `Missions of ${sector.length} segments (${rounds} interleaved rounds, medians of processor time)`,
    `  environment              ${cpus()[0]?.model ?? 'unknown'}, ${availableParallelism()} cores, load ${loadavg()[0].toFixed(1)}, node ${process.version}`,
    `  battery, coarse steps    ${microseconds.coarse} us; ${ratios.coarseOverDemand} times without a battery`,
    `  battery, fine steps      ${microseconds.fine} us; ${ratios.fineOverCoarse} times coarse ones`,
    `  without a battery        ${microseconds.demand} us`,
    `  full closure             ${microseconds.closure} us, ${perSecond.closure} a second; ${ratios.closureOverDemand} missions without a battery, ${closure(350, askDemand).iterations} iterations`,
    `  with the battery flown   ${microseconds.flownClosure} us, ${perSecond.flownClosure} a second; ${ratios.flownOverClosure} times`,
    JSON.stringify({ benchmark: 'missions', microseconds, ratios, perSecond, withinAim: perSecond.closure >= 2000 }),
    '',
  ].join('\n'),
)
