/** What a person who cannot see the figure is told. */
import type { Figure } from '../../contracts/index.js'
import { countOf } from '../quantity/index.js'
import { axisTitle } from './axes.js'

/** The author's description, or the caption with axes and series in words. */
export function describeFigure(figure: Figure): string {
  if (figure.description !== undefined && figure.description !== '') return figure.description
  const names = figure.marks.flatMap((mark) => ('label' in mark && mark.label !== undefined ? [mark.label] : []))
  const bars = figure.marks.flatMap((mark) => (mark.mark === 'bar' ? mark.names : []))
  const axes =
    bars.length > 0
      ? `${countOf(bars.length, 'bar')} of ${axisTitle(figure.x)}`
      : [axisTitle(figure.x) && `across: ${axisTitle(figure.x)}`, axisTitle(figure.y) && `up: ${axisTitle(figure.y)}`]
          .filter((part) => part !== '')
          .join('; ')
  const series = names.length === 0 ? '' : ` Series: ${names.join(', ')}.`
  return `${figure.caption}${axes === '' ? '' : ` (${axes})`}.${series}`.replace(/\.+ \(/, ' (').replace(/\.{2,}/g, '.')
}
