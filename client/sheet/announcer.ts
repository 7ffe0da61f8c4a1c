/** Says things to people who do not see the sheet: politely, one after another, never twice the same in a row. */

export interface Announcer {
  say(sentence: string): void
}

export function createAnnouncer(document: Document): Announcer {
  const region = document.createElement('div')
  region.className = 'announcements'
  region.setAttribute('role', 'status')
  region.setAttribute('aria-live', 'polite')
  document.body.append(region)
  let last = ''
  const waiting: string[] = []
  const speak = () => {
    region.textContent = waiting.splice(0).join(' ')
  }
  return {
    say(sentence) {
      if (sentence === last) return
      last = sentence
      if (waiting.length === 0) setTimeout(speak, 60)
      waiting.push(sentence)
    },
  }
}
