/** A call that cannot be answered is refused before anything runs. */
import { type Overrides, PipelineTrouble, type Program } from '../../program/index.js'
import type { Platform } from './platform.js'

/** @throws PipelineTrouble KERNEL_DIFFERS or OVERRIDE_INVALID */
export function checkCall(
  platform: Pick<Platform, 'kernelHash'>,
  program: Program,
  overridesList: readonly Overrides[],
): void {
  const { kernelHash } = platform
  if (kernelHash !== undefined && program.kernelHash !== kernelHash)
    throw new PipelineTrouble('KERNEL_DIFFERS', { wanted: program.kernelHash, present: kernelHash })
  for (const overrides of overridesList)
    for (const [name, value] of Object.entries(overrides))
      if (!Number.isFinite(value)) throw new PipelineTrouble('OVERRIDE_INVALID', { name, value: String(value) })
}
