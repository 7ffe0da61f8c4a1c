/** Pages drawn on the server. */
export { CellMarkup } from './cell-markup.js'
export { type ClientBuild, readClientBuild } from './client-build.js'
export { listPage } from './list-page.js'
export { type NotebookPage, notebookPage, sheetMarkup, sheetView } from './notebook-page.js'
export { PageCache } from './page-cache.js'
export { cautionsPage, refusalPage } from './plain-pages.js'
export { plainStyle } from './style.js'
export { wordsPage } from './words/words-page.js'
