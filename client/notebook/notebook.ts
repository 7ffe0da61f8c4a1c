/** The open notebook: live document, computation and sheet, and the commands that join them. */
import type * as Y from 'yjs'
import type { CellId, PageData, TitleBlock } from '../../shared/contracts/index.js'
import type { SheetView, UnitSystem } from '../../shared/rendering/index.js'
import { numberMemory } from '../asked/number-memory.js'
import { Computation } from '../compute/computation.js'
import type { PagePipeline } from '../compute/pipeline.js'
import { Sharing } from '../compute/sharing.js'
import { Drawer } from '../drawer/drawer.js'
import { drawerMemory, sessionStorageOf } from '../drawer/memory.js'
import { drawerViews } from '../drawer/views.js'
import { languageAsker } from '../editor/language/ask-worker.js'
import { browserClock, openLiveSocket } from '../live/browser-socket.js'
import { type DocumentSnapshot, snapshotOf, sourceOf, titleOf } from '../live/document.js'
import { openKeep } from '../live/keep.js'
import { changeTitleBlock, postResults, readProvenance } from '../live/requests.js'
import { type SavingState, savingWords } from '../live/saving-state.js'
import { LiveSession } from '../live/session.js'
import { type NotebookUndo, undoFor } from '../live/undo.js'
import { PageRevisions } from '../revisions/page-revisions.js'
import { type Announcer, createAnnouncer } from '../sheet/announcer.js'
import { Sheet, storageOf } from '../sheet/sheet.js'
import { sheetViewOf } from '../sheet/sheet-view.js'
import { openTrial, type PageTrial, trialFingerprint } from '../trial/page-trial.js'
import { Bar, type BarCommands } from './bar.js'
import { NotebookCommands } from './cell-commands.js'
import { CellEditing } from './cell-editing.js'
import { editedAway } from './edited-away.js'
import { Folds } from './folds.js'
import { followLine } from './follow-lines.js'
import { listenToKeys } from './keyboard.js'
import { LiveFingerprint } from './live-fingerprint.js'
import { newsOf } from './news.js'
import { snapshotOfPage } from './page-data.js'
import { watchPage } from './page-events.js'
import { ReaderUnits } from './reader-units.js'
import { RunDisplay } from './run-display.js'
import { Search } from './search.js'
import { makeSheetEnd } from './sheet-end.js'
import { surfaces } from './surfaces.js'
import { TitleEditor } from './title-editor.js'
import { TitleFields } from './title-fields.js'
import { WaitingFields } from './waiting-fields.js'

/** What runs elsewhere and is handed in: reading, evaluating, checking, and what the editor asks about cells. */
export type Pipeline = Omit<PagePipeline, 'startCompiler'>

export class OpenNotebook {
  readonly #data: PageData
  readonly #announcer: Announcer = createAnnouncer(document)
  readonly #bar: Bar
  readonly #folds = new Folds()
  readonly #units = new ReaderUnits(document, storageOf(window), (system) => this.#showUnits(system))
  readonly #computation: Computation
  readonly #sharing: Sharing
  readonly #sheet: Sheet
  readonly #title: TitleEditor | undefined
  readonly #fields: TitleFields | undefined
  readonly #search: Search
  readonly #drawer: Drawer
  readonly #revisions: PageRevisions
  readonly #fingerprint: LiveFingerprint
  readonly #commands: NotebookCommands
  readonly #run = new RunDisplay({
    bar: () => this.#bar,
    progress: () => this.#computation.progress,
    numberOf: (cell) => this.#sheet.section(cell)?.view.number,
    say: (sentence) => this.#announcer.say(sentence),
  })
  readonly #main: HTMLElement
  readonly #editing: CellEditing
  #session: LiveSession | undefined
  #doc: Y.Doc | undefined
  #undo: NotebookUndo | undefined
  #titleBlock: TitleBlock
  #view: SheetView
  /** Absent until the sheet is there. */
  #trial: PageTrial | undefined
  #drawing = false
  /** When the sheet was drawn last [ms]. */
  #drawnAt = 0

  constructor(main: HTMLElement, data: PageData, pipeline: Pipeline) {
    this.#main = main
    this.#data = data
    this.#titleBlock = data.notebook.titleBlock ?? {}
    this.#folds.watch(main)
    this.#sharing = new Sharing(
      (results) => postResults(data.id, results),
      (results) => this.#computation.offerAgain(results),
    )
    this.#computation = new Computation(
      { ...pipeline, share: (results) => this.#sharing.add(results), after: browserClock.after },
      {
        onChange: () => this.#drawSoon(),
        onLongRun: (running) => this.#run.set(running),
        onTrouble: (sentence) => this.#announcer.say(sentence),
      },
    )
    this.#editing = this.#makeEditing(pipeline)
    this.#computation.book.showStored(data.results, data.outOfDate)
    this.#revisions = this.#makeRevisions()
    this.#fingerprint = this.#makeFingerprint()
    this.#view = this.#makeView()
    this.#commands = new NotebookCommands({
      live: () => this.#live(),
      view: () => this.#view,
      section: (id) => this.#sheet.section(id),
      draw: () => this.#draw(),
      edit: (id, caret) => this.#editing.open(id, caret),
      unfold: (id) => this.#folds.open(id),
      fold: (section, open) => this.#folds.set(section, open),
      say: (sentence) => this.#announcer.say(sentence),
      tell: (sentence) => this.#announcer.tell(sentence),
    })
    this.#sheet = new Sheet(main, this.#view, this.#commands)
    this.#search = new Search(main.querySelector<HTMLElement>('.cells') ?? main, {
      onEnd: (cell) => this.#endSearch(cell),
      textOf: (cell) => (this.#doc === undefined ? '' : (sourceOf(this.#doc, cell)?.toString() ?? '')),
      say: (sentence) => this.#announcer.say(sentence),
    })
    this.#trial = this.#makeTrial()
    this.#bar = this.#makeBar()
    document.body.prepend(this.#bar.element, this.#search.element)
    this.#drawer = this.#makeDrawer(pipeline, this.#trial)
    main.after(this.#makeEnd(), this.#drawer.element)
    this.#drawer.restore(location.hash.slice(1))
    const heading = this.#sheet.title
    if (heading !== null) this.#title = new TitleEditor(heading, () => this.#editTitle())
    const head = main.querySelector<HTMLElement>('.title-block')
    if (head !== null) this.#fields = this.#makeFields(head)
    this.#listen(main)
    this.#follow(this.#snapshot())
    // The server drew the units as written.
    if (this.#units.system !== 'as written') this.#drawSoon()
  }

  #live() {
    return this.#doc === undefined || this.#undo === undefined ? undefined : { doc: this.#doc, undo: this.#undo }
  }

  #makeEditing({ language }: Pipeline): CellEditing {
    const surfaceFor = surfaces({
      ask: languageAsker(language, () => sizingCells(this.#snapshot())),
      textOf: (id) => (this.#doc === undefined ? undefined : sourceOf(this.#doc, id)),
      numberOf: (id) => this.#sheet.section(id)?.view.number,
      goTo: (id, caret) => this.#editing.goTo(id, caret),
    })
    return new CellEditing({
      live: () => this.#live(),
      view: () => this.#view,
      section: (id) => this.#sheet.section(id),
      names: () => this.#computation.names,
      surfaceFor,
      unfold: (id) => this.#folds.open(id),
      draw: () => this.#draw(),
      tell: (sentence) => this.#announcer.tell(sentence),
    })
  }

  #makeBar(): Bar {
    const commands: BarCommands = {
      undo: () => this.#undo?.undo(),
      redo: () => this.#undo?.redo(),
      computeAll: () => void this.#computation.computeAll(),
      stop: () => this.#stop(),
      search: () => this.#search.open(),
      print: () => window.print(),
      drawer: () => (this.#drawer.isOpen ? this.#drawer.close() : this.#drawer.open()),
    }
    return new Bar(document, commands, this.#units.element)
  }

  #makeTrial(): PageTrial {
    const { book } = this.#computation
    return openTrial(window, this.#data.id, {
      main: this.#main,
      live: () => this.#live(),
      view: () => this.#view,
      graph: () => this.#computation.graph,
      own: () => this.#view.cells.map(({ id }) => book.currentResult(id)),
      tryOut: (overrides) => this.#computation.tryOut(overrides),
      prepare: () => this.#computation.prepareTrial(),
      onStanding: () => this.#showFingerprint(),
      say: (sentence) => this.#announcer.say(sentence),
      tell: (sentence) => this.#announcer.tell(sentence),
    })
  }

  #makeDrawer({ openNumbers }: Pipeline, trial: PageTrial): Drawer {
    const views = drawerViews({
      view: () => this.#view,
      reading: () => this.#computation.reading,
      numbers: openNumbers,
      memory: numberMemory(this.#data.id, sessionStorageOf(window)),
      sheet: this.#main,
      say: (sentence) => this.#announcer.say(sentence),
      revisions: this.#revisions.view,
      live: () => this.#live(),
      trial,
      open: (name) => this.#drawer.open(name),
    })
    return new Drawer(document, views, drawerMemory(this.#data.id, sessionStorageOf(window)), {
      onChange: (open) => this.#bar.setDrawer(open),
      focusBack: () => this.#bar.focusDrawerButton(),
    })
  }

  #makeFingerprint(): LiveFingerprint {
    return new LiveFingerprint(this.#data.provenance, {
      ask: () => readProvenance(this.#data.id),
      after: browserClock.after,
      show: () => this.#showFingerprint(),
    })
  }

  #makeRevisions(): PageRevisions {
    const { id, kernelHash, revision } = this.#data
    return new PageRevisions({
      id,
      mark: revision,
      kernelHash,
      text: () => ({ ...this.#snapshot(), titleBlock: this.#titleBlock }),
      view: () => this.#view,
      saved: () => this.#allSaved(),
      after: browserClock.after,
      onStanding: () => this.#fields?.show(this.#titleBlock),
      say: (sentence) => this.#announcer.say(sentence),
    })
  }

  #makeEnd(): HTMLElement {
    return makeSheetEnd(document, this.#data.id, {
      add: (kind) => this.#commands.add(kind, this.#snapshot().cells.at(-1)?.id ?? null, 'below'),
      foldAll: (folded) => {
        this.#folds.setAll(this.#main, !folded)
        this.#draw()
        this.#announcer.say(folded ? 'All cells are folded.' : 'All cells are open.')
      },
      renumber: () => this.#commands.renumber(),
      mayExport: () => this.#mayExport(),
      units: () => this.#units.system,
    })
  }

  #makeFields(head: HTMLElement): TitleFields {
    return new TitleFields(head, this.#titleBlock, {
      send: (step) => changeTitleBlock(this.#data.id, step),
      onBlock: (block) => this.#showTitleBlock(block),
      onWritten: (step) => this.#undo?.wroteField(step),
      say: (sentence) => this.#announcer.tell(sentence),
      waiting: new WaitingFields(this.#data.id, storageOf(window)),
    })
  }

  /** Joins the live document; edits are possible from its first answer on. */
  async connect(): Promise<void> {
    const keep = await openKeep(this.#data.id, globalThis.indexedDB, storageOf(window))
    const kept = await keep.load().catch(() => [])
    this.#session = new LiveSession(() => openLiveSocket(this.#data.id), keep, kept, browserClock, {
      onDocument: (doc) => this.#takeDocument(doc),
      onSaving: (state) => this.#showSaving(state),
      onResults: (results) => this.#computation.receive(results),
      onTitleBlock: (block) => this.#fields?.show(block),
      onRevision: (mark) => this.#revisions.take(mark),
      onPresent: (readers) => this.#bar.setReaders(readers),
    })
    watchPage(window, {
      onNetwork: (there) => (there ? this.#session?.retryNow() : this.#session?.lose()),
      beforePrint: () => {
        this.#title?.close()
        this.#fields?.close()
        this.#editing.leaveAll()
      },
      onFragment: (name) => void this.#drawer.open(name),
      onLeave: () => {
        this.#fields?.settle()
        this.#session?.leave()
      },
      mayLeave: () => keep.lasts || this.#allSaved(),
    })
  }

  #editTitle(): void {
    if (this.#doc === undefined || this.#undo === undefined) return
    this.#undo.stopCapturing()
    this.#title?.open(titleOf(this.#doc), this.#undo, (sentence) => this.#announcer.tell(sentence))
  }

  #stop(): boolean {
    if (!this.#run.running || !this.#computation.stop()) return false
    this.#announcer.say('Stopped. The values shown are the last good ones, out of date.')
    return true
  }

  #listen(main: HTMLElement): void {
    listenToKeys(document, {
      undo: () => this.#undo?.undo(),
      redo: () => this.#undo?.redo(),
      stop: () => this.#stop(),
      search: () => this.#search.open(),
      drawer: () => this.#drawer.enterOrLeave(),
      inCell: (command, cell) => this.#commands.obey(command, cell),
    })
    main.addEventListener('dblclick', (event) => {
      const calculation = event.target instanceof Element ? event.target.closest('.calculation') : null
      const cell = calculation?.closest<HTMLElement>('.cell')
      if (cell?.dataset.cell !== undefined && cell.dataset.editing === undefined)
        this.#editing.open(cell.dataset.cell as CellId)
    })
    for (const place of [main, this.#drawer.element])
      place.addEventListener('click', (event) => followLine(event, (id) => this.#sheet.section(id)))
  }

  #endSearch(cell: CellId | undefined): void {
    const target = cell === undefined ? undefined : this.#sheet.section(cell)?.element
    ;(target ?? this.#sheet.section(this.#view.cells[0]?.id ?? ('' as CellId))?.element)?.focus({ preventScroll: true })
  }

  #allSaved(): boolean {
    const state = this.#session?.state
    if (this.#fields?.allSent === false) return false
    return state === undefined || (state.unsaved === 0 && state.refusal === undefined)
  }

  #mayExport(): boolean {
    if (this.#allSaved()) {
      if (this.#trial?.standing === true) this.#announcer.tell('The file holds the document, without the trial values.')
      return true
    }
    this.#announcer.tell(
      'Your last edits have not reached the server yet, and the file would lack them; try again when all edits are saved.',
    )
    return false
  }

  #showTitleBlock(block: TitleBlock): void {
    this.#titleBlock = block
    this.#draw()
    this.#sheet.showTitleBlock(this.#view)
  }

  #showTaken(way: 'undo' | 'redo', name: string | null): void {
    if (name === null)
      this.#announcer.tell(way === 'undo' ? 'There is nothing to undo.' : 'There is nothing to make again.')
    else this.#announcer.say(`${way === 'undo' ? 'Undone' : 'Made again'}: ${name}.`)
  }

  /** A first or another document: everything that was bound to the old one is bound anew. */
  #takeDocument(doc: Y.Doc): void {
    const goOn = this.#editing.suspend()
    const editingTitle = this.#title?.editing === true
    this.#title?.close()
    this.#undo?.destroy()
    this.#doc = doc
    const undo = undoFor(doc, {
      onTaken: (way, name) => this.#showTaken(way, name),
      onKept: () => this.#announcer.tell('The cell stays: someone else has written in it meanwhile.'),
      writeField: (step) =>
        void this.#fields?.write(step, true).then((written) => {
          if (written.kind === 'refused') this.#announcer.tell(written.sentence)
        }),
    })
    this.#undo = undo
    const showUndo = () => this.#bar.setUndo(undo.canUndo(), undo.canRedo())
    for (const event of ['stack-item-added', 'stack-item-popped', 'stack-cleared'] as const) undo.on(event, showUndo)
    showUndo()
    doc.on('afterTransaction', () => this.#drawSoon())
    this.#draw()
    goOn()
    if (editingTitle) this.#editTitle()
  }

  #snapshot(): DocumentSnapshot {
    return this.#doc === undefined ? snapshotOfPage(this.#data) : snapshotOf(this.#doc)
  }

  #makeView(): SheetView {
    const { id } = this.#data
    const view = sheetViewOf(this.#snapshot(), {
      id,
      titleBlock: this.#titleBlock,
      isFolded: (cell) => this.#folds.isFolded(cell),
      standing: (cell) => this.#computation.standing(cell),
      findings: (cell) => this.#computation.findings(cell),
      formulas: (cell) => this.#computation.formulas(cell),
    })
    const words = this.#fingerprintWords()
    return { ...view, ...this.#revisions.standing, ...(words === undefined ? {} : { fingerprint: words }) }
  }

  /** A trial is nobody's document. */
  #fingerprintWords(): string | undefined {
    return this.#trial?.standing === true ? trialFingerprint : this.#fingerprint.words
  }

  #showFingerprint(): void {
    this.#sheet.showFingerprint(this.#fingerprintWords() ?? 'not known')
  }

  /** Many changes in one turn are drawn once, and results that come one upon another once in a frame. */
  #drawSoon(): void {
    if (this.#drawing) return
    this.#drawing = true
    const draw = () => {
      if (this.#drawing) this.#draw()
    }
    if (performance.now() - this.#drawnAt < frame && !document.hidden) requestAnimationFrame(draw)
    else queueMicrotask(draw)
  }

  #draw(): void {
    this.#drawing = false
    this.#follow(this.#snapshot())
    const view = this.#units.of(this.#makeView())
    const news = newsOf(this.#view, view)
    const moved = this.#doc === undefined ? [] : editedAway(this.#view, view, this.#doc, this.#sheet)
    this.#view = view
    this.#sheet.update(view)
    for (const place of moved) {
      if (place.goesOn === undefined)
        this.#announcer.tell(`Cell ${place.number}, in which you were writing, was removed.`)
      else this.#editing.open(place.goesOn, place.caret)
    }
    this.#search.refresh()
    this.#trial?.follow()
    this.#drawer.update()
    this.#revisions.follow()
    this.#fingerprint.follow(view)
    for (const cell of view.cells) this.#sheet.section(cell.id)?.surface?.setDimensions(this.#computation.names)
    if (news !== null) this.#announcer.say(news)
    this.#run.update()
    this.#drawnAt = performance.now()
  }

  #showUnits(system: UnitSystem): void {
    this.#draw()
    this.#announcer.say(`Units: ${system}.`)
  }

  #follow(snapshot: DocumentSnapshot): void {
    this.#computation.setCells(sizingCells(snapshot))
  }

  #showSaving(state: SavingState): void {
    const safe = state.refusal === undefined && (state.connected || !state.ready)
    const words = savingWords(state)
    this.#bar.setSaving(words, safe)
    this.#revisions.setConnected(state.connected)
    if (state.connected) void this.#fields?.sendWaiting()
    this.#sharing.setSaved(state.connected && state.unsaved === 0)
    if (!safe) this.#announcer.say(`${words[0]?.toUpperCase()}${words.slice(1)}.`)
  }
}

/** One frame of a screen [ms]. */
const frame = 16

const sizingCells = (snapshot: DocumentSnapshot) => snapshot.cells.filter((cell) => cell.kind === 'sizing')
