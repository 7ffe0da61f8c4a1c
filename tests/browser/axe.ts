/** What keeps people out of a page, as axe finds it. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright'

/** Serious and critical findings, each with what it is about; of the named places, or of the whole page, which takes seconds. */
export async function serious(page: Page, ...places: readonly string[]): Promise<string[]> {
  const builder = new AxeBuilder({ page })
  for (const place of places) builder.include(place)
  const { violations } = await builder.analyze()
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`)
}
