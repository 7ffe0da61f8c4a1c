/** A recorder that keeps what it hears, with trial values by name. */
import {
  type AssumptionStatement,
  type Recorder,
  type RequirementStatement,
  type ResultStatement,
  setRecorder,
} from '../../../kernel/library/index.js'
import type { Advisory } from '../../../shared/contracts/index.js'

export interface Heard {
  readonly advisories: Advisory[]
  readonly assumptions: AssumptionStatement[]
  readonly requirements: RequirementStatement[]
  readonly results: ResultStatement[]
}

export function listenWhile(run: () => void, trials: Readonly<Record<string, number>> = {}): Heard {
  const heard: Heard = { advisories: [], assumptions: [], requirements: [], results: [] }
  const recorder: Recorder = {
    advisory: (advisory) => heard.advisories.push(advisory),
    assumption: (statement) => {
      heard.assumptions.push(statement)
      return trials[statement.name] ?? statement.value
    },
    requirement: (statement) => heard.requirements.push(statement),
    result: (statement) => heard.results.push(statement),
  }
  const previous = setRecorder(recorder)
  try {
    run()
  } finally {
    setRecorder(previous)
  }
  return heard
}
