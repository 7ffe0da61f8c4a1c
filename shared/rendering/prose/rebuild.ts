/**
 * The one safe path from HTML text to nodes: it is parsed where nothing runs or loads (the content of a template), then
 * walked, and every node that readers get is made anew from the allow-list. Nothing parsed is ever moved across.
 */
import { element, mathNamespace } from '../dom.js'
import {
  allowedElements,
  allowedMath,
  allowedMathAttributes,
  allowedMathValue,
  allowedValue,
  droppedElements,
} from './allow-list.js'

/** Nesting beyond this keeps its text only, so that hostile prose cannot exhaust the stack. */
const deepest = 100
const elementNode = 1
const textNode = 3

export function rebuildHtml(document: Document, html: string): DocumentFragment {
  const template = document.createElement('template')
  template.innerHTML = html
  const rebuilt = document.createDocumentFragment()
  rebuildChildren(document, template.content, rebuilt, 0)
  return rebuilt
}

function rebuildChildren(document: Document, from: Node, into: Node, depth: number): void {
  for (const child of Array.from(from.childNodes)) {
    if (child.nodeType === textNode) into.appendChild(document.createTextNode(child.textContent ?? ''))
    else if (child.nodeType === elementNode) rebuildElement(document, child as Element, into, depth)
  }
}

function rebuildElement(document: Document, from: Element, into: Node, depth: number): void {
  const name = from.localName.toLowerCase()
  if (droppedElements.has(name)) return
  if (name === 'img') {
    into.appendChild(imageRefused(document, from))
    return
  }
  if (depth > deepest) {
    into.appendChild(document.createTextNode(from.textContent ?? ''))
    return
  }
  const made = Object.hasOwn(allowedElements, name)
    ? allowedCopy(document, from, name)
    : allowedMath.has(name) && (name === 'math' || isMath(into))
      ? mathCopy(document, from, name)
      : null
  if (made === null) rebuildChildren(document, from, into, depth + 1)
  else {
    into.appendChild(made)
    rebuildChildren(document, from, made, depth + 1)
  }
}

function isMath(node: Node): boolean {
  return node.nodeType === elementNode && allowedMath.has((node as Element).localName)
}

/** Headings of a cell stand under the sheet's own title, so each goes down one level. */
function allowedCopy(document: Document, from: Element, name: string): Element {
  const lowered = name.replace(/^h([1-5])$/, (_, level: string) => `h${Number(level) + 1}`)
  const made = element(document, lowered)
  for (const attribute of allowedElements[name] ?? []) {
    const value = from.getAttribute(attribute)
    const kept = value === null ? null : allowedValue(attribute, value)
    if (kept !== null) made.setAttribute(attribute, kept)
  }
  if (name === 'a') made.setAttribute('rel', 'noopener noreferrer')
  return made
}

function mathCopy(document: Document, from: Element, name: string): Element {
  const made = document.createElementNS(mathNamespace, name)
  for (const attribute of Array.from(from.attributes)) {
    const kept = allowedMathAttributes.has(attribute.name) ? allowedMathValue(attribute.name, attribute.value) : null
    if (kept !== null) made.setAttribute(attribute.name, kept)
  }
  return made
}

/** Pictures would be fetched from elsewhere; the reader is told that one was meant. */
function imageRefused(document: Document, image: Element): Element {
  const alternative = image.getAttribute('alt') ?? ''
  return element(document, 'em', {}, alternative === '' ? 'picture not shown' : `picture not shown: ${alternative}`)
}
