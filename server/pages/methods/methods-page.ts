/**
 * The page of methods: every method of the kernel by subject, each at its own anchor. Readable and searchable without script: the search is
 * a form, and the address carries it.
 */
import { parseHTML } from 'linkedom'
import type { Method } from '../../../shared/contracts/index.js'
import { findMethods, methodWords, renderMethod } from '../../../shared/rendering/index.js'
import type { ClientBuild } from '../client-build.js'
import { Html, html } from '../html.js'
import { caution, layout, withPlainStyle } from '../layout.js'
import { subjectTitles } from './subjects.js'

/** Sought words longer than this are cut. */
const longestSearch = 200

export class MethodsPage {
  readonly #methods: readonly Method[]
  readonly #build: ClientBuild
  #whole: string | undefined
  /** Drawn once: neither the kernel nor its methods change while the server runs. */
  readonly #drawn = new Map<string, Html>()

  constructor(methods: readonly Method[], build: ClientBuild) {
    this.#methods = methods
    this.#build = build
  }

  /** The page with the methods that fit the words sought, all of them without any; the others are there and hidden. */
  page(sought = ''): string {
    const words = sought.trim().slice(0, longestSearch)
    if (words !== '') return this.#draw(words)
    this.#whole ??= this.#draw('')
    return this.#whole
  }

  #draw(words: string): string {
    const found = words === '' ? this.#methods : findMethods(this.#methods, words)
    const shown = new Set(found)
    const subjects = [...new Set(this.#methods.map(({ subject }) => subject))]
    const sections = subjects.map((subject) => {
      const methods = this.#methods.filter((method) => method.subject === subject)
      return { subject, methods, hidden: !methods.some((method) => shown.has(method)) }
    })
    const body = html`<main class="plain methods"><header><p class="mark"><a href="/">Hoverfolio</a></p><h1>Methods</h1>
${caution}</header>
<p class="teach">What cells can call, with the equation, the source and the range in which it holds. Every example is computed by the same kernel
that computes notebooks.</p>
<form class="method-search" method="get" action="/methods" role="search"><label for="find">Find by name, quantity or source</label>
<input id="find" name="find" type="search" value="${words}" maxlength="${longestSearch}" autocomplete="off"> <button>Find</button>
<p class="method-count" role="status">${countWords(found.length, this.#methods.length, words)}</p></form>
<nav aria-label="Subjects"><ul class="contents">${sections.map(({ subject, hidden }) => contents(subject, hidden))}</ul></nav>
${sections.map(
  ({
    subject,
    methods,
    hidden,
  }) => html`<section id="${subject}" aria-labelledby="${subject}-title"${hiddenWhen(hidden)}><h2 id="${subject}-title">${subjectTitles[subject] ?? subject}</h2>
${methods.map((method) => html`<details class="method"${hiddenWhen(!shown.has(method))}${this.#method(method)}`)}</section>
`,
)}
<p class="ways"><a href="/">All notebooks</a> <a href="/words">Words and keys</a></p></main>`
    return layout({ title: 'Methods', assets: withPlainStyle(this.#build.entry('methods')), body })
  }

  /** Without its opening, which says whether it fits. */
  #method(method: Method): Html {
    const known = this.#drawn.get(method.name)
    if (known !== undefined) return known
    const { document } = parseHTML('<!doctype html><html><head></head><body></body></html>')
    const forms = renderMethod(document, method, { tryAt: '/methods/notebooks' }).outerHTML
    const drawn = html` data-method="${method.name}" data-find="${methodWords(method)}"><summary><h3>${method.name}</h3>
<span class="method-gist">${(method.forms[0]?.summary ?? '').replaceAll('`', '')}</span></summary>
<div class="method-body" id="${method.name}">${new Html(forms)}</div></details>
`
    this.#drawn.set(method.name, drawn)
    return drawn
  }
}

const hiddenWhen = (hidden: boolean) => (hidden ? new Html(' hidden') : undefined)

function contents(subject: string, hidden: boolean): Html {
  return html`<li${hiddenWhen(hidden)}><a href="#${subject}">${subjectTitles[subject] ?? subject}</a></li>`
}

function countWords(found: number, all: number, words: string): string {
  if (all === 0) return 'The catalogue is not built; run "npm run build".'
  if (words === '') return `${all} methods.`
  if (found === 0) return `No method has all of these words; try fewer, or a quantity such as "disk loading".`
  return `${found} of ${all} methods.`
}
