/** Brings the parts that a page may load late. */
import { drawPlot } from './figure/draw-plot.js'
import { bringLateParts } from './late-parts.js'
import { texToMathml } from './prose/math.js'
import { setProse } from './prose/set-prose.js'

bringLateParts({ drawPlot, setProse, texToMathml })
