/** The notebook page: takes over the sheet that the server drew. */
import '../styles/sheet-page.css'
import { openPagePipeline } from '../compute/pipeline.js'
import { loadCodeEditor } from '../editor/code-editor.js'
import { OpenNotebook } from '../notebook/notebook.js'
import { readPageData } from '../notebook/page-data.js'
import { loadLateParts } from '../sheet/browser-drawing.js'

/** How long a page is left alone before its compiler starts without an edit. [ms] */
const restBeforeCompiler = 10_000

const main = document.getElementById('sheet')
if (main !== null) {
  const pipeline = openPagePipeline()
  const notebook = new OpenNotebook(main, readPageData(document), pipeline)
  void notebook.connect()
  // After the first paint: first the editor, so that a first edit finds it there (a failure is tried again when a cell is opened),
  // then what draws figures and prose (also tried again when needed). The compiler, 12 MB and seconds of work, starts with the first
  // edit, or after a rest, so that who edits without a network finds it; until it is there the server erases types.
  const idle = window.requestIdleCallback ?? ((call: () => void) => setTimeout(call, 500))
  const compiler = () => void setTimeout(() => idle(() => pipeline.startCompiler()), restBeforeCompiler)
  const later = () => void idle(() => void loadLateParts().then(compiler, compiler), { timeout: 3000 })
  idle(() => void loadCodeEditor().then(later, later), { timeout: 3000 })
}
