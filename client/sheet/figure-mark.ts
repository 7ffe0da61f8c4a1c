/** What a figure that is taken away says of where it comes from; without the server it says at least of which sheet it is. */
import { provenanceLine } from '../../shared/contracts/provenance.js'
import { readProvenance } from '../live/requests.js'

export async function figureMark(document: Document): Promise<string> {
  const sheet = document.querySelector<HTMLElement>('main.sheet')
  const id = sheet?.dataset.notebook ?? ''
  const line = await readProvenance(id).then(provenanceLine, () => {
    const title = sheet?.querySelector('.title')?.textContent ?? ''
    return `${title === '' ? 'Untitled' : title} · fingerprint not known: the server could not be asked`
  })
  return sheet?.querySelector('.assumption[data-trial]') === null
    ? line
    : `${line} · shows trial values, not the document`
}
