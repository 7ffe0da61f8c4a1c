/** The lab: a disk, a clock, browsers and a network that misbehave on purpose and by seed. */
export { LabBrowser } from './browser.js'
export { LabClock, settle } from './clock.js'
export { Disk } from './disk.js'
export { type Fault, type FaultPlan, LabFileSystem, type Operation, PowerCut } from './file-system.js'
export { labFingerprint, labKernel, labKernelHash, labResult } from './kernel.js'
export { labFolder, labProcesses, labStore, sampleNotebook } from './samples.js'
export { type Chance, seededChance } from './seeded.js'
