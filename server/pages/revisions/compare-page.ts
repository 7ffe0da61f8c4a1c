/** Two revisions, or one and the text as it stands, on one screen. All but the waterfall is here without any script. */
import { parseHTML } from 'linkedom'
import { type ComparedSide, compareSides, numbersOf } from '../../../kernel/cells/revision/index.js'
import type {
  ComparedName,
  ComparePageData,
  NotebookId,
  NumberChange,
  RevisionComparison,
  RevisionList,
  WaterfallSource,
} from '../../../shared/contracts/index.js'
import {
  addressInUnits,
  comparisonInUnits,
  inUnits,
  renderComparison,
  shortFingerprint,
  type UnitSystem,
} from '../../../shared/rendering/index.js'
import type { Sides } from '../../revisions/index.js'
import type { ClientBuild } from '../client-build.js'
import { Html, html, jsonForScript } from '../html.js'
import { caution, layout } from '../layout.js'
import { unitChoice } from './unit-choice.js'

export interface ComparePage {
  readonly id: NotebookId
  readonly list: RevisionList
  readonly from: ComparedName
  readonly to: ComparedName
  readonly sides: Sides
  readonly pictures: boolean
  readonly units: UnitSystem
  /** Of the kernel at hand. */
  readonly kernelHash: string
}

export function comparePage(page: ComparePage, build: ClientBuild): string {
  const { id, list, from, to, sides, pictures, units, kernelHash } = page
  const comparison = comparisonInUnits(compareSides(sides.from, sides.to), units)
  const document = parseHTML('<!doctype html><html><head></head><body></body></html>').document
  const address = `/notebooks/${id}/compare?from=${from}&to=${to}`
  const drawn = renderComparison(document, comparison, {
    pictures,
    picturesAt: addressInUnits(`${address}&pictures=1`, units),
  })
  const title = sides.to.content.text.title.trim() === '' ? 'Untitled' : sides.to.content.text.title
  const body = html`<nav class="bar" aria-label="Pages"><a class="mark" href="/">Hoverfolio</a> <a href="/notebooks/${id}">${title}</a> <a href="/words">Words and keys</a></nav>
<main class="compare-page">
<header><h1>${title}: ${sides.from.label} and ${sides.to.label}</h1>
${caution}
${choice(list, from, to, units)}
${unitChoice(pictures ? `${address}&pictures=1` : address, units)}
<p class="compare-prints">${printsOf(list, from, to)}</p></header>
${list.revisions.length === 0 ? teach : undefined}
${new Html(drawn.outerHTML)}
${new Html('<section id="waterfall" aria-labelledby="waterfall-title"><h2 id="waterfall-title">Waterfall</h2><p class="waterfall-intro">Which change caused which part of the difference: every change is adopted, one at a time, from the earlier side to the later.</p><noscript><p>It is computed in the browser and needs its script.</p></noscript></section>')}
</main>
<script type="application/json" id="page-data">${jsonForScript(pageData(sides, comparison, units, kernelHash))}</script>`
  const entry = build.entry('compare')
  const assets = entry.styles.length > 0 ? entry : { ...entry, styles: ['/style/pages.css'] }
  return layout({ title: `${title}: compare`, assets, body })
}

const teach = html`<p class="teach">This notebook has no revision yet. Issue one in the drawer of its sheet, under Revisions: it freezes the text and
its results, and from then on this page shows what changed since.</p>`

/** Works without script; leaves out what there is only one of. */
function choice(list: RevisionList, from: ComparedName, to: ComparedName, units: UnitSystem) {
  const names = [...list.revisions.map((each) => each.name), 'live']
  const options = (chosen: string) =>
    names.map((name) => {
      const words = name === 'live' ? 'the text as it stands' : `revision ${name}`
      return name === chosen
        ? html`<option value="${name}" selected>${words}</option>`
        : html`<option value="${name}">${words}</option>`
    })
  return html`<form class="compare-choice" method="get"><label>Earlier <select name="from">${options(from)}</select></label>
<label>Later <select name="to">${options(to)}</select></label> ${units === 'as written' ? undefined : html`<input type="hidden" name="units" value="${units}">`}<button class="small-button">Compare</button></form>`
}

function printsOf({ revisions }: RevisionList, from: ComparedName, to: ComparedName) {
  return [...new Set([from, to])].flatMap((name) => {
    const revision = revisions.find((each) => each.name === name)
    if (revision === undefined) return []
    const altered =
      revision.altered === undefined ? undefined : html` <strong>altered on disk, not to be relied on</strong>`
    const words = `revision ${name}, fingerprint ${shortFingerprint(revision.fingerprint)}, issued ${revision.issued.slice(0, 10)}`
    return [html`<span>${words}${altered}</span> `]
  })
}

function pageData(
  sides: Sides,
  comparison: RevisionComparison,
  units: UnitSystem,
  kernelHash: string,
): ComparePageData {
  return {
    from: waterfallSource(sides.from, kernelHash),
    to: waterfallSource(sides.to, kernelHash),
    results: resultsOf(sides, comparison, units),
    assumptions: comparison.assumptions.map(({ name, dimension, from, to }) => {
      const unit = (to ?? from)?.unit
      return { name, dimension, ...(unit === undefined ? {} : { unit }) }
    }),
  }
}

function waterfallSource({ label, content }: ComparedSide, kernelHash: string): WaterfallSource {
  const { text, results } = content
  const foreign = content.kernelHash !== kernelHash
  return {
    label,
    cells: text.cells.flatMap(({ id, kind, source }) => (kind === 'sizing' ? [{ id, source: source.join('\n') }] : [])),
    numbers: Object.fromEntries(text.cells.map(({ id, number }) => [id, number])),
    kept: foreign
      ? Object.fromEntries(
          [...numbersOf(results)].flatMap(([name, { si }]) => (typeof si === 'number' ? [[name, si]] : [])),
        )
      : {},
  }
}

/** Numbers that both sides have: those that changed first. */
function resultsOf(
  { from, to }: Sides,
  { numbers }: RevisionComparison,
  units: UnitSystem,
): ComparePageData['results'] {
  const before = numbersOf(from.content.results)
  const changed = new Set(numbers.filter(hasBoth).map(({ name }) => name))
  const after = numbersOf(to.content.results)
  const names = [...changed, ...[...after.keys()].filter((name) => before.has(name) && !changed.has(name))]
  return names.flatMap((name) => {
    const found = after.get(name)
    if (found === undefined) return []
    const { label, dimension, unit } = inUnits({ ...found, name }, [before.get(name)?.si, found.si], units)
    return [
      {
        name,
        ...(label === undefined ? {} : { label }),
        dimension,
        ...(unit === undefined ? {} : { unit }),
        changed: changed.has(name),
      },
    ]
  })
}

const hasBoth = ({ from, to }: NumberChange) => from !== undefined && to !== undefined
