/** The one renderer: page, server, export and command draw with it. */
export * from './view.js'
