/** Makes the list page answer in place: refusals beside the form that caused them, renaming without another page. */
import { limits } from '../../shared/contracts/index.js'
import {
  binNotebook,
  copyNotebook,
  createNotebook,
  discardNotebook,
  importNotebook,
  Refusal,
  renameNotebook,
  restoreNotebook,
} from '../live/requests.js'
import { readImport } from './read-import.js'

const begin = (form: HTMLFormElement): Promise<unknown> => {
  const title = form.querySelector<HTMLInputElement>('input[name=title]')?.value ?? ''
  return createNotebook(title).then(({ id }) => location.assign(`/notebooks/${id}`))
}

const importFile = async (form: HTMLFormElement): Promise<unknown> => {
  const file = form.querySelector<HTMLInputElement>('input[type=file]')?.files?.[0]
  if (file === undefined) throw new Refusal('NO_FILE', 'Choose a notebook file (.json) first.')
  const { id } = await importNotebook(await readImport(file))
  location.assign(`/notebooks/${id}`)
  return undefined
}

/** What a form does, by the end of its address. The server's own forms do the same with a page in between. */
function actOf(form: HTMLFormElement): ((form: HTMLFormElement) => Promise<unknown>) | undefined {
  const path = new URL(form.action).pathname
  if (path === '/notebooks') return begin
  if (path === '/notebooks/import') return importFile
  const [, id = '', act = ''] = /^\/notebooks\/([^/]+)\/(copy|bin|restore|discard)$/.exec(path) ?? []
  const change = { copy: copyNotebook, bin: binNotebook, restore: restoreNotebook, discard: discardNotebook }[act]
  if (change === undefined) return undefined
  return async () => {
    await change(id)
    location.reload()
  }
}

export function improveList(document: Document): void {
  document.addEventListener('submit', (event) => {
    const form = event.target
    const act = form instanceof HTMLFormElement ? actOf(form) : undefined
    if (act === undefined || !(form instanceof HTMLFormElement)) return
    event.preventDefault()
    void answerInPlace(form, () => act(form))
  })
  for (const row of document.querySelectorAll<HTMLElement>('.notebooks > li')) offerRenaming(row)
}

async function answerInPlace(form: HTMLFormElement, act: () => Promise<unknown>): Promise<void> {
  form.querySelector('.refusal')?.remove()
  const buttons = [...form.querySelectorAll('button')]
  for (const button of buttons) button.disabled = true
  try {
    await act()
  } catch (error) {
    form.append(refusalNote(form.ownerDocument, error))
  } finally {
    for (const button of buttons) button.disabled = false
  }
}

function refusalNote(document: Document, error: unknown): HTMLElement {
  const note = document.createElement('p')
  note.className = 'refusal'
  note.setAttribute('role', 'alert')
  note.textContent = error instanceof Error ? error.message : String(error)
  return note
}

/** A button beside the others; the title becomes a field, Enter renames, Escape leaves it as it was. */
function offerRenaming(row: HTMLElement): void {
  const document = row.ownerDocument
  const link = row.querySelector<HTMLAnchorElement>('a.title')
  const id = /\/notebooks\/([^/]+)$/.exec(link?.pathname ?? '')?.[1]
  if (link === null || id === undefined) return
  const button = document.createElement('button')
  button.type = 'button'
  button.textContent = 'Rename'
  button.addEventListener('click', () => {
    const form = renameForm(document, link.textContent ?? '')
    const field = form.querySelector('input')
    const leave = () => {
      form.replaceWith(link)
      button.focus()
    }
    form.addEventListener('keydown', (event) => {
      if (event.key === 'Escape') leave()
    })
    form.addEventListener('submit', (event) => {
      event.preventDefault()
      void answerInPlace(form, async () => {
        const { title } = await renameNotebook(id, field?.value ?? '')
        link.textContent = title
        leave()
      })
    })
    link.replaceWith(form)
    field?.select()
  })
  row.querySelector('.actions')?.prepend(button)
}

function renameForm(document: Document, title: string): HTMLFormElement {
  const form = document.createElement('form')
  form.className = 'rename'
  const field = document.createElement('input')
  field.value = title
  field.required = true
  field.maxLength = limits.titleCharacters
  field.setAttribute('aria-label', 'New title')
  const button = document.createElement('button')
  button.textContent = 'Rename'
  form.append(field, button)
  return form
}
