/** The pack and the motors on their way through a day. */
import type { CellPath } from '../battery/advance.js'
import { type ProfileSegment, type Run, run } from '../battery/run.js'
import { requireNonNegative, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import { silently } from '../recorder.js'
import { isCharging, stepOnGround } from './charge.js'
import type { Day, DaySegment, SectorRow } from './day.js'
import type { DaySetting } from './day-setting.js'

const knownSegment = new Set(['name', 'power', 'duration', 'motorHeatShare'])

interface MutableHistory {
  readonly time: number[]
  readonly stateOfCharge: number[]
  readonly temperature: number[]
  readonly motorHeat: number[]
}

interface State {
  readonly path: CellPath
  motorHeat: number
  time: number
}

interface Sums {
  delivered: number
  charged: number
  cycles: number
  greatestTemperature: number
  greatestMotorHeat: number
}

interface Ground {
  readonly coolingTime: number
  readonly chargingTime: number
  readonly charged: number
}

const stayed: Ground = { coolingTime: 0, chargingTime: 0, charged: 0 }

export function flyDay(method: string, setting: DaySetting): Day {
  const { options } = setting
  const segments = options.sector.map((segment, index) => readSegment(method, segment, `sector[${index}]`))
  const state: State = {
    path: { stateOfCharge: setting.chargeTo, temperature: setting.temperature, heat: 0 },
    motorHeat: 0,
    time: 0,
  }
  const history: MutableHistory = { time: [], stateOfCharge: [], temperature: [], motorHeat: [] }
  const sums: Sums = {
    delivered: 0,
    charged: 0,
    cycles: 0,
    greatestTemperature: setting.temperature,
    greatestMotorHeat: 0,
  }
  const rows: SectorRow[] = []
  let message = ''
  for (let sector = 1; sector <= options.sectors && message === ''; sector += 1) {
    const departure = state.path.stateOfCharge
    const flown = flySector(setting, segments, state, history, sums)
    if (!flown.run.ok) message = `Sector ${sector}: ${flown.run.message}`
    const last = sector === options.sectors || message !== ''
    const ground = last ? stayed : stayOnGround(setting, state, history)
    sums.charged += ground.charged
    rows.push({
      sector,
      departure,
      arrival: flown.run.stateOfCharge,
      cellTemperature: flown.run.greatestTemperature,
      motorHeat: flown.motorHeat,
      ...ground,
    })
  }
  requireRepresentable(method, sums.delivered + sums.charged + sums.cycles + sums.greatestMotorHeat + state.time)
  return report(setting, sums, rows, history, message)
}

function readSegment(method: string, segment: DaySegment, at: string): DaySegment {
  checkOptions(`${method} ${at}`, segment, knownSegment)
  requireNonNegative(method, `${at}.motorHeatShare`, segment.motorHeatShare ?? 0, '1')
  return segment
}

function report(
  setting: DaySetting,
  sums: Sums,
  rows: readonly SectorRow[],
  history: MutableHistory,
  ended: string,
): Day {
  const hot =
    sums.greatestMotorHeat > 1
      ? `The lift motors reach ${sums.greatestMotorHeat.toPrecision(3)} times the temperature rise allowed.`
      : ''
  const message = [ended, hot].filter((text) => text !== '').join(' ')
  const { cyclesToEndOfLife } = setting.options
  return {
    ok: message === '',
    message,
    sectorsFlown: ended === '' ? rows.length : rows.length - 1,
    ...sums,
    ...(cyclesToEndOfLife === undefined || sums.cycles === 0
      ? {}
      : { daysToEndOfLife: cyclesToEndOfLife / sums.cycles }),
    rows,
    history,
  }
}

/** One sector: the pack by `battery.run`, the motors beside it. */
function flySector(
  setting: DaySetting,
  segments: readonly DaySegment[],
  state: State,
  history: MutableHistory,
  sums: Sums,
): { run: Run; motorHeat: number } {
  const { series, parallel, floor, rating, ambient, conductance } = setting.options
  const profile = segments.map(({ motorHeatShare: _heat, ...segment }): ProfileSegment => segment)
  const before = state.path.stateOfCharge
  const flown = silently(() =>
    run({
      cell: setting.cell,
      series,
      parallel,
      profile,
      stateOfCharge: before,
      temperature: state.path.temperature,
      ambient,
      conductance,
      ...(floor === undefined ? {} : { floor }),
      ...(rating === undefined ? {} : { rating }),
    }),
  )
  const motorHeat = heatMotors(setting, segments, flown, state, history)
  sums.delivered += flown.delivered
  sums.cycles += before - flown.stateOfCharge
  sums.greatestTemperature = Math.max(sums.greatestTemperature, flown.greatestTemperature)
  sums.greatestMotorHeat = Math.max(sums.greatestMotorHeat, motorHeat)
  state.path.stateOfCharge = flown.stateOfCharge
  state.path.temperature = flown.temperature
  state.time += flown.time
  return { run: flown, motorHeat }
}

/** Temperature rise of the motors along a flight; appends to the history; gives the greatest. */
function heatMotors(
  setting: DaySetting,
  segments: readonly DaySegment[],
  flown: Run,
  state: State,
  history: MutableHistory,
): number {
  let greatest = state.motorHeat
  let before = 0
  let [which, end] = [0, segments[0]?.duration ?? 0]
  flown.history.time.forEach((time, index) => {
    // Steps of a run never cross the end of a segment.
    while (time > end + 1e-9 && which < segments.length - 1) {
      which += 1
      end += segments[which]?.duration ?? 0
    }
    const share = segments[which]?.motorHeatShare ?? 0
    state.motorHeat = share + (state.motorHeat - share) * Math.exp(-(time - before) / setting.motorThermalTime)
    before = time
    greatest = Math.max(greatest, state.motorHeat)
    history.time.push(state.time + time)
    history.stateOfCharge.push(flown.history.stateOfCharge[index] ?? 0)
    history.temperature.push(flown.history.temperature[index] ?? 0)
    history.motorHeat.push(state.motorHeat)
  })
  return greatest
}

/** Between sectors: waits for cool cells, charges, and waits for the rest of the turnaround. */
function stayOnGround(setting: DaySetting, state: State, history: MutableHistory): Ground {
  const { cell, charging, ground, chargeBelow, count, motorThermalTime } = setting
  const { turnaround } = setting.options
  let [coolingTime, chargingTime, charged, done] = [0, 0, 0, 0]
  let cool = false
  while (done < turnaround) {
    const step = Math.min(setting.step, turnaround - done)
    cool ||= state.path.temperature <= chargeBelow
    const charges = charging !== undefined && cool && isCharging(cell, charging, state.path)
    charged += count * stepOnGround(cell, charges ? charging : undefined, ground, step, state.path)
    if (charges) chargingTime += step
    else if (charging !== undefined && !cool) coolingTime += step
    state.motorHeat *= Math.exp(-step / motorThermalTime)
    done += step
    history.time.push(state.time + done)
    history.stateOfCharge.push(state.path.stateOfCharge)
    history.temperature.push(state.path.temperature)
    history.motorHeat.push(state.motorHeat)
  }
  state.time += turnaround
  return { coolingTime, chargingTime, charged }
}
