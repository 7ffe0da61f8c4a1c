/** TeX of a rationale cell to MathML. TeX is never trusted: no links, classes or ids come out of it. */
import type { HtmlExtension } from 'micromark-util-types'
import temml from 'temml'

/** MathML text; a formula that cannot be read is given back as code with the reason, so that nothing is lost. */
export function texToMathml(tex: string, display: boolean): string {
  try {
    return temml.renderToString(tex, { displayMode: display, throwOnError: true, trust: false, maxExpand: 200 })
  } catch (failure) {
    const reason = failure instanceof Error ? failure.message : String(failure)
    return `<span class="formula-unread"><code>${escapeHtml(tex)}</code> (${escapeHtml(shortReason(reason))})</span>`
  }
}

/** Turns the tokens of micromark's mathematics extension into MathML. */
export function mathToHtml(): HtmlExtension {
  return {
    enter: {
      mathFlow() {
        this.lineEndingIfNeeded()
        this.tag('<div class="formula">')
      },
      mathFlowFenceMeta() {
        this.buffer()
      },
      mathText() {
        this.buffer()
      },
    },
    exit: {
      mathFlow() {
        const tex = this.getData('formulaOpen') === true ? this.resume() : ''
        this.tag(texToMathml(tex.replace(/(?:\r?\n|\r)$/, ''), true))
        this.tag('</div>')
        this.setData('formulaOpen')
        this.setData('slurpOneLineEnding')
      },
      mathFlowFence() {
        if (this.getData('formulaOpen') === true) return
        this.setData('formulaOpen', true)
        this.setData('slurpOneLineEnding', true)
        this.buffer()
      },
      mathFlowFenceMeta() {
        this.resume()
      },
      mathFlowValue(token) {
        this.raw(this.sliceSerialize(token))
      },
      /** Two signs mean a formula of its own also where they stand on the line of the text. */
      mathText(token) {
        const display = this.sliceSerialize(token).startsWith('$$')
        this.tag(texToMathml(this.resume(), display))
      },
      mathTextData(token) {
        this.raw(this.sliceSerialize(token))
      },
    },
  }
}

function shortReason(reason: string): string {
  const first = reason.replace(/^ParseError:\s*/, '').split('\n')[0] ?? ''
  return first.length > 160 ? `${first.slice(0, 160)}…` : first
}

function escapeHtml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}

declare module 'micromark-util-types' {
  interface CompileData {
    formulaOpen?: boolean | undefined
  }
}
