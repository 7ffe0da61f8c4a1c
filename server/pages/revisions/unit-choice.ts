/** The choice of units on a page that the server draws: links, so that it works without script. */
import { addressInUnits, type UnitSystem, unitSystems } from '../../../shared/rendering/index.js'
import { type Html, html } from '../html.js'

export function unitChoice(address: string, chosen: UnitSystem): Html {
  const links = unitSystems.map((system) =>
    system === chosen
      ? html` <strong>${system}</strong>`
      : html` <a href="${addressInUnits(address, system)}">${system}</a>`,
  )
  return html`<nav class="unit-choice" aria-label="Units">Units:${links}</nav>`
}
