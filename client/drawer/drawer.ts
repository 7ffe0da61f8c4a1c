/** The side drawer: one view at a time beside the sheet, below it where the page is narrow. Views join by being listed. */
import { commandOf } from '../../shared/contracts/keys.js'
import { type DrawerMemory, forgetful } from './memory.js'

export interface DrawerView {
  /** Fragment of the address that opens it: `register`. */
  readonly name: string
  /** On its tab. */
  readonly title: string
  readonly element: HTMLElement
  /** It became visible. */
  show(): void
  /** The sheet was drawn; called only while visible. */
  update(): void
  /** Another view is shown, or the drawer was closed. */
  hide?(): void
}

export interface DrawerEvents {
  /** It opened or closed. */
  onChange(open: boolean): void
  /** Where the focus goes when what had it before is gone. */
  focusBack(): void
}

const silent: DrawerEvents = { onChange() {}, focusBack() {} }

export class Drawer {
  readonly element: HTMLElement
  readonly #views: readonly DrawerView[]
  readonly #tabs = new Map<string, HTMLButtonElement>()
  readonly #panels = new Map<string, HTMLElement>()
  readonly #memory: DrawerMemory
  readonly #events: DrawerEvents
  #shown: DrawerView | undefined
  #last: string | undefined
  /** What had the focus before the drawer was opened. */
  #before: HTMLElement | undefined

  constructor(
    document: Document,
    views: readonly DrawerView[],
    memory: DrawerMemory = forgetful,
    events: DrawerEvents = silent,
  ) {
    this.#views = views
    this.#memory = memory
    this.#events = events
    this.element = document.createElement('aside')
    this.element.id = 'drawer'
    this.element.className = 'drawer'
    this.element.setAttribute('aria-label', 'Side drawer')
    this.element.hidden = true
    this.element.append(this.#makeTabs(document), ...views.map((view) => this.#makePanel(document, view)))
    this.element.addEventListener('keydown', (event) => this.#key(event))
  }

  /** Opens as it was left in this browser, without taking the focus; a fragment of the address comes first. */
  restore(fragment: string): void {
    const name = this.#view(fragment)?.name ?? this.#memory.read()
    if (name !== null) this.#show(name)
  }

  /** Shows a view and takes the focus; without a name the one shown last. False when there is no such view. */
  open(name: string = this.#shown?.name ?? this.#last ?? this.#views[0]?.name ?? ''): boolean {
    if (this.#view(name) === undefined) return false
    const { activeElement } = this.element.ownerDocument
    if (activeElement instanceof HTMLElement && !this.element.contains(activeElement)) this.#before = activeElement
    this.#show(name)
    this.#tabs.get(name)?.focus()
    return true
  }

  close(): void {
    if (this.element.hidden) return
    const held = this.element.contains(this.element.ownerDocument.activeElement)
    const shown = this.#shown
    this.element.hidden = true
    this.#shown = undefined
    shown?.hide?.()
    this.#memory.write(null)
    this.#events.onChange(false)
    if (held) this.#focusBack()
  }

  /** The key of the drawer: into it, opening it first if need be; from inside back to the sheet, leaving it open. */
  enterOrLeave(): void {
    if (this.element.contains(this.element.ownerDocument.activeElement)) this.#focusBack()
    else this.open()
  }

  get isOpen(): boolean {
    return !this.element.hidden
  }

  update(): void {
    this.#shown?.update()
  }

  #show(name: string): void {
    const view = this.#view(name)
    if (view === undefined || view === this.#shown) return
    this.#shown?.hide?.()
    const opened = this.element.hidden
    this.element.hidden = false
    for (const { name: each } of this.#views) {
      const chosen = each === name
      const tab = this.#tabs.get(each)
      tab?.setAttribute('aria-selected', String(chosen))
      if (tab !== undefined) tab.tabIndex = chosen ? 0 : -1
      this.#panels.get(each)?.toggleAttribute('hidden', !chosen)
    }
    this.#shown = view
    this.#last = name
    this.#memory.write(name)
    if (opened) this.#events.onChange(true)
    view.show()
  }

  #view(name: string): DrawerView | undefined {
    return this.#views.find((view) => view.name === name)
  }

  #focusBack(): void {
    const before = this.#before
    this.#before = undefined
    if (before?.isConnected === true && before !== before.ownerDocument.body) before.focus({ preventScroll: true })
    else this.#events.focusBack()
  }

  #key(event: KeyboardEvent): void {
    if (event.isComposing || event.defaultPrevented || commandOf(event, ['drawer']) !== 'close drawer') return
    event.preventDefault()
    event.stopPropagation()
    this.close()
  }

  #makeTabs(document: Document): HTMLElement {
    const row = document.createElement('div')
    row.className = 'drawer-head'
    const tabs = document.createElement('div')
    tabs.className = 'drawer-tabs'
    tabs.setAttribute('role', 'tablist')
    tabs.setAttribute('aria-label', 'Views of the drawer')
    for (const { name, title } of this.#views) {
      const tab = document.createElement('button')
      tab.type = 'button'
      tab.id = `drawer-tab-${name}`
      tab.textContent = title
      tab.setAttribute('role', 'tab')
      tab.setAttribute('aria-controls', `drawer-${name}`)
      tab.setAttribute('aria-selected', 'false')
      tab.tabIndex = -1
      tab.addEventListener('click', () => this.#show(name))
      this.#tabs.set(name, tab)
      tabs.append(tab)
    }
    tabs.addEventListener('keydown', (event) => this.#moveAmongTabs(event))
    const close = document.createElement('button')
    close.type = 'button'
    close.className = 'drawer-close'
    close.textContent = 'Close'
    close.setAttribute('aria-keyshortcuts', 'Escape')
    close.addEventListener('click', () => this.close())
    row.append(tabs, close)
    return row
  }

  #makePanel(document: Document, { name, element }: DrawerView): HTMLElement {
    const panel = document.createElement('div')
    panel.id = `drawer-${name}`
    panel.className = 'drawer-panel'
    panel.setAttribute('role', 'tabpanel')
    panel.setAttribute('aria-labelledby', `drawer-tab-${name}`)
    // Scrolled by keys also where a view holds nothing that takes the focus.
    panel.tabIndex = 0
    panel.hidden = true
    panel.append(element)
    this.#panels.set(name, panel)
    return panel
  }

  /** The pattern of tabs: arrows, Home and End go from one to the next and show it. */
  #moveAmongTabs(event: KeyboardEvent): void {
    const names = this.#views.map((view) => view.name)
    const at = names.indexOf(this.#shown?.name ?? '')
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: names.length - 1 }[event.key]
    const name = to === undefined ? undefined : names[(to + names.length) % names.length]
    if (name === undefined || event.ctrlKey || event.altKey || event.metaKey) return
    event.preventDefault()
    this.#show(name)
    this.#tabs.get(name)?.focus()
  }
}
