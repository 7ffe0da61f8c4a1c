/** The method catalogue: written by the build, read by the server. */
export { readCatalogue } from './catalogue.js'
export { exampleNotebook } from './example-notebook.js'
