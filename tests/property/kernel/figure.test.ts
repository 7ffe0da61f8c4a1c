/** Figures and evidence for any input: finite numbers or an error that names its argument. */
import { answersAnything } from './any-input.js'
import { calls } from './calls/figure.js'

answersAnything('every call that draws or registers evidence', calls, 40_281)
