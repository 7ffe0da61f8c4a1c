/** What happens to the page as a whole: the network goes and comes, it is printed, another part of it is asked for, it is left. */

export interface PageEvents {
  onNetwork(there: boolean): void
  beforePrint(): void
  /** The address names another part of the same page, `register`: a link was followed, or an address pasted. */
  onFragment(name: string): void
  /** It is being left, perhaps for good; what is done here is the last. */
  onLeave(): void
  /** Whether leaving loses nothing; otherwise the browser asks first. */
  mayLeave(): boolean
}

export function watchPage(window: Window, events: PageEvents): void {
  window.addEventListener('online', () => events.onNetwork(true))
  window.addEventListener('offline', () => events.onNetwork(false))
  window.addEventListener('beforeprint', () => events.beforePrint())
  window.addEventListener('hashchange', () => events.onFragment(window.location.hash.slice(1)))
  window.addEventListener('pagehide', () => events.onLeave())
  window.addEventListener('beforeunload', (event) => {
    if (!events.mayLeave()) event.preventDefault()
  })
}
