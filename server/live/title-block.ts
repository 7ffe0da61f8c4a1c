/** Changing one field of the title block at a time, without replacing words that the sender has not seen. */
import {
  type ChangeTitleBlock,
  describeIssues,
  TitleBlock,
  TitleBlockField,
  Trouble,
} from '../../shared/contracts/index.js'

export const titleBlockFields: readonly TitleBlockField[] = TitleBlockField.options

/** The block with the change made; fields are single lines. Throws TITLE_BLOCK_CHANGED or BODY_INVALID. */
export function changedTitleBlock(block: TitleBlock, { field, from, to }: ChangeTitleBlock): TitleBlock {
  const now = block[field] ?? ''
  const value = to.replace(/\s+/g, ' ').trim()
  if (now !== from && now !== value) throw new Trouble('TITLE_BLOCK_CHANGED', { field, now })
  const parsed = TitleBlock.safeParse(withField(block, field, value))
  if (!parsed.success) throw new Trouble('BODY_INVALID', { problems: describeIssues(parsed.error) })
  return parsed.data
}

/** The block with that value in the field; an empty one is left out. The order of the fields does not depend on who wrote first. */
export function withField(block: TitleBlock, field: TitleBlockField, value: string | undefined): TitleBlock {
  const changed = { ...block, [field]: value }
  return Object.fromEntries(
    titleBlockFields.flatMap((name) =>
      changed[name] === undefined || changed[name] === '' ? [] : [[name, changed[name]]],
    ),
  )
}
