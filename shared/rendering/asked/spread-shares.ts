/** Which assumptions share the variance, as bars: full for what each does alone, striped for what it does together with others. */
import type { Estimate, Share, Shares } from '../../contracts/index.js'
import { headlineShare } from '../../contracts/index.js'
import { element } from '../dom.js'
import { humaniseName } from '../quantity/words.js'
import { percentText } from './percent.js'
import { shareBar } from './share-bar.js'

/** Below this a share is listed in a line, not drawn. */
const worthABar = 0.01

export function renderShares(document: Document, shares: Shares): HTMLElement {
  const drawn = shares.shares.filter((share) => headlineShare(share).value >= worthABar)
  const rest = shares.shares.filter((share) => headlineShare(share).value < worthABar)
  return element(
    document,
    'div',
    {},
    drawn.length === 0
      ? element(document, 'p', {}, 'Nothing that is sampled moves this number.')
      : element(
          document,
          'ol',
          { class: 'spread-shares' },
          drawn.map((share) => shareRow(document, share)),
        ),
    drawn.length === 0 || rest.length === 0
      ? null
      : element(
          document,
          'p',
          { class: 'spread-soft' },
          `Under 1 % each: ${rest.map(({ name }) => humaniseName(name)).join(', ')}.`,
        ),
    element(document, 'p', { class: 'spread-note' }, methodWords(shares)),
  )
}

/** The largest, to be said aloud. */
export function shareSentence(share: Share): string {
  return `${humaniseName(share.name)} has the largest share of the variance, ${percentText(headlineShare(share).value)}.`
}

function shareRow(document: Document, share: Share): HTMLElement {
  const whole = headlineShare(share)
  const alone = share.alone === undefined ? whole.value : Math.min(Math.max(share.alone.value, 0), whole.value)
  return element(
    document,
    'li',
    {},
    element(document, 'span', { class: 'spread-name' }, humaniseName(share.name)),
    element(document, 'strong', { class: 'spread-number' }, percentText(Math.max(whole.value, 0))),
    shareBar(document, [{ share: alone }, { share: whole.value - alone, striped: true }]),
    element(document, 'span', { class: 'spread-soft' }, rowWords(share)),
  )
}

function rowWords(share: Share): string {
  const { alone } = share
  const interval = `within ${about(headlineShare(share))}`
  return alone === undefined ? interval : `alone ${percentText(Math.max(alone.value, 0))}; ${interval}`
}

function about({ low, high }: Estimate): string {
  return `${percentText(Math.max(low, 0))} to ${percentText(Math.min(high, 1))}`
}

function methodWords({ method, rows, runs, missing, settled, stopped }: Shares): string {
  const what =
    method === 'Sobol indices'
      ? 'Sobol indices. A whole bar is the share of the variance that stays while this is the only thing not known (total); its full part is what would go if this alone were known (first order); the striped part acts only together with others, so that whole bars may add up to more than 100 %.'
      : 'Shapley effects, because assumptions are correlated: what several have in common is divided fairly among them, and the shares add up to 100 %.'
  const state = stopped ? ' Stopped early.' : settled ? '' : ' The intervals are still wide: the shares are rough.'
  const lost = missing === 0 ? '' : ` ${missing} runs gave no number and are left out.`
  return `${what} ${rows} rows, ${runs} runs; 95 % intervals from resampling.${state}${lost}`
}
