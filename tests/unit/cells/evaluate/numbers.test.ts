/** The outside of a numbers run without any isolation: lines as a sandbox might send them, honest or not. */
import { describe, expect, it } from 'vitest'
import {
  createNumbersHost,
  type Isolate,
  type IsolateListener,
  longestLine,
  type NumbersMessage,
} from '../../../../kernel/cells/evaluate/index.js'
import { readNumbers } from '../../../../kernel/cells/evaluate/outside/numbers-reply.js'
import type { Program } from '../../../../kernel/cells/program/index.js'
import { cellId, fingerprintOf, programOf } from '../../../isolation/programs.js'

const asked = { names: [{ name: 'a', cell: cellId('a') }], needed: [cellId('a')] }

describe('readNumbers', () => {
  it('readNumbers(line) takes numbers, requirements and the failing cell', () => {
    const line = `numbers ${JSON.stringify({ n: [null], r: [['x', 'NaN', 2]], f: ['a', 'THROWN', 'no'] })}`
    expect(readNumbers(line, asked)).toEqual({
      ok: false,
      cell: 'a',
      code: 'THROWN',
      message: 'no',
      numbers: {},
      requirements: { x: { actual: Number.NaN, margin: 2 } },
    })
  })

  it('readNumbers(line) keeps a requirement called __proto__ as what it is', () => {
    const read = readNumbers('numbers {"n":[1],"r":[["__proto__",1,2]]}', asked)
    expect(typeof read !== 'string' && Object.keys(read.requirements)).toEqual(['__proto__'])
  })

  it.each([
    ['fault', 'fault of its own'],
    ['end', 'something unknown'],
    ['numbers {', 'cannot be read'],
    ['numbers {"n":[],"r":[]}', 'cannot be read'],
    ['numbers {"n":["1"],"r":[]}', 'cannot be read'],
    ['numbers {"n":[1],"r":[],"more":1}', 'cannot be read'],
    ['numbers {"n":[1],"r":[],"f":["b","X","y"]}', 'blamed another cell'],
    [`numbers ${'x'.repeat(longestLine)}`, 'more than it may'],
  ])('readNumbers(line) says what is wrong with any other line: %#', (line, words) => {
    expect(readNumbers(line, asked)).toContain(words)
  })
})

/** An isolate that answers each message as it is told to. */
function scripted(answer: (message: NumbersMessage, listener: IsolateListener) => void): Isolate {
  let listener: IsolateListener | undefined
  return {
    send(text) {
      const message = JSON.parse(text) as NumbersMessage | { type: 'program' }
      if (message.type === 'numbers') queueMicrotask(() => listener !== undefined && answer(message, listener))
    },
    listen: (one) => {
      listener = one
    },
    watch() {},
    end() {},
  }
}

const program = programOf(fingerprintOf('kernel'), [{ id: 'a', body: 'const a = 1', declares: ['a'] }])
const wanted = { names: asked.names, requirements: [] }
const platform = (openIsolate: () => Promise<Isolate>) => ({
  openIsolate,
  startTimer: () => () => {},
  spare: false,
})

describe('createNumbersHost', () => {
  it('evaluateNumbers blames the point at which an isolate breaks its word, and asks another for the rest', async () => {
    let opened = 0
    const host = createNumbersHost(
      platform(async () => {
        opened += 1
        const honest = opened > 1
        return scripted(({ points }, { onLine }) => {
          for (const point of points)
            onLine(honest || point.a !== 1 ? `numbers {"n":[${point.a}],"r":[]}` : 'numbers {"n":[1,2],"r":[]}')
          onLine('end')
        })
      }),
      1,
    )
    const outcomes = await host.evaluateNumbers(
      program,
      [0, 1, 2].map((a) => ({ a })),
      wanted,
    )
    expect(outcomes.map((one) => one.ok)).toEqual([true, false, true])
    expect(outcomes[1]).toMatchObject({ code: 'EVALUATOR_LOST', message: expect.stringContaining('cannot be read') })
  })

  it('evaluateNumbers takes more lines than points for a breach that costs no answer', async () => {
    const ended: string[] = []
    const host = createNumbersHost(
      platform(async () => ({
        ...scripted((_, { onLine }) => {
          onLine('numbers {"n":[1],"r":[]}')
          onLine('numbers {"n":[1],"r":[]}')
        }),
        end: () => ended.push('ended'),
      })),
      1,
    )
    expect(await host.evaluateNumbers(program, [{}], wanted)).toEqual([
      { ok: true, numbers: { a: 1 }, requirements: {} },
    ])
    expect(ended).toEqual(['ended'])
  })

  it('evaluateNumbers fails at every point when no isolate can be had', async () => {
    const host = createNumbersHost(
      platform(() => Promise.reject(new Error('no room'))),
      2,
    )
    const outcomes = await host.evaluateNumbers(program, [{}, {}, {}], wanted)
    expect(outcomes).toHaveLength(3)
    expect(outcomes[2]).toMatchObject({ ok: false, message: expect.stringContaining('no room') })
  })

  it('evaluateNumbers gives the reason of a cell that cannot run, also for what it holds back', async () => {
    const host = createNumbersHost(
      platform(() => Promise.reject(new Error('none'))),
      1,
    )
    const fingerprint = fingerprintOf('f')
    const barred: Program = {
      ...program,
      failed: [{ id: cellId('bad'), fingerprint, error: { code: 'SYNTAX', message: 'It cannot be read.' } }],
      heldBack: [{ id: cellId('held'), fingerprint, by: cellId('bad') }],
    }
    const outcomes = await host.evaluateNumbers(barred, [{}], {
      names: [{ name: 'x', cell: cellId('held') }],
      requirements: [],
    })
    expect(outcomes).toMatchObject([{ ok: false, code: 'SYNTAX', cell: 'bad' }])
  })
})
