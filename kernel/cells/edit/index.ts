/** Changes of an assumption, written into the source of its cell through the syntax tree. */
export {
  type AssumptionChange,
  type AssumptionEdit,
  type DistributionChange,
  editAssumption,
} from './edit-assumption.js'
