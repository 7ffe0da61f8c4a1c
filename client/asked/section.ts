/** A part of the view under its heading, drawn anew without losing what is open in it or what has the focus. */
import { element } from '../../shared/rendering/page.js'

export interface Section {
  readonly whole: HTMLElement
  readonly body: HTMLElement
  /** Hidden where there is nothing to say. */
  fill(...children: readonly (HTMLElement | null)[]): void
}

/** What stands in `after` is kept when the rest is drawn anew: a button keeps the focus. */
export function section(name: string, title?: string, ...after: readonly HTMLElement[]): Section {
  const body = document.createElement('div')
  const heading = title === undefined ? null : element(document, 'h3', {}, title)
  const whole = element(document, 'section', { class: name }, heading, body, after)
  whole.hidden = true
  return {
    whole,
    body,
    fill(...children) {
      const open = [...body.querySelectorAll('details')].map((details) => details.open)
      body.replaceChildren(...children.filter((child) => child !== null))
      for (const [at, details] of body.querySelectorAll('details').entries()) details.open = open[at] ?? false
      whole.hidden = body.childElementCount === 0
    },
  }
}
