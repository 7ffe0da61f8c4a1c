/** The one renderer: page, server, export and command draw with it. */
import './all-parts.js'

export * from './asked/index.js'
export * from './code/index.js'
export { type CsvCell, csvField, writeCsv } from './csv.js'
export { element } from './dom.js'
export * from './figure/index.js'
export * from './formula/index.js'
export * from './method/index.js'
export * from './prose/index.js'
export {
  chooseUnit,
  countOf,
  displayUnit,
  type FormattedQuantity,
  formatNumber,
  formatQuantity,
  humaniseName,
  numberOf,
  siUnit,
  typesetNodes,
  typesetUnitText,
  type UnitSystem,
  unitSystems,
} from './quantity/index.js'
export * from './register/index.js'
export * from './revisions/index.js'
export * from './sheet/index.js'
export * from './view.js'
