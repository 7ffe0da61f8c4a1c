/**
 * A method of the kernel as the catalogue shows it: read from its doc comment and its types by the build, with its example computed by the
 * very kernel that cells run against.
 */
import { z } from 'zod'
import { Advisory, NamedValue } from './results.js'

const text = z.string()

/** A field of a record that a method takes or gives, or an argument by itself. */
export const MethodQuantity = z.strictObject({
  name: text,
  /** What it is, in words: `force`, `list of lengths`, `polar`; choices of text as they are written. */
  kind: text,
  /** In base units, `1` for a pure number; null for what is no number, or a number of no fixed dimension. */
  dimension: text.nullable(),
  optional: z.boolean(),
  /** From the doc comment of the field; may be empty. */
  text,
})
export type MethodQuantity = z.infer<typeof MethodQuantity>

/** An argument in its place; an option record has its fields listed. */
export const MethodArgument = MethodQuantity.extend({ fields: z.array(MethodQuantity).optional() })
export type MethodArgument = z.infer<typeof MethodArgument>

export const MethodExample = z.strictObject({
  /** As it stands in the doc comment. */
  source: text,
  /** The same as a sizing cell: every answer has a name. */
  cell: text,
  values: z.array(NamedValue),
  advisories: z.array(Advisory),
})
export type MethodExample = z.infer<typeof MethodExample>

/** One way of calling a method. */
export const MethodForm = z.strictObject({
  summary: text,
  equation: text,
  takes: z.array(MethodArgument),
  /** The doc comment on the arguments, one paragraph each. */
  arguments: z.array(text),
  gives: MethodQuantity.extend({ fields: z.array(MethodQuantity).optional() }),
  throws: z.array(text),
  method: text,
  validity: text,
  source: text,
  example: MethodExample,
})
export type MethodForm = z.infer<typeof MethodForm>

export const Method = z.strictObject({
  /** `rotor.hover`, or `assumption` for what stands alone. */
  name: text,
  /** `rotor`; `evidence` for what stands alone. */
  subject: text,
  forms: z.array(MethodForm).min(1),
})
export type Method = z.infer<typeof Method>

/** What the build writes to `methods.json`. */
export const MethodCatalogue = z.strictObject({ kernelHash: text, methods: z.array(Method) })
export type MethodCatalogue = z.infer<typeof MethodCatalogue>
