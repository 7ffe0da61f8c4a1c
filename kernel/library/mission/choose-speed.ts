/** The speed of a wing-borne segment: given, or by rule; never below the floor. */
import { InvalidInput } from '../errors.js'
import { advise, isListening } from '../recorder.js'
import { bestRangeSpeed, greatestSpeed, type LevelPower, leastPowerSpeed, setLevelPower } from './level-speed.js'
import type { Orders } from './orders.js'
import type { Progress } from './progress.js'
import type { SpeedChoice, SpeedRule } from './segment.js'

/** Scratch of the synchronous kernel. */
const power: LevelPower = { cubic: 0, inverse: 0, constant: 0 }

/** Notes in the mission whether the floor binds. */
export function chooseSpeed(
  progress: Progress,
  segment: { readonly speed?: SpeedChoice },
  usual: SpeedRule,
  tailwind: number,
  index: number,
  orders: Orders,
): number {
  const { speed = usual } = segment
  const { floor } = progress.moment
  const wanted = typeof speed === 'number' ? speed : byRule(progress, speed, tailwind, index, orders)
  if (wanted >= floor) return wanted
  progress.floorBinds = true
  if (typeof speed === 'number' && isListening()) adviseFloor(orders.method, speed, floor, index)
  return floor
}

function byRule(progress: Progress, rule: SpeedRule, tailwind: number, index: number, { method }: Orders): number {
  setLevelPower(power, progress.moment)
  if (rule === 'best range') return bestRangeSpeed(power, tailwind)
  if (rule === 'best endurance') return leastPowerSpeed(power)
  const { powerLimit, efficiency } = progress.craft.cruise
  if (powerLimit === undefined)
    throw new InvalidInput({
      method,
      argument: `segments[${index}].speed`,
      value: 'the text "power limit"',
      accepted: 'a speed or another rule where cruise.powerLimit is not given',
    })
  // Where the rating never suffices, the speed of least power shows by how little.
  return Math.max(leastPowerSpeed(power), greatestSpeed(power, powerLimit / efficiency + power.constant))
}

function adviseFloor(method: string, speed: number, floor: number, index: number): void {
  advise({
    code: 'SPEED_FLOOR',
    method,
    quantity: `segments[${index}].speed`,
    value: speed,
    range: [floor, null],
    message: `The speed of ${speed.toFixed(1)} m/s asked for in segment ${index + 1} is below the stall margin; it is flown at ${floor.toFixed(1)} m/s.`,
  })
}
