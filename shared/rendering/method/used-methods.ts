/** Which methods of the kernel a cell calls, read from its text. */
import { methodSubjects } from '../../contracts/method-subjects.js'
import { readTokens } from '../code/tokens.js'

/** Drawing is no ground that a number rests on. */
const grounds = methodSubjects.filter((subject) => subject !== 'figure')
const call = new RegExp(`(?<![\\w$.])(${grounds.join('|')})\\s*\\.\\s*([A-Za-z_]\\w*)`, 'g')

/** `rotor.hover` and so on, each once, in the order of the text; a subject that the notebook declares itself is not the kernel's. */
export function usedMethods(source: string, isOwn: (name: string) => boolean = () => false): readonly string[] {
  const code = readTokens(source)
    .map(({ kind, text }) => (kind === 'comment' || kind === 'text' ? ' ' : text))
    .join('')
  const names = [...code.matchAll(call)].flatMap(([, subject = '', name = '']) =>
    isOwn(subject) ? [] : [`${subject}.${name}`],
  )
  return [...new Set(names)]
}
