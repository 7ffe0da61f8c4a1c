/** The address of the page, for links to a trial. */
/** Where the page is, as far as a link to a trial is concerned. */
export interface TrialAddress {
  fragment(): string
  /** A reload must not try again what was discarded since. */
  forgetFragment(): void
  link(fragment: string): string
  /** Rejects where it is not permitted. */
  copy(text: string): Promise<void>
  onFragment(call: () => void): void
}

export function pageAddress(page: Window): TrialAddress {
  const { location, history, navigator } = page
  return {
    fragment: () => location.hash,
    forgetFragment: () => history.replaceState(history.state, '', `${location.pathname}${location.search}`),
    link: (fragment) => `${location.origin}${location.pathname}${location.search}${fragment}`,
    copy: async (text) => navigator.clipboard.writeText(text),
    onFragment: (call) => page.addEventListener('hashchange', call),
  }
}
