/**
 * Figures as data: what is drawn, in SI with a dimension per axis, and never a function. So a figure can be checked,
 * stored, restyled and drawn by the same renderer in the page, in an export and on the command line.
 */
import { z } from 'zod'

const finite = z.number()
const series = z.array(finite).max(20_000)
const text = z.string().max(400)

/** One of the sheet's inks; the renderer turns it into a colour and a pattern for light, dark and print. */
export const Ink = z.enum(['ink', 'accent', 'second', 'third', 'faint', 'warning'])
export type Ink = z.infer<typeof Ink>

const styled = { ink: Ink.optional(), label: text.optional() }

/** The primitive marks. Drawings (plan views, mission profiles) are lowered to these in the kernel. */
export const Mark = z.discriminatedUnion('mark', [
  z.strictObject({ mark: z.literal('line'), x: series, y: series, broken: z.boolean().optional(), ...styled }),
  z.strictObject({ mark: z.literal('dot'), x: series, y: series, names: z.array(text).optional(), ...styled }),
  z.strictObject({ mark: z.literal('area'), x: series, y: series, base: finite.optional(), ...styled }),
  z.strictObject({ mark: z.literal('band'), x: series, low: series, high: series, ...styled }),
  /** Horizontal bars, one per name, from `start` (0 when absent) to `value`; the names make the vertical axis. */
  z.strictObject({
    mark: z.literal('bar'),
    names: z.array(text).max(500),
    value: series,
    start: series.optional(),
    ...styled,
  }),
  z.strictObject({ mark: z.literal('rule'), axis: z.enum(['x', 'y']), at: finite, ...styled }),
  z.strictObject({
    mark: z.literal('text'),
    x: finite,
    y: finite,
    text,
    anchor: z.enum(['start', 'middle', 'end']).optional(),
    ink: Ink.optional(),
  }),
  z.strictObject({
    mark: z.literal('polygon'),
    x: series,
    y: series,
    filled: z.boolean().optional(),
    broken: z.boolean().optional(),
    ...styled,
  }),
  z.strictObject({
    mark: z.literal('circle'),
    x: finite,
    y: finite,
    radius: finite,
    filled: z.boolean().optional(),
    broken: z.boolean().optional(),
    ...styled,
  }),
  z.strictObject({
    mark: z.literal('contour'),
    x: series,
    y: series,
    value: series,
    levels: series,
    dimension: z.string(),
    unit: text.optional(),
    ...styled,
  }),
])
export type Mark = z.infer<typeof Mark>

export const Axis = z.strictObject({
  label: text,
  /** Dimension in base units (`kg m^2 s^-3`, `1`). */
  dimension: z.string().max(60),
  /** Unit text the values are shown in; must have the dimension. SI when absent. */
  unit: text.optional(),
  scale: z.enum(['linear', 'logarithmic']).optional(),
  /** Ends of the axis in SI. */
  from: finite.optional(),
  to: finite.optional(),
})
export type Axis = z.infer<typeof Axis>

export const Figure = z.strictObject({
  figure: z.literal('plot'),
  caption: text,
  /** What a person who cannot see the figure is told; the caption when absent. */
  description: z.string().max(2000).optional(),
  x: Axis,
  y: Axis,
  marks: z.array(Mark).max(200),
  /** One metre is as long across as up: for drawings. */
  toScale: z.boolean().optional(),
})
export type Figure = z.infer<typeof Figure>
