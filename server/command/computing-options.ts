/** Options of every subcommand that computes a notebook. */

/** As `parseArgs` of Node takes them. */
export const computingOptions = {
  json: { type: 'boolean', default: false },
  set: { type: 'string', multiple: true, default: [] as string[] },
  units: { type: 'string' },
} as const

/** Their part of the usage. */
export const computingUsage = '[--set NAME="VALUE UNIT"]... [--units SI|aviation] [--json]'
