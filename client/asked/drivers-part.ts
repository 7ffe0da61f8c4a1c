/** Drivers of a number: what moves it, as bars that grow while the assumptions are varied one by one. */
import type { Drivers } from '../../shared/contracts/index.js'
import {
  type AskedSubject,
  askedCount,
  askedSubject,
  assumptionNames,
  driversBasis,
  driversCsv,
  driversFigure,
  driversSentence,
  element,
  renderDrivers,
  renderLeft,
  renderNoAssumptions,
  renderWithout,
  type SheetView,
  sheetContext,
} from '../../shared/rendering/page.js'
import { offerDownloads } from '../sheet/figure-downloads.js'
import type { AskedPart, Asking } from './asking.js'
import { DriversWork } from './drivers-work.js'
import { RunningLine } from './running-line.js'
import { section } from './section.js'

export class DriversPart implements AskedPart {
  readonly element: HTMLElement
  readonly #sources: Asking
  readonly #work: DriversWork
  readonly #running = new RunningLine(() => this.#work.stop())
  readonly #again = element(document, 'button', { type: 'button', class: 'button' }, 'Vary again')
  readonly #notice = element(document, 'p', { class: 'asked-notice', role: 'status' })
  readonly #headline = section('drivers-headline')
  readonly #bars = section('drivers-bars')
  readonly #rest = section('drivers-rest')
  #target: string | undefined
  /** In which the answer was last drawn; they belong to the reader, not to the answer. */
  #units: SheetView['units']
  /** When the state was last drawn something ran. */
  #ran = false

  constructor(sources: Asking) {
    this.#sources = sources
    this.#work = new DriversWork(sources, (what) => (what === 'found' ? this.#drawDrivers() : this.#drawState()))
    this.#again.addEventListener('click', () => this.#vary())
    this.element = element(
      document,
      'div',
      { class: 'asked drivers' },
      this.#notice,
      this.#running.element,
      [this.#headline, this.#bars, this.#rest].map(({ whole }) => whole),
      element(document, 'div', {}, this.#again),
    )
  }

  /** Asks for a number: what is known of it is shown, and it is varied if that is not all. */
  show(target: string): void {
    this.#target = target
    if (this.#work.running !== undefined && this.#work.answer?.target === target) return
    if (!this.#work.recall(target)) this.#vary()
    this.#drawDrivers()
  }

  /** The sheet changed. */
  update(): void {
    if (this.#sources.view().units !== this.#units) this.#drawDrivers()
    this.#drawState()
  }

  /** Another number or view is shown: nothing runs on for nobody. */
  leave(): void {
    this.#work.stop()
  }

  /** Pressed while it runs it does nothing. */
  #vary(): void {
    if (this.#target !== undefined && this.#work.running === undefined) void this.#work.vary(this.#target)
  }

  #subject(): AskedSubject | undefined {
    return this.#target === undefined ? undefined : askedSubject(this.#sources.view(), this.#target)
  }

  #drawState(): void {
    const { running, answer, outdated } = this.#work
    this.#running.show(running, 'Varying')
    this.#again.setAttribute('aria-disabled', String(running !== undefined))
    const subject = this.#subject()
    const words =
      subject === undefined
        ? `"${this.#target ?? ''}" is no number of this sheet any more.`
        : (answer?.trouble ?? (outdated ? 'The notebook has changed since; these are the drivers of what it was.' : ''))
    if (this.#notice.textContent !== words) this.#notice.textContent = words
    const ended = this.#ran && running === undefined
    this.#ran = running !== undefined
    if (!ended || subject === undefined) return
    // Once more, as the last word: what a stop left out is named only when nothing runs.
    this.#drawDrivers()
    if (answer?.found !== undefined && answer.trouble === undefined)
      this.#sources.say(this.#sentence(subject, answer.found))
  }

  #sentence(subject: AskedSubject, drivers: Drivers): string {
    return driversSentence(subject, drivers, assumptionNames(this.#sources.view()))
  }

  #drawDrivers(): void {
    const { answer, running } = this.#work
    const subject = this.#subject()
    const drivers = answer?.found
    if (subject === undefined || answer === undefined || drivers === undefined) {
      for (const part of [this.#headline, this.#bars, this.#rest]) part.fill(null)
      return
    }
    const view = this.#sources.view()
    this.#units = view.units
    const names = assumptionNames(view)
    if (askedCount(drivers) === 0) {
      this.#headline.fill(renderNoAssumptions(document, subject.label))
      for (const part of [this.#bars, this.#rest]) part.fill(null)
      return
    }
    const over = running === undefined
    this.#headline.fill(
      element(document, 'p', { class: 'drivers-sentence' }, this.#sentence(subject, drivers)),
      over ? renderLeft(document, drivers, names) : null,
    )
    const table = renderDrivers(document, subject, drivers, names, sheetContext(view))
    this.#bars.fill(table === null ? null : element(document, 'figure', { class: 'drivers-figure' }, table))
    const figure = over ? driversFigure(subject, drivers, names) : undefined
    if (figure !== undefined)
      offerDownloads(
        this.#bars.body,
        [figure],
        (sentence) => this.#sources.say(sentence),
        (_, mark) => driversCsv(subject, drivers, names, mark),
      )
    this.#rest.fill(
      over ? renderWithout(document, drivers, names) : null,
      over ? element(document, 'p', { class: 'drivers-basis' }, driversBasis(subject, drivers, answer.trials)) : null,
    )
  }
}
