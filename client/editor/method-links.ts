/**
 * Links in what the editor says lead where links of the sheet do: the editor opens its own in another window, which would leave the
 * notebook for a method that the drawer shows beside it. The page of words and keys does open in another window.
 */
import { methodOfAddress } from '../../shared/contracts/method-address.js'
import type { Uri } from './monaco.js'

export const methodLinks = {
  open({ path, fragment }: Uri): boolean {
    const address = `${path}#${fragment}`
    if (path === '/words') {
      window.open(address, '_blank', 'noopener')
      return true
    }
    if (methodOfAddress(address) === undefined) return false
    const link = document.createElement('a')
    link.href = address
    link.hidden = true
    document.body.append(link)
    link.click()
    link.remove()
    return true
  },
}
