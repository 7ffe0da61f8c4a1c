/** Inside its declared validity a function answers; it refuses and advises where its doc comment says that it does. */
import { subjects } from './boxes/all.js'
import { holdBoxes } from './boxes/engine.js'

for (const [title, boxes, seed] of subjects) holdBoxes(title, boxes, seed)
