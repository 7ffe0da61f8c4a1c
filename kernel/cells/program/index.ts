/** What passes from one stage of the pipeline to the next. */
export * from './analysis.js'
export * from './checking.js'
export * from './components.js'
export * from './evaluation.js'
export * from './language.js'
export * from './program.js'
export * from './source.js'
export * from './trouble.js'
