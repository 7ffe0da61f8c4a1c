/** Which change caused which part of the difference between two answers. */
export { type Attempt, type Change, type Explained, type ExplainOptions, explainChange } from './explain.js'
export { planSteps, type StepPlan, type WaterfallSide } from './plan.js'
export { type WaterfallPipeline, type WaterfallQuestion, waterfallOf } from './waterfall.js'
