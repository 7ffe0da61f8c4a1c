/** Methods in the drawer: first those that this notebook uses, then whatever is sought; one at a time in full. */
import type { Method } from '../../shared/contracts/method.js'
import { methodAddress, methodsPath } from '../../shared/contracts/method-address.js'
import { element, findMethods, renderMethod, type SheetView } from '../../shared/rendering/page.js'
import type { DrawerView } from '../drawer/drawer.js'
import { beginFromMethod } from '../live/requests.js'
import { loadCatalogue } from './load-catalogue.js'
import { type MethodUse, methodUses } from './used-in.js'

export interface MethodsSources {
  view(): SheetView
}

/** A list longer than this asks for another word. */
const mostFound = 40

export class MethodsView implements DrawerView {
  readonly name = 'methods'
  readonly title = 'Methods'
  readonly element = element(document, 'div', { class: 'methods-view' })
  readonly #sources: MethodsSources
  readonly #load: () => Promise<readonly Method[]>
  readonly #field = element(document, 'input', {
    type: 'search',
    'aria-label': 'Find a method by name, quantity or source',
    placeholder: 'Name, quantity or source',
    autocomplete: 'off',
  }) as HTMLInputElement
  readonly #body = element(document, 'div', { class: 'methods-body' })
  #methods: readonly Method[] | undefined
  #trouble: string | undefined
  #chosen: string | undefined
  /** What is drawn: nothing is drawn anew while it stays the same, so that the focus and open folds stay. */
  #drawn = ''

  constructor(sources: MethodsSources, load: () => Promise<readonly Method[]> = loadCatalogue) {
    this.#sources = sources
    this.#load = load
    this.element.append(this.#field, this.#body)
    this.#field.addEventListener('input', () => {
      this.#chosen = undefined
      this.update()
    })
    this.element.addEventListener('submit', (event) => this.#try(event))
  }

  show(): void {
    this.update()
    if (this.#methods !== undefined) return
    this.#load().then(
      (methods) => {
        this.#methods = methods
        this.#trouble = undefined
        this.update()
      },
      (failure: unknown) => {
        this.#trouble = `The catalogue could not be loaded: ${String(failure)}. Show this view again to try once more.`
        this.update()
      },
    )
  }

  /** Shows one method in full. */
  choose(name: string | undefined): void {
    this.#chosen = name
    this.update()
    if (name !== undefined) this.#body.scrollIntoView({ block: 'nearest' })
  }

  update(): void {
    const uses = methodUses(this.#sources.view())
    const sought = this.#field.value.trim()
    const key = JSON.stringify([this.#chosen, sought, uses, this.#methods?.length, this.#trouble])
    if (key === this.#drawn) return
    this.#drawn = key
    this.#body.replaceChildren(...this.#draw(uses, sought))
  }

  #draw(uses: readonly MethodUse[], sought: string): Node[] {
    if (this.#trouble !== undefined) return [paragraph(this.#trouble, 'methods-trouble')]
    const methods = this.#methods
    if (methods === undefined) return [paragraph('Loading the catalogue …')]
    if (this.#chosen !== undefined) return this.#drawOne(this.#chosen, methods, uses)
    if (sought !== '') return this.#drawFound(findMethods(methods, sought), uses)
    return this.#drawUsed(uses, methods)
  }

  #drawUsed(uses: readonly MethodUse[], methods: readonly Method[]): Node[] {
    const known = uses.flatMap((use) => methods.filter(({ name }) => name === use.method))
    if (known.length === 0)
      return [
        paragraph(
          'A method is a function of the kernel that cells call: it has an equation, a source and a range in which it holds.',
        ),
        paragraph(
          'No cell of this notebook calls one yet. Look for a quantity above, such as "disk loading", or read the whole catalogue.',
        ),
        wholeCatalogue(),
      ]
    return [
      element(document, 'h2', {}, 'Used in this notebook'),
      this.#list(known, uses),
      paragraph('Look for others above by name, quantity or source.'),
      wholeCatalogue(),
    ]
  }

  #drawFound(found: readonly Method[], uses: readonly MethodUse[]): Node[] {
    if (found.length === 0)
      return [paragraph('No method has all of these words; try fewer, or a quantity such as "disk loading".')]
    const more = found.length - mostFound
    return [
      this.#list(found.slice(0, mostFound), uses),
      ...(more > 0 ? [paragraph(`${more} more; another word narrows the list.`)] : []),
    ]
  }

  #list(methods: readonly Method[], uses: readonly MethodUse[]): HTMLElement {
    return element(
      document,
      'ul',
      { class: 'methods-list' },
      methods.map((method) => {
        const choice = element(document, 'button', { type: 'button', class: 'link-button' }, method.name)
        choice.addEventListener('click', () => {
          this.choose(method.name)
          this.#body.querySelector('button')?.focus()
        })
        const summary = (method.forms[0]?.summary ?? '').replaceAll('`', '')
        return element(
          document,
          'li',
          {},
          choice,
          ' ',
          element(document, 'span', {}, summary),
          rowLinks(method.name, uses),
        )
      }),
    )
  }

  #drawOne(name: string, methods: readonly Method[], uses: readonly MethodUse[]): Node[] {
    const back = element(document, 'button', { type: 'button', class: 'link-button' }, 'Back to the list')
    back.addEventListener('click', () => {
      this.choose(undefined)
      this.#field.focus()
    })
    const method = methods.find((one) => one.name === name)
    if (method === undefined)
      return [back, paragraph(`The catalogue has no method "${name}"; look for it above by another word.`)]
    return [
      back,
      element(document, 'h2', { class: 'methods-name' }, name),
      rowLinks(name, uses) ?? paragraph('No row of this notebook uses it.'),
      renderMethod(document, method, { tryAt: '/methods/notebooks' }),
      element(
        document,
        'p',
        {},
        element(document, 'a', { href: methodAddress(name), target: '_blank' }, 'In the whole catalogue'),
      ),
    ]
  }

  /** The form of the page of methods, sent by script: the sheet's policy lets no form leave it. */
  #try(event: SubmitEvent): void {
    event.preventDefault()
    const form = event.target
    if (!(form instanceof HTMLFormElement)) return
    const fields = new FormData(form)
    beginFromMethod(String(fields.get('method')), Number(fields.get('form'))).then(
      ({ id }) => window.location.assign(`/notebooks/${id}`),
      (failure: unknown) => {
        const words = failure instanceof Error ? failure.message : String(failure)
        form.querySelector('.methods-trouble')?.remove()
        form.append(paragraph(words, 'methods-trouble'))
      },
    )
  }
}

function rowLinks(method: string, uses: readonly MethodUse[]): HTMLElement | null {
  const use = uses.find((one) => one.method === method)
  if (use === undefined) return null
  const links = use.rows.flatMap(({ cell, number }, index) => [
    index === 0 ? '' : ', ',
    element(document, 'a', { href: `#cell-${cell}` }, number),
  ])
  return element(document, 'p', { class: 'methods-rows' }, use.rows.length === 1 ? 'row ' : 'rows ', links)
}

function wholeCatalogue(): HTMLElement {
  return element(document, 'p', {}, element(document, 'a', { href: methodsPath }, 'Catalogue of all methods'))
}

function paragraph(text: string, name: string | null = null): HTMLElement {
  return element(document, 'p', { class: name, role: name === null ? null : 'alert' }, text)
}
