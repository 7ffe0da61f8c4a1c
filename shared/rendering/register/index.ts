export * from './assumption-rows.js'
export * from './requirement-rows.js'
