/** What is taken away of a notebook. */
export { complianceCsv } from './compliance-csv.js'
export { type ExportedNotebook, exportedNotebook } from './exported-notebook.js'
export { type FigureFile, figureFiles } from './figure-files.js'
export { provenanceOf } from './provenance.js'
export { registerCsv } from './register-csv.js'
export { type SheetFileParts, sheetFile } from './sheet-file.js'
