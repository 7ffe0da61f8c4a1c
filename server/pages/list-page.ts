/** The first screen: which notebooks there are, a new one, one from a file, the bin. Works without any script. */
import type { NotebookList, NotebookSummary, RefusedFile } from '../../shared/contracts/index.js'
import type { Guide } from '../notebooks.js'
import type { ClientBuild } from './client-build.js'
import { type Html, html } from './html.js'
import { caution, layout, withPlainStyle } from './layout.js'

export function listPage(list: NotebookList, guide: Guide | undefined, build: ClientBuild): string {
  const body = html`<main class="plain list">
<header>
<p class="mark">Hoverfolio</p>
<h1>Notebooks</h1>
${caution}
<p class="ways"><a href="/words">Words and keys</a> <a href="/methods">Methods</a></p>
</header>
${list.notebooks.length === 0 ? firstSteps(guide) : welcome(guide)}
${list.notebooks.length === 0 ? undefined : html`<ol class="notebooks">${list.notebooks.map(row)}</ol>`}
<section class="begin" aria-label="Begin a notebook">
<form method="post" action="/notebooks" enctype="multipart/form-data">
<label for="new-title">Title of a new notebook</label>
<input id="new-title" name="title" required maxlength="200" autocomplete="off">
<button>Begin</button>
</form>
<form method="post" action="/notebooks/import" enctype="multipart/form-data">
<label for="import-file">Notebook from a file</label>
<input id="import-file" name="file" type="file" accept=".json,application/json" required>
<button>Import</button>
</form>
</section>
${list.refused.length === 0 ? undefined : refusedFiles(list.refused)}
${bin(list.binned)}
</main>`
  return layout({ title: 'Notebooks', assets: withPlainStyle(build.entry('list')), body })
}

/** What leads a newcomer by the hand, and how the way there is called. */
const guides: Readonly<Record<Guide['name'], { readonly copy: string; readonly open: string; readonly about: Html }>> =
  {
    starter: {
      copy: '/notebooks/starter',
      open: 'Open the starter',
      about: html`The starter sizes a four-seat lift-plus-cruise shuttle, from what it must do to a gross mass that closes, with five steps for a first
visit: change a need, and watch every number below it follow.`,
    },
    'worked-sizing': {
      copy: '/notebooks/worked',
      open: 'Open the worked sizing',
      about: html`The worked sizing takes a four-seat lift-plus-cruise shuttle from its requirements to a gross mass that closes. Change its payload and
watch every number below follow.`,
    },
  }

/** For whoever has nothing of their own yet: where to begin, in one step. */
function welcome(guide: Guide | undefined): Html | undefined {
  if (guide?.id === undefined) return undefined
  return html`<section class="first" aria-labelledby="welcome">
<h2 id="welcome">New here? Begin with this one</h2>
<p class="teach">${guides[guide.name].about}</p>
<p><a class="go" href="/notebooks/${guide.id}">${guides[guide.name].open}</a></p>
<p>The name at the top of the sheet leads back to this list.</p>
</section>`
}

/** What an empty list teaches: what a notebook is, and what to do first. */
function firstSteps(guide: Guide | undefined): Html {
  return html`<section class="first" aria-label="First steps">
<p class="teach">There is no notebook here yet. A notebook is a calculation sheet for one aircraft: rationale cells say in prose what it must do
and why it is laid out so, sizing cells work out its numbers, figures show them, and each number can be followed back to its source.</p>
<ol class="steps">
${guide === undefined ? undefined : readOne(guides[guide.name])}
<li><strong>Begin your own.</strong> Name the aircraft in the title below. Write first, as rationale, what it must do; then a sizing cell with
your first numbers, each with its unit: <code>const payload = 400 * u.kg</code>.</li>
<li><strong>Fill in the title block</strong> of the sheet, print it, or pass the notebook on as a file. A file that someone gave you comes in by
Import.</li>
</ol>
</section>`
}

function readOne({ about, copy, open }: (typeof guides)[Guide['name']]): Html {
  return html`<li><strong>Read one.</strong> ${about}
<form method="post" action="${copy}" enctype="multipart/form-data"><button>${open}</button></form></li>`
}

function row(notebook: NotebookSummary): Html {
  return html`<li>
<a class="title" href="/notebooks/${notebook.id}">${shownTitle(notebook)}</a>
${notebook.question === undefined ? undefined : html`<p class="question">${notebook.question}</p>`}
<p class="facts"><span>${cells(notebook.cells)}</span><time datetime="${notebook.changed}">changed ${day(notebook.changed)}</time></p>
<div class="actions"><a href="/api/notebooks/${notebook.id}/file" download aria-label="Download: ${shownTitle(notebook)}">Download</a>
<form method="post" action="/notebooks/${notebook.id}/copy" enctype="multipart/form-data"><button aria-label="Duplicate: ${shownTitle(notebook)}">Duplicate</button></form>
<form method="post" action="/notebooks/${notebook.id}/bin" enctype="multipart/form-data"><button aria-label="Move to bin: ${shownTitle(notebook)}">Move to bin</button></form></div>
</li>`
}

function refusedFiles(files: readonly RefusedFile[]): Html {
  return html`<section class="refused"><h2>Files that cannot be opened</h2>
<p>They lie in the data folder and are left as they are.</p>
<dl>${files.map(({ file, reason }) => html`<dt>${file}</dt><dd>${reason}</dd>`)}</dl></section>`
}

function bin(binned: readonly NotebookSummary[]): Html {
  const content =
    binned.length === 0
      ? html`<p>The bin is empty. A notebook moved here can be taken out again, with everything in it, until it is deleted for good.</p>`
      : html`<ul>${binned.map(
          (notebook) => html`<li><span>${shownTitle(notebook)}</span>
<span class="actions"><form method="post" action="/notebooks/${notebook.id}/restore" enctype="multipart/form-data"><button aria-label="Take out: ${shownTitle(notebook)}">Take out</button></form>
<details class="for-good"><summary aria-label="Delete for good: ${shownTitle(notebook)}">Delete for good</summary>
<form method="post" action="/notebooks/${notebook.id}/discard" enctype="multipart/form-data"><p>“${shownTitle(notebook)}” with its ${cells(notebook.cells)}, results and revisions would be gone; nothing brings
it back.</p><button>Yes, delete it for good</button></form></details></span></li>`,
        )}</ul>`
  return html`<details class="bin"><summary>Bin (${binned.length})</summary>${content}</details>`
}

const shownTitle = ({ title }: NotebookSummary) => (title.trim() === '' ? 'Untitled' : title)
const cells = (count: number) => (count === 1 ? '1 cell' : `${count} cells`)
const day = (moment: string) => `${moment.slice(0, 10)} ${moment.slice(11, 16)} UTC`
