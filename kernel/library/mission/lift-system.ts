/** The lift rotors of an aircraft as one system: momentum theory with losses, its feed and its limits. */
import { requireNonNegative, requirePositive, requireShare, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Area, Power, Ratio, Speed } from '../quantity.js'

/** How thrust is set: by rotor speed at fixed pitch, or by pitch at constant speed. */
export type RotorControl = 'speed' | 'pitch'

export interface LiftSystemOptions {
  /** Of all rotors [m^2]. */
  readonly diskArea: Area
  /** Ideal over actual power in hover, 0 to 1; either this or `profileDrag`. */
  readonly figureOfMerit?: Ratio | undefined
  /** Mean section drag coefficient; with it `solidity` and `tipSpeed`. */
  readonly profileDrag?: Ratio | undefined
  /** Blade area over disk area; with it the blade loading is watched. */
  readonly solidity?: Ratio | undefined
  /** In hover [m/s]; 160 when left out. */
  readonly tipSpeed?: Speed
  /** Induced power over its ideal; 1.15 when left out. */
  readonly inducedFactor?: Ratio
  /** Induced power over that of rotors apart from each other; 1 when left out. */
  readonly interference?: Ratio
  /** Download on wing and body in hover over rotor thrust; 0 when left out. */
  readonly download?: Ratio
  /** From the battery to the shafts. */
  readonly efficiency: Ratio
  /** `'speed'` when left out. */
  readonly control?: RotorControl
  /** At all shafts together [W]; no limit when left out. */
  readonly powerLimit?: Power | undefined
  /** Number of equal rotors; needed where some of them do not turn. */
  readonly count?: Ratio | undefined
  /** Blade loading C_T/sigma at which blades stall in hover; 0.12 when left out. */
  readonly greatestBladeLoading?: Ratio
  /** Added drag area while rotors turn: open doors, rotors out of the body [m^2]; 0 when left out. */
  readonly uncoveredDragArea?: Area
}

/** Completed: every option has its value. */
export interface LiftSystem {
  readonly diskArea: Area
  readonly figureOfMerit?: Ratio | undefined
  readonly profileDrag?: Ratio | undefined
  readonly solidity?: Ratio | undefined
  readonly tipSpeed: Speed
  readonly inducedFactor: Ratio
  readonly interference: Ratio
  readonly download: Ratio
  readonly efficiency: Ratio
  readonly control: RotorControl
  readonly powerLimit?: Power | undefined
  readonly count?: Ratio | undefined
  readonly greatestBladeLoading: Ratio
  readonly uncoveredDragArea: Area
}

const known = new Set([
  'diskArea',
  'figureOfMerit',
  'profileDrag',
  'solidity',
  'tipSpeed',
  'inducedFactor',
  'interference',
  'download',
  'efficiency',
  'control',
  'powerLimit',
  'count',
  'greatestBladeLoading',
  'uncoveredDragArea',
])
const controls: readonly RotorControl[] = ['speed', 'pitch']

export function readLiftSystem(method: string, options: LiftSystemOptions | LiftSystem): LiftSystem {
  checkOptions(`${method} lift`, options, known)
  const { tipSpeed = 160, inducedFactor = 1.15, interference = 1, download = 0 } = options
  const { control = 'speed', greatestBladeLoading = 0.12, uncoveredDragArea = 0 } = options
  requirePositive(method, 'lift.diskArea', options.diskArea, 'm^2')
  requireShare(method, 'lift.efficiency', options.efficiency)
  requirePositive(method, 'lift.tipSpeed', tipSpeed, 'm/s')
  requireWithin(method, 'lift.inducedFactor', inducedFactor, '1', 1, 10)
  requireWithin(method, 'lift.interference', interference, '1', 1, 2)
  requireWithin(method, 'lift.download', download, '1', 0, 0.5)
  requireChoice(method, 'lift.control', control, controls)
  requirePositive(method, 'lift.greatestBladeLoading', greatestBladeLoading, '1')
  requireNonNegative(method, 'lift.uncoveredDragArea', uncoveredDragArea, 'm^2')
  if (options.powerLimit !== undefined) requirePositive(method, 'lift.powerLimit', options.powerLimit, 'W')
  if (options.count !== undefined) requireWithin(method, 'lift.count', options.count, '1', 1, 1000)
  if (options.solidity !== undefined) requireWithin(method, 'lift.solidity', options.solidity, '1', 1e-4, 1)
  requireLosses(method, options)
  // Written out rather than spread: a sizing reads this record in every evaluation.
  return {
    diskArea: options.diskArea,
    figureOfMerit: options.figureOfMerit,
    profileDrag: options.profileDrag,
    solidity: options.solidity,
    tipSpeed,
    inducedFactor,
    interference,
    download,
    efficiency: options.efficiency,
    control,
    powerLimit: options.powerLimit,
    count: options.count,
    greatestBladeLoading,
    uncoveredDragArea,
  }
}

/** A figure of merit, or the blades that it would follow from. */
function requireLosses(method: string, options: LiftSystemOptions): void {
  const { figureOfMerit, profileDrag, solidity, tipSpeed } = options
  if ((figureOfMerit === undefined) === (profileDrag === undefined))
    throw new InvalidInput({
      method,
      argument: 'lift.figureOfMerit or lift.profileDrag',
      value: figureOfMerit === undefined ? 'missing' : 'given together with the other',
      accepted: 'one of the two',
    })
  if (figureOfMerit !== undefined) {
    requireShare(method, 'lift.figureOfMerit', figureOfMerit)
    return
  }
  requirePositive(method, 'lift.profileDrag', profileDrag as number, '1')
  requireWithin(method, 'lift.solidity', solidity as number, '1', 1e-4, 1)
  requirePositive(method, 'lift.tipSpeed', tipSpeed as number, 'm/s')
}
