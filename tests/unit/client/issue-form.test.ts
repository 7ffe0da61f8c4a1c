import { expect, test } from 'vitest'
import { trialWords } from '../../../client/revisions/issue-form.js'

test('trialWords() says that a revision freezes the values of the document, and nothing without a trial', () => {
  expect(trialWords(0)).toBe('')
  expect(trialWords(1)).toBe(
    "1 trial value is in force on this page. A revision freezes the document's own values and their results, not what the sheet shows with it. To freeze it, adopt it first.",
  )
  expect(trialWords(2)).toMatch(/^2 trial values are in force .* with them\. To freeze them, adopt them first\.$/)
})
