/** The page of methods with script: the list narrows while words are typed, and the address carries them. */
import { wordsFit } from '../../shared/rendering/method/find-methods.js'

export function improveMethods(document: Document, window: Window): void {
  const form = document.querySelector<HTMLFormElement>('.method-search')
  const field = form?.querySelector('input')
  const count = form?.querySelector('.method-count')
  if (form === null || field === null || field === undefined) return
  const methods = [...document.querySelectorAll<HTMLDetailsElement>('.method')]
  const show = () => {
    const shown = narrow(document, methods, field.value.trim())
    if (count !== null && count !== undefined) count.textContent = countWords(shown, methods.length)
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    openOnly(methods)
  })
  field.addEventListener('input', () => {
    show()
    window.history.replaceState(null, '', addressFor(window.location.href, field.value.trim()))
  })
  const follow = () => openTarget(document, window.location.hash.slice(1))
  window.addEventListener('hashchange', follow)
  document.addEventListener('click', (event) => {
    const link = event.target instanceof Element ? event.target.closest('a') : null
    if (link?.hash === window.location.hash && link.pathname === window.location.pathname) follow()
  })
  follow()
}

function narrow(document: Document, methods: readonly HTMLDetailsElement[], sought: string): number {
  let shown = 0
  for (const method of methods) {
    method.hidden = !wordsFit(method.dataset.find ?? '', sought)
    if (!method.hidden) shown += 1
  }
  for (const section of document.querySelectorAll<HTMLElement>('.methods > section')) {
    section.hidden = section.querySelector('.method:not([hidden])') === null
    const entry = document.querySelector(`.contents a[href="#${section.id}"]`)?.closest('li')
    if (entry !== null && entry !== undefined) entry.hidden = section.hidden
  }
  return shown
}

/** Return opens the one method that is left. */
function openOnly(methods: readonly HTMLDetailsElement[]): void {
  const left = methods.filter((method) => !method.hidden)
  const [only] = left
  if (left.length === 1 && only !== undefined) only.open = true
}

function openTarget(document: Document, fragment: string): void {
  const target = document.getElementById(decode(fragment))
  const method = target?.closest<HTMLDetailsElement>('.method')
  if (method === null || method === undefined) return
  method.hidden = false
  method.open = true
  method.scrollIntoView({ block: 'start' })
  method.querySelector('summary')?.focus({ preventScroll: true })
}

function decode(fragment: string): string {
  try {
    return decodeURIComponent(fragment)
  } catch {
    return fragment
  }
}

export function addressFor(address: string, sought: string): string {
  const url = new URL(address)
  if (sought === '') url.searchParams.delete('find')
  else url.searchParams.set('find', sought)
  url.hash = ''
  return `${url.pathname}${url.search}`
}

function countWords(found: number, all: number): string {
  if (found === 0) return 'No method has all of these words; try fewer, or a quantity such as "disk loading".'
  return found === all ? `${all} methods.` : `${found} of ${all} methods.`
}
