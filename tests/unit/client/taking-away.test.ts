/** What a figure carries when it leaves, and the fingerprint in the title block. */
import { inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { LiveFingerprint } from '../../../client/notebook/live-fingerprint.js'
import { withPngText } from '../../../client/sheet/png-text.js'
import type { Fingerprint, Provenance } from '../../../shared/contracts/index.js'
import { cellView, sheetView } from '../rendering/support.js'

/** One white point, as written by another program. */
const png = Uint8Array.from(
  Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAG7buVgAAAABJRU5ErkJggg==', 'base64'),
)

interface Chunk {
  readonly type: string
  readonly data: Buffer
  readonly sum: number
}

function chunksOf(file: Uint8Array): Chunk[] {
  const bytes = Buffer.from(file)
  const chunks: Chunk[] = []
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at)
    chunks.push({
      type: bytes.toString('latin1', at + 4, at + 8),
      data: bytes.subarray(at + 8, at + 8 + length),
      sum: bytes.readUInt32BE(at + 8 + length),
    })
    at += 12 + length
  }
  return chunks
}

describe('withPngText(png, words)', () => {
  const made = withPngText(png, { Description: 'Skerry Link · revision B · fingerprint 4c1f 90ae', Warning: 'Concept' })

  it('puts the words before the picture and leaves the picture as it was', () => {
    const chunks = chunksOf(made)
    expect(chunks.map(({ type }) => type)).toEqual(['IHDR', 'iTXt', 'iTXt', 'IDAT', 'IEND'])
    expect(chunks[1]?.data.toString('utf8')).toBe(
      'Description\0\0\0\0\0Skerry Link · revision B · fingerprint 4c1f 90ae',
    )
    expect(inflateSync(chunks[3]?.data ?? Buffer.alloc(0))).toHaveLength(2)
  })

  it('has the sums that the format asks for: of "IEND" alone it is ae 42 60 82', () => {
    const empty = withPngText(png, { '': '' })
    // The sum of an own chunk, worked out by the tables of another implementation.
    const { data, sum } = chunksOf(empty)[1] ?? { data: Buffer.alloc(0), sum: 0 }
    expect(sum).toBe(tableSum(Buffer.concat([Buffer.from('iTXt'), data])))
    expect(tableSum(Buffer.from('IEND'))).toBe(0xae426082)
  })
})

/** CRC-32 with a table, as the specification of PNG prints it in its annex. */
function tableSum(bytes: Buffer): number {
  const table = Array.from({ length: 256 }, (_, index) => {
    let c = index
    for (let k = 0; k < 8; k += 1) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
    return c >>> 0
  })
  let c = 0xffffffff
  for (const byte of bytes) c = ((table[(c ^ byte) & 0xff] ?? 0) ^ (c >>> 8)) >>> 0
  return (c ^ 0xffffffff) >>> 0
}

describe('LiveFingerprint', () => {
  const provenance = (start: string): Provenance => ({
    title: 'T',
    revision: 'draft (not issued)',
    fingerprint: `${start}${'0'.repeat(56)}` as Fingerprint,
  })

  function open() {
    const shown: string[] = []
    let waiting: (() => void) | undefined
    let answer: (() => Promise<Provenance>) | undefined
    const live = new LiveFingerprint(provenance('aaaabbbb'), {
      ask: () => answer?.() ?? Promise.reject(new Error('offline')),
      after: (_, call) => {
        waiting = call
        return () => {
          waiting = undefined
        }
      },
      show: (words) => shown.push(words),
    })
    return {
      live,
      shown,
      answerWith: (given: () => Promise<Provenance>) => {
        answer = given
      },
      quiet: async () => {
        const call = waiting
        waiting = undefined
        call?.()
        await new Promise((resolve) => setTimeout(resolve, 0))
      },
    }
  }
  const text = (source: string) => sheetView([cellView('a', { source })])

  it('shows what the page came with until something changes', () => {
    const { live, shown } = open()
    live.follow(text('const a = 1'))
    live.follow({ ...text('const a = 1'), titleBlock: { checked: 'somebody' } })
    expect([live.words, shown]).toEqual(['aaaa bbbb', []])
  })

  it('says that it is being worked out, and asks once the page is quiet', async () => {
    const { live, shown, quiet, answerWith } = open()
    answerWith(async () => provenance('ccccdddd'))
    for (const source of ['const a = 1', 'const a = 2', 'const a = 3']) live.follow(text(source))
    await quiet()
    expect(shown).toEqual(['being worked out', 'cccc dddd'])
  })

  it('takes no answer about a text that changed while it was asked', async () => {
    const { live, shown, quiet, answerWith } = open()
    live.follow(text('const a = 1'))
    live.follow(text('const a = 2'))
    answerWith(async () => {
      live.follow(text('const a = 3'))
      return provenance('ccccdddd')
    })
    await quiet()
    expect(shown).toEqual(['being worked out'])
    answerWith(async () => provenance('eeeeffff'))
    await quiet()
    expect(live.words).toBe('eeee ffff')
  })

  it('stays open where the server cannot be asked', async () => {
    const { live, quiet } = open()
    live.follow(text('const a = 1'))
    live.follow(text('const a = 2'))
    await quiet()
    expect(live.words).toBe('being worked out')
  })
})
