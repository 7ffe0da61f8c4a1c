/** Small builder of nodes, so that every part of the sheet is made by one safe path: elements, attributes, text. */

export type Child = Node | string | null | undefined | readonly Child[]
export type Attributes = Readonly<Record<string, string | number | boolean | null | undefined>>

export const svgNamespace = 'http://www.w3.org/2000/svg'
export const mathNamespace = 'http://www.w3.org/1998/Math/MathML'

/** An HTML element. Attributes that are null, undefined or false are left out; true is written as an empty value. */
export function element(
  document: Document,
  tag: string,
  attributes: Attributes = {},
  ...children: Child[]
): HTMLElement {
  const made = document.createElement(tag)
  setAttributes(made, attributes)
  appendChildren(made, children)
  return made
}

/** An SVG element. */
export function svgElement(
  document: Document,
  tag: string,
  attributes: Attributes = {},
  ...children: Child[]
): SVGElement {
  const made = document.createElementNS(svgNamespace, tag) as SVGElement
  setAttributes(made, attributes)
  appendChildren(made, children)
  return made
}

export function setAttributes(target: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue
    target.setAttribute(name, value === true ? '' : String(value))
  }
}

export function appendChildren(target: Node, children: readonly Child[]): void {
  for (const child of children) {
    if (child === null || child === undefined) continue
    if (typeof child === 'string') target.appendChild(ownerOf(target).createTextNode(child))
    else if (isList(child)) appendChildren(target, child)
    else target.appendChild(child)
  }
}

function isList(child: Node | readonly Child[]): child is readonly Child[] {
  return Array.isArray(child)
}

function ownerOf(target: Node): Document {
  if (target.ownerDocument === null) throw new TypeError('a node without a document cannot take text')
  return target.ownerDocument
}
