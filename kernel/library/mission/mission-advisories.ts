/** What a mission says of itself: the sentence of its first limit, and what a reader should know about its vertical flight. */
import { advise } from '../recorder.js'
import type { FlownMission, MissionLimit } from './flown.js'
import type { Moment } from './moment.js'
import type { Progress } from './progress.js'

const words: Readonly<Record<MissionLimit, string>> = {
  'voltage floor': 'the pack cannot give the power: a cell would fall below its voltage floor',
  'half voltage': 'the pack cannot give the power: the circuit is at half of its open-circuit voltage',
  current: 'the pack cannot give the power: the cells are at their rated current',
  empty: 'the pack cannot give the power: it is empty',
  'charge floor': 'the charge that must be left is reached',
  temperature: 'the cells are as hot as they may be',
  'lift rating': 'the lift rotors need more than their rating',
  'cruise rating': 'the propeller needs more than its rating',
  'cruise thrust': 'the propeller lacks the thrust to accelerate through the transition',
  'sector distance': 'climb, transitions and descent alone are longer than the sector',
}
/** Of the hover induced velocity: a vertical descent faster than this meets its own wake. */
const usualDescent = 0.25

export function explainLimit({ status, segment, second }: Progress): string {
  if (status === 'ok') return ''
  return `In "${segment}" at second ${second.toFixed(1)} ${words[status]}.`
}

export function adviseMission(method: string, moment: Moment, flown: FlownMission): void {
  if (!flown.feasible)
    advise({
      code: 'MISSION_FAILS',
      method,
      quantity: flown.status,
      value: flown.second,
      range: [null, null],
      message: flown.message,
    })
  if (flown.landing.powerMargin < 0)
    advise({
      code: 'LANDING_POWER',
      method,
      quantity: 'landing.powerMargin',
      value: flown.landing.powerMargin,
      range: [0, null],
      message: `When all is flown a hover takes ${(flown.landing.power / 1000).toFixed(0)} kW and the pack gives ${(flown.landing.powerLimit / 1000).toFixed(0)} kW.`,
    })
  adviseDescent(method, moment, flown)
  adviseBlades(method, moment)
}

function adviseDescent(method: string, moment: Moment, flown: FlownMission): void {
  for (const row of flown.rows) {
    const ratio = row.speed / Math.sqrt(moment.loading)
    if (row.kind !== 'landing' || ratio <= usualDescent) continue
    advise({
      code: 'VORTEX_RING',
      method,
      quantity: 'rate',
      value: ratio,
      range: [0, usualDescent],
      message: `"${row.name}" descends at ${ratio.toFixed(2)} times the hover induced velocity, towards the vortex ring: power is a mean in time from a fit.`,
    })
  }
}

function adviseBlades(method: string, { craft, hoverThrust, density, diskArea, tipSpeed }: Moment): void {
  const { solidity, greatestBladeLoading } = craft.lift
  if (solidity === undefined) return
  const loading = hoverThrust / (density * diskArea * tipSpeed * tipSpeed * solidity)
  if (loading <= greatestBladeLoading) return
  advise({
    code: 'BLADE_LOADING',
    method,
    quantity: 'bladeLoading',
    value: loading,
    range: [0, greatestBladeLoading],
    message: `The last hover is flown at a blade loading of ${loading.toFixed(3)}; blades stall from ${greatestBladeLoading} on.`,
  })
}
