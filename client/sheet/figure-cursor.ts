/** The cursor in one figure: rings and a line on the drawing, the values beside them, the same words aloud. Never printed. */
import { commandOf, type Figure } from '../../shared/contracts/index.js'
import {
  type FigureReading,
  readFigure,
  type Spot,
  type Step,
  spotAt,
  stepFor,
  stepSpot,
  stepWords,
} from '../../shared/rendering/figure/reading-index.js'

const svgNamespace = 'http://www.w3.org/2000/svg'
/** Values stand beside the cursor, on the side with more room, this far from it [px]. */
const besides = 14

export class FigureCursor {
  readonly #paper: HTMLElement
  readonly #say: (sentence: string) => void
  readonly #reading: FigureReading
  readonly #values: HTMLElement
  readonly #overlay: SVGElement
  #step: Step | undefined
  #invited = false
  #frame = 0

  constructor(paper: HTMLElement, figure: Figure, say: (sentence: string) => void) {
    const drawing = paper.querySelector('svg')
    if (drawing === null) throw new Error('a figure without a drawing has no values to read')
    this.#paper = paper
    this.#say = say
    this.#reading = readFigure(figure, drawing.viewBox.baseVal.width)
    this.#overlay = document.createElementNS(svgNamespace, 'g')
    this.#overlay.setAttribute('class', 'figure-cursor')
    drawing.append(this.#overlay)
    this.#values = document.createElement('div')
    this.#values.className = 'figure-reading'
    this.#values.setAttribute('aria-hidden', 'true')
    this.#values.hidden = true
    paper.append(this.#values)
    // Its own keys are told to programs that read pages aloud, which else keep the arrow keys for themselves.
    paper.setAttribute('role', 'application')
    paper.setAttribute('aria-label', 'Drawing; the arrow keys read its values')
    paper.addEventListener('pointermove', (event) => this.point(event))
    paper.addEventListener('pointerleave', (event) => {
      if (event.pointerType !== 'touch') this.#clear()
    })
    paper.addEventListener('keydown', (event) => this.#key(event))
    paper.addEventListener('focusout', () => this.#clear())
  }

  /** Says once how the figure is read. */
  invite(): void {
    if (this.#invited || document.activeElement !== this.#paper || !this.#paper.matches(':focus-visible')) return
    this.#invited = true
    this.#say('Arrow keys read the values: left and right along a series, up and down to the next; Escape leaves.')
  }

  /** Shows what stands nearest to a pointer or finger, once per frame. */
  point({ clientX, clientY }: PointerEvent): void {
    cancelAnimationFrame(this.#frame)
    this.#frame = requestAnimationFrame(() => {
      const place = this.#placeOf(clientX, clientY)
      const spot = place === null ? null : spotAt(this.#reading, place.x, place.y)
      if (spot === null) this.#clear()
      else this.#show(spot)
    })
  }

  #key(event: KeyboardEvent): void {
    if (event.target !== this.#paper) return
    const command = commandOf(event, ['figure'])
    if (command === 'leave values' && !this.#values.hidden) {
      take(event)
      this.#clear()
      this.#say('Left the values.')
      return
    }
    const step = stepFor(this.#reading, this.#step, command)
    if (step === undefined) return
    take(event)
    this.#step = step
    const spot = stepSpot(this.#reading, step)
    if (spot !== null) this.#show(spot)
    this.#say(`${stepWords(this.#reading, step)}.`)
  }

  /** Pixels of the drawing, which shrinks with the page. */
  #placeOf(clientX: number, clientY: number): { x: number; y: number } | null {
    const box = this.#overlay.ownerSVGElement?.getBoundingClientRect()
    if (box === undefined || box.width === 0) return null
    const scale = this.#reading.width / box.width
    return { x: (clientX - box.left) * scale, y: (clientY - box.top) * scale }
  }

  #show(spot: Spot): void {
    this.#draw(spot)
    const lines = [...(spot.heading === undefined ? [] : [spot.heading]), ...spot.lines]
    this.#values.replaceChildren(
      ...lines.map((text, index) => {
        const line = document.createElement(index === 0 && spot.heading !== undefined ? 'strong' : 'span')
        line.textContent = text
        return line
      }),
    )
    this.#values.hidden = false
    this.#placeValues(spot)
  }

  #draw({ places, upright }: Spot): void {
    const { frame } = this.#reading
    const parts: SVGElement[] = []
    const add = (tag: string, attributes: Readonly<Record<string, number>>) => {
      const made = document.createElementNS(svgNamespace, tag)
      for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value.toFixed(1))
      parts.push(made)
    }
    if (upright !== undefined) add('line', { x1: upright, x2: upright, y1: frame.top, y2: frame.height - frame.bottom })
    for (const { x, y } of places) add('circle', { cx: x, cy: y, r: 5 })
    this.#overlay.replaceChildren(...parts)
  }

  #placeValues({ places, upright }: Spot): void {
    const first = places[0]
    const svg = this.#overlay.ownerSVGElement
    if (first === undefined || svg === null) return
    const scale = svg.getBoundingClientRect().width / this.#reading.width
    const x = (upright ?? first.x) * scale
    const room = this.#paper.clientWidth
    const right = x < room / 2
    const { style } = this.#values
    style.left = right ? `${x + besides}px` : 'auto'
    style.right = right ? 'auto' : `${room - x + besides}px`
    style.top = `${Math.max(0, Math.min(first.y * scale - 20, svg.clientHeight - this.#values.offsetHeight))}px`
  }

  #clear(): void {
    cancelAnimationFrame(this.#frame)
    this.#step = undefined
    this.#values.hidden = true
    this.#overlay.replaceChildren()
  }
}

function take(event: KeyboardEvent): void {
  event.preventDefault()
  event.stopPropagation()
}
