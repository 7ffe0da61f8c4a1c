/**
 * The parts of monaco that a cell needs, and no others: every further feature brings keys, menus and weight. Undo, rename, going to
 * a declaration, search and the language come from us or from the browser. Its own TypeScript worker is never loaded.
 */
import 'monaco-editor/features/bracketMatching/register'
import 'monaco-editor/features/clipboard/register'
import 'monaco-editor/features/codeAction/register'
import 'monaco-editor/features/hover/register'
import 'monaco-editor/features/indentation/register'
import 'monaco-editor/features/inlayHints/register'
import 'monaco-editor/features/parameterHints/register'
// The feature named "suggest" registers something else; this is the one that proposes.
import 'monaco-editor/editor/contrib/suggest/browser/suggestController'
import 'monaco-editor/features/wordOperations/register'

export {
  Emitter,
  editor,
  type IDisposable,
  type IPosition,
  KeyCode,
  KeyMod,
  languages,
  MarkerSeverity,
  Range,
  Selection,
  Uri,
} from 'monaco-editor/editor'
