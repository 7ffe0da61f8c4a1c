/**
 * Says things to people who do not see the sheet: politely, one after another, never twice the same in a row. What someone who sees it
 * would miss as well (why something was not done) stands on the page for a while too.
 */

export interface Announcer {
  /** Aloud only: the sheet shows it anyway. */
  say(sentence: string): void
  /** Aloud, and in a note on the page. */
  tell(sentence: string): void
}

/** Within this time the same sentence is not said again. [ms] */
const stale = 1500
/** How long a note stays. [ms] */
const reading = 9000

export function createAnnouncer(document: Document): Announcer {
  const region = document.createElement('div')
  region.className = 'announcements'
  region.setAttribute('role', 'status')
  region.setAttribute('aria-live', 'polite')
  const note = document.createElement('div')
  note.className = 'notice'
  note.setAttribute('aria-hidden', 'true')
  note.hidden = true
  document.body.append(region, note)
  let last = ''
  let spoken = Number.NEGATIVE_INFINITY
  const waiting: string[] = []
  const speak = () => {
    region.textContent = waiting.splice(0).join(' ')
  }
  let ending: ReturnType<typeof setTimeout> | undefined
  const say = (sentence: string) => {
    // Undoing twice may say the same twice: a sentence that was spoken a while ago is news again.
    const now = Date.now()
    if (sentence === last && now - spoken < stale) return
    spoken = now
    last = sentence
    if (waiting.length === 0) setTimeout(speak, 60)
    waiting.push(sentence)
  }
  return {
    say,
    tell(sentence) {
      say(sentence)
      note.textContent = sentence
      note.hidden = false
      clearTimeout(ending)
      ending = setTimeout(() => {
        note.hidden = true
      }, reading)
    },
  }
}
