export * from './assumption-rows.js'
export * from './render-register.js'
export * from './render-requirements.js'
export * from './requirement-rows.js'
