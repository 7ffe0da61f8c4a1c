/** Spread of a number: how sure it is, what its variance comes from, what bare ranges do, what failed. */
import {
  type AskedSubject,
  askedSubject,
  convergenceSentence,
  element,
  renderConvergence,
  renderEnvelope,
  renderFailures,
  renderFigure,
  renderNoDistributions,
  renderPercentiles,
  renderProbabilities,
  renderShares,
  shareSentence,
  sheetContext,
  spreadBasis,
  spreadCurve,
  spreadSentence,
} from '../../shared/rendering/page.js'
import { loadLateParts } from '../sheet/browser-drawing.js'
import { offerDownloads } from '../sheet/figure-downloads.js'
import { assumptionsOf } from './edition.js'
import { section } from './section.js'
import { SpreadControls } from './spread-controls.js'
import { type Part, type SpreadSources, SpreadWork } from './spread-work.js'

/** [px]; the drawer is about as wide, and the drawing shrinks with it. */
const figureWidth = 360

export class SpreadPart {
  readonly element: HTMLElement
  readonly #sources: SpreadSources
  readonly #work: SpreadWork
  readonly #controls: SpreadControls
  readonly #notice = element(document, 'p', { class: 'asked-notice', role: 'status' })
  readonly #empty = section('spread-none')
  readonly #headline = section('spread-headline')
  readonly #requirements = section('spread-probabilities', 'Requirements')
  readonly #shareButton = this.#button(() => this.#work.shareOut())
  readonly #shares = section('spread-of-variance', 'What the variance comes from', this.#shareButton)
  readonly #rangeButton = this.#button(() => this.#work.varyRanges())
  readonly #ranges = section('spread-ranges', 'Ranges without a distribution', this.#rangeButton)
  readonly #failures = section('spread-failed', 'Samples that did not compute')
  readonly #convergence = section('spread-settling', 'Enough samples?')
  #target: string | undefined
  /** What ran when the state was last drawn. */
  #ran: Part | undefined

  constructor(sources: SpreadSources) {
    this.#sources = sources
    this.#work = new SpreadWork(sources, (part) => this.#draw(part))
    this.#controls = new SpreadControls({
      onSample: () => this.#sample(),
      onStop: () => this.#work.stop(),
    })
    this.element = element(
      document,
      'div',
      { class: 'asked spread' },
      this.#controls.element,
      this.#notice,
      [
        this.#empty,
        this.#headline,
        this.#requirements,
        this.#shares,
        this.#ranges,
        this.#failures,
        this.#convergence,
      ].map(({ whole }) => whole),
    )
    this.#failures.body.addEventListener('click', (event) => this.#tryExample(event))
    loadLateParts().then(
      () => this.#draw('samples'),
      () => {},
    )
  }

  /** Asks for a number: what is known of it is shown, and it is sampled if nothing is. */
  show(target: string): void {
    if (target === this.#target && this.#work.answers !== undefined) {
      this.update()
      return
    }
    this.#target = target
    if (!this.#work.recall(target)) this.#sample()
    this.#drawAll()
  }

  /** The sheet changed. */
  update(): void {
    this.#drawState()
  }

  /** Another number or view is shown: nothing runs on for nobody. */
  leave(): void {
    this.#work.stop()
  }

  #sample(): void {
    if (this.#target !== undefined) void this.#work.sample(this.#target, this.#controls.options)
  }

  #drawAll(): void {
    for (const part of ['state', 'samples'] as const) this.#draw(part)
  }

  #draw(part: Part | 'state'): void {
    const subject = this.#subject()
    if (part === 'state' || subject === undefined) {
      this.#drawState()
      return
    }
    if (part === 'samples') this.#drawSamples(subject)
    if (part === 'shares') this.#drawShares()
    if (part === 'ranges') {
      this.#drawRanges(subject)
      this.#drawCurve(subject)
    }
  }

  #subject(): AskedSubject | undefined {
    return this.#target === undefined ? undefined : askedSubject(this.#sources.view(), this.#target)
  }

  #drawState(): void {
    const { running, answers, outdated } = this.#work
    this.#controls.showRunning(running)
    this.#controls.offer(this.#hasDistributions())
    for (const button of [this.#shareButton, this.#rangeButton])
      button.setAttribute('aria-disabled', String(running !== undefined))
    const subject = this.#subject()
    const words =
      subject === undefined
        ? `"${this.#target ?? ''}" is no number of this sheet any more.`
        : (answers?.trouble ?? (outdated ? 'The notebook has changed since; this is the spread of what it was.' : ''))
    if (this.#notice.textContent !== words) this.#notice.textContent = words
    if (this.#ran !== undefined && running === undefined && subject !== undefined) this.#sayFound(this.#ran, subject)
    this.#ran = running?.part
  }

  /** Aloud, once something has run to its end. */
  #sayFound(part: Part, subject: AskedSubject): void {
    const { spread, shares } = this.#work.answers ?? {}
    const largest = shares?.shares[0]
    if (part === 'samples' && spread !== undefined) this.#sources.say(spreadSentence(subject, spread))
    if (part === 'shares' && largest !== undefined) this.#sources.say(shareSentence(largest))
    if (part === 'ranges') this.#sources.say('The ranges were varied; what they do is shown under their heading.')
  }

  #hasDistributions(): boolean {
    return assumptionsOf(this.#sources.view()).some(({ distribution }) => distribution !== undefined)
  }

  #drawSamples(subject: AskedSubject): void {
    const spread = this.#work.answers?.spread
    const sure = spread !== undefined && spread.sampled.length > 0
    this.#empty.fill(sure || spread === undefined ? null : renderNoDistributions(document, spread.intervals.length))
    this.#drawCurve(subject)
    this.#requirements.fill(sure ? renderProbabilities(document, subject, spread) : null)
    this.#failures.fill(
      spread === undefined ? null : renderFailures(document, spread, sheetContext(this.#sources.view())),
    )
    if (this.#sources.tryPoint === undefined)
      for (const button of this.#failures.body.querySelectorAll('[data-example]')) button.remove()
    this.#convergence.fill(
      sure ? element(document, 'p', {}, convergenceSentence(spread)) : null,
      sure ? renderConvergence(document, subject, spread) : null,
    )
    this.#drawShares()
    this.#drawRanges(subject)
  }

  #drawCurve(subject: AskedSubject): void {
    const { spread, envelope } = this.#work.answers ?? {}
    if (spread === undefined || spread.sampled.length === 0) {
      this.#headline.fill(null)
      return
    }
    const figure = spreadCurve(subject, spread, envelope)
    const drawn = figure === undefined ? null : renderFigure(document, figure, { width: figureWidth })
    this.#headline.fill(
      element(document, 'p', { class: 'spread-sentence' }, spreadSentence(subject, spread)),
      drawn,
      spread.summary === undefined ? null : renderPercentiles(document, subject, spread.summary),
      element(document, 'p', { class: 'spread-note' }, spreadBasis(spread)),
    )
    if (figure !== undefined && drawn !== null)
      offerDownloads(this.#headline.body, [figure], (sentence) => this.#sources.say(sentence))
  }

  #drawShares(): void {
    const { spread, shares } = this.#work.answers ?? {}
    if (spread === undefined || spread.sampled.length === 0) {
      this.#shares.fill(null)
      return
    }
    this.#shares.fill(
      shares === undefined
        ? element(
            document,
            'p',
            {},
            'Which of the uncertain assumptions the spread comes from: the ones worth knowing better.',
          )
        : renderShares(document, shares),
    )
    this.#shareButton.textContent = shares === undefined ? 'Share out the variance' : 'Share it out again'
  }

  #drawRanges(subject: AskedSubject): void {
    const { spread, envelope } = this.#work.answers ?? {}
    if (spread === undefined || spread.intervals.length === 0) {
      this.#ranges.fill(null)
      return
    }
    this.#ranges.fill(
      envelope === undefined
        ? element(
            document,
            'p',
            {},
            `A range says how far a value may lie, not how likely any of it is, so ${heldWords(spread.intervals.length)} above. Varying them shows between which limits the answer lies.`,
          )
        : renderEnvelope(document, subject, envelope, sheetContext(this.#sources.view())),
    )
    this.#rangeButton.textContent = envelope === undefined ? 'Vary the ranges' : 'Vary them again'
  }

  /** Pressed while something runs it does nothing, and says so. */
  #button(onPress: () => Promise<void>): HTMLButtonElement {
    const button = document.createElement('button')
    button.type = 'button'
    button.className = 'button'
    button.addEventListener('click', () => {
      if (this.#work.running === undefined) void onPress()
    })
    return button
  }

  #tryExample(event: Event): void {
    const place = event.target instanceof HTMLElement ? event.target.dataset.example : undefined
    const example = place === undefined ? undefined : this.#work.answers?.spread?.failures[Number(place)]?.example
    if (example !== undefined) this.#sources.tryPoint?.(example)
  }
}

function heldWords(count: number): string {
  return count === 1
    ? 'the one assumption that has only a range is held at its value'
    : `the ${count} assumptions that have only a range are held at their values`
}
