/** The text of a notebook as a revision keeps it. */
import {
  type CellId,
  type CellKind,
  type FrozenText,
  marginNumbers,
  type TitleBlock,
} from '../../../shared/contracts/index.js'

export interface TextToFreeze {
  readonly title: string
  readonly titleBlock?: TitleBlock | undefined
  /** In page order. */
  readonly cells: readonly {
    readonly id: CellId
    readonly kind: CellKind
    readonly number?: string | undefined
    readonly source: string | readonly string[]
  }[]
}

/** Leaves out who prepared, checked and approved it, its date and revision: a text does not change by being signed. */
export function freezeText({ title, titleBlock = {}, cells }: TextToFreeze): FrozenText {
  const { question, project, basis } = titleBlock
  const numbers = marginNumbers(cells)
  return {
    title,
    titleBlock: {
      ...(question === undefined ? {} : { question }),
      ...(project === undefined ? {} : { project }),
      ...(basis === undefined ? {} : { basis }),
    },
    cells: cells.map(({ id, kind, source }) => ({
      id,
      kind,
      number: numbers.get(id) ?? '',
      source: typeof source === 'string' ? source.split('\n') : [...source],
    })),
  }
}
