/** The editor in the sheet's own paper and ink: colours are read from the page, so light, dark and print have one source. */
import { editor } from '../monaco.js'

/** Defines the theme from the page's colours as they now are, and uses it; again when the person's light changes. */
export function dressInPaper(): void {
  define()
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', define)
}

function define(): void {
  const page = getComputedStyle(document.documentElement)
  const colour = (name: string, otherwise: string) => hexadecimal(page.getPropertyValue(name)) ?? otherwise
  const paper = colour('--paper', '#fcfbf6')
  const tint = colour('--paper-tint', '#f3f1e6')
  const note = colour('--paper-note', '#f6efe2')
  const ink = colour('--ink', '#1a2129')
  const soft = colour('--ink-soft', '#525a62')
  const accent = colour('--accent', '#0b5b66')
  const warning = colour('--warning', '#8f2d18')
  const rule = colour('--rule', '#b5b4a8')
  const dark = matchMedia('(prefers-color-scheme: dark)').matches
  const rules = [
    { token: '', foreground: bare(ink) },
    { token: 'comment', foreground: bare(colour('--code-comment', '#5c6357')), fontStyle: 'italic' },
    { token: 'keyword', foreground: bare(colour('--code-keyword', '#0b5b66')), fontStyle: 'bold' },
    { token: 'string', foreground: bare(colour('--code-text', '#7a4a12')) },
    { token: 'number', foreground: bare(colour('--code-number', '#484c8a')) },
  ]
  editor.defineTheme('sheet', {
    base: dark ? 'vs-dark' : 'vs',
    inherit: false,
    rules,
    colors: {
      focusBorder: accent,
      foreground: ink,
      'editor.background': tint,
      'editor.foreground': ink,
      'editorLineNumber.foreground': soft,
      'editorLineNumber.activeForeground': ink,
      'editorCursor.foreground': ink,
      'editor.selectionBackground': `${accent}33`,
      'editor.inactiveSelectionBackground': `${accent}1f`,
      'editor.wordHighlightBackground': '#00000000',
      'editorBracketMatch.background': `${accent}22`,
      'editorBracketMatch.border': '#00000000',
      'editorInlayHint.background': `${accent}1c`,
      'editorInlayHint.foreground': accent,
      'editorError.foreground': warning,
      'editorWarning.foreground': colour('--ink-second', '#7a4a12'),
      'editorHoverWidget.background': paper,
      'editorHoverWidget.foreground': ink,
      'editorHoverWidget.border': rule,
      'editorHoverWidget.highlightForeground': accent,
      'editorHoverWidget.statusBarBackground': paper,
      'editorSuggestWidget.background': paper,
      'editorSuggestWidget.foreground': ink,
      'editorSuggestWidget.border': rule,
      'editorSuggestWidget.selectedBackground': note,
      'editorSuggestWidget.selectedForeground': ink,
      'editorSuggestWidget.highlightForeground': accent,
      'editorSuggestWidget.focusHighlightForeground': accent,
      'editorWidget.background': paper,
      'editorWidget.border': rule,
      'list.focusBackground': note,
      'list.hoverBackground': note,
      'widget.shadow': '#00000000',
      'scrollbarSlider.background': `${soft}55`,
      'scrollbarSlider.hoverBackground': `${soft}88`,
      'scrollbarSlider.activeBackground': `${soft}aa`,
      'textCodeBlock.background': tint,
      'textLink.foreground': accent,
      'textLink.activeForeground': accent,
    },
  })
  editor.setTheme('sheet')
}

/** Themes take only the six-digit form. */
function hexadecimal(text: string): string | undefined {
  const value = text.trim()
  if (/^#[0-9a-f]{6}$/i.test(value)) return value
  if (/^#[0-9a-f]{3}$/i.test(value)) return `#${[...value.slice(1)].map((digit) => digit + digit).join('')}`
  return undefined
}

const bare = (hex: string) => hex.slice(1)
