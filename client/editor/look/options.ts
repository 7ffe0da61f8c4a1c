/** How the editor looks and behaves: a sheet's lines of code, as the static text shows them, and nothing around. */
import type { editor as monacoEditor } from '../monaco.js'

type Options = monacoEditor.IStandaloneEditorConstructionOptions

/** Type and size follow the style sheet, so that a cell does not jump when it is opened. */
export function editorOptions(container: HTMLElement, label: string): Options {
  const style = getComputedStyle(container)
  const fontSize = Number.parseFloat(style.fontSize)
  return {
    ...manner,
    ariaLabel: label,
    theme: 'sheet',
    fontFamily: style.fontFamily,
    fontSize,
    lineHeight: Number.parseFloat(style.lineHeight),
    inlayHints: { enabled: 'on', fontFamily: style.fontFamily, fontSize: fontSize * 0.85, padding: true },
  }
}

/** Brackets are ink like the rest: colours stand for comments, texts, numbers and key words only. */
export const modelOptions: monacoEditor.ITextModelUpdateOptions = {
  tabSize: 2,
  indentSize: 2,
  insertSpaces: true,
  bracketColorizationOptions: { enabled: false, independentColorPoolPerBracketType: false },
}

export const scrollbar: monacoEditor.IEditorScrollbarOptions = {
  vertical: 'hidden',
  horizontalScrollbarSize: 8,
  alwaysConsumeMouseWheel: false,
  useShadows: false,
}

const manner: Options = {
  // A name typed to its end is not proposed over the new line that Enter means.
  acceptSuggestionOnEnter: 'smart',
  accessibilitySupport: 'on',
  autoIndent: 'full',
  automaticLayout: true,
  autoClosingBrackets: 'languageDefined',
  codeLens: false,
  colorDecorators: false,
  contextmenu: false,
  cursorBlinking: 'solid',
  detectIndentation: false,
  dragAndDrop: false,
  // The browser's EditContext loses its place when keys come faster than frames; a hidden text area does not.
  editContext: false,
  // Placed in the page, not in the window: in the window their place is wrong once the page is scrolled.
  fixedOverflowWidgets: false,
  folding: false,
  fontLigatures: false,
  glyphMargin: false,
  guides: { indentation: false, bracketPairs: false },
  hideCursorInOverviewRuler: true,
  hover: { delay: 250, above: false },
  lineDecorationsWidth: 12,
  lineNumbersMinChars: 3,
  links: false,
  matchBrackets: 'near',
  minimap: { enabled: false },
  occurrencesHighlight: 'off',
  overviewRulerBorder: false,
  overviewRulerLanes: 0,
  padding: { top: 10, bottom: 10 },
  parameterHints: { enabled: true, cycle: false },
  quickSuggestions: { other: true, comments: false, strings: false },
  renderLineHighlight: 'none',
  renderWhitespace: 'none',
  roundedSelection: false,
  scrollBeyondLastColumn: 2,
  scrollBeyondLastLine: false,
  scrollbar,
  selectionHighlight: false,
  smoothScrolling: false,
  stickyScroll: { enabled: false },
  suggest: { showIcons: false, showStatusBar: false, showInlineDetails: false, preview: false },
  suggestLineHeight: 24,
  unicodeHighlight: { ambiguousCharacters: false, invisibleCharacters: false },
  unusualLineTerminators: 'off',
  wordBasedSuggestions: 'off',
  wordWrap: 'on',
  wrappingIndent: 'indent',
  wrappingStrategy: 'simple',
}

const never = () => ({ dispose: () => undefined })

/**
 * The editor would remember how its panels were left; here proposals always show their documentation, because equation, units
 * and source are the reason to look. Nothing is stored.
 */
export const quietServices: monacoEditor.IEditorOverrideServices = {
  storageService: {
    onDidChangeValue: () => never,
    onDidChangeTarget: never,
    onWillSaveState: never,
    get: (_key: string, _scope: number, otherwise?: string) => otherwise,
    getBoolean: (key: string, _scope: number, otherwise?: boolean) => key === 'expandSuggestionDocs' || otherwise,
    getNumber: (_key: string, _scope: number, otherwise?: number) => otherwise,
    getObject: (_key: string, _scope: number, otherwise?: object) => otherwise,
    store: () => undefined,
    storeAll: () => undefined,
    remove: () => undefined,
    keys: () => [],
    log: () => undefined,
    hasScope: () => false,
    switch: async () => undefined,
    isNew: () => false,
    optimize: async () => undefined,
    flush: async () => undefined,
  },
}
