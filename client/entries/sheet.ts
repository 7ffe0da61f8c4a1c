/** The notebook page: takes over the sheet that the server drew. */
import '../styles/sheet-page.css'
import { openPagePipeline } from '../compute/pipeline.js'
import { loadCodeEditor } from '../editor/code-editor.js'
import { OpenNotebook } from '../notebook/notebook.js'
import { readPageData } from '../notebook/page-data.js'
import { loadLateParts } from '../sheet/browser-drawing.js'

const main = document.getElementById('sheet')
if (main !== null) {
  const pipeline = openPagePipeline()
  const notebook = new OpenNotebook(main, readPageData(document), pipeline)
  void notebook.connect()
  // After the first paint: first the editor, so that a first edit finds it there (a failure is tried again when a cell is opened),
  // then what draws figures and prose (also tried again when needed), then the compiler, 12 MB that nobody should wait for: until it is there the server erases types.
  const idle = window.requestIdleCallback ?? ((call: () => void) => setTimeout(call, 500))
  const compiler = () => void idle(() => pipeline.startCompiler(), { timeout: 3000 })
  const later = () => void idle(() => void loadLateParts().then(compiler, compiler), { timeout: 3000 })
  idle(() => void loadCodeEditor().then(later, later), { timeout: 3000 })
}
