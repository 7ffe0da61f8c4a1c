/** What a reader should know about a hover result that lies outside the range of its theory. */
import { advise } from '../recorder.js'
import type { HoverByBlades } from './hover.js'

const method = 'rotor.hover'
/** Full-scale rotors measure 0.70 to 0.80 (from memory). */
const greatestMerit = 0.85
/** C_T/sigma at which retreating from stall leaves no margin in hover (from memory; textbooks give 0.12 to 0.15). */
const greatestBladeLoading = 0.12
/** Drag divergence of usual tip sections (from memory). */
const greatestTipMach = 0.7

export function adviseFigureOfMerit(figureOfMerit: number): void {
  if (figureOfMerit <= greatestMerit) return
  advise({
    code: 'FIGURE_OF_MERIT',
    method,
    quantity: 'figureOfMerit',
    value: figureOfMerit,
    range: [0, greatestMerit],
    message: `A figure of merit of ${figureOfMerit} is above measured rotors (0.70 to 0.80 at full scale).`,
  })
}

export function adviseBlades(hover: HoverByBlades): void {
  adviseFigureOfMerit(hover.figureOfMerit)
  if (hover.bladeLoading > greatestBladeLoading)
    advise({
      code: 'BLADE_LOADING',
      method,
      quantity: 'bladeLoading',
      value: hover.bladeLoading,
      range: [0, greatestBladeLoading],
      message: `A blade loading of ${hover.bladeLoading.toPrecision(3)} leaves no margin to stall (0.12); profile power is then too low.`,
    })
  if (hover.tipMach !== undefined && hover.tipMach > greatestTipMach)
    advise({
      code: 'TIP_MACH',
      method,
      quantity: 'tipMach',
      value: hover.tipMach,
      range: [0, greatestTipMach],
      message: `A tip Mach number of ${hover.tipMach.toPrecision(3)} is past the drag rise of usual sections (0.7); profile power is then too low.`,
    })
}
