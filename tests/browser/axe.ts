/** What keeps people out of a page, as axe finds it. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright'

/** Serious and critical findings, each with what it is about. */
export async function serious(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`)
}
