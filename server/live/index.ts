/** Live documents. */
export { emptyDocument, type LiveCell, type LiveContent, readContent, titleOf } from './document.js'
export { type Connection, LiveDocument, type LiveDocumentOptions } from './live-document.js'
export { LiveDocuments, type LiveDocumentsOptions } from './live-documents.js'
export { openDocument } from './open-document.js'
