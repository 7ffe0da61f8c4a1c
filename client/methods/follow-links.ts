/** Links to a method open it beside the sheet; with a key held, or from the drawer itself, they lead to the page of methods as links do. */
import { methodOfAddress } from '../../shared/contracts/method-address.js'

export function followMethodLinks(document: Document, open: (method: string) => void): void {
  document.addEventListener('click', (event) => {
    const link = event.target instanceof Element ? event.target.closest('a') : null
    const method = link === null ? undefined : methodOfAddress(link.href)
    if (method === undefined || link?.target === '_blank') return
    if (event.defaultPrevented || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey) return
    event.preventDefault()
    open(method)
  })
}
