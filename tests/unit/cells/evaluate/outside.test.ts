/** The outside of the isolation without any isolation: lines as a sandbox might send them, honest or not. */
import { describe, expect, it } from 'vitest'
import {
  createEvaluationHost,
  type Isolate,
  type IsolateListener,
  type Platform,
} from '../../../../kernel/cells/evaluate/index.js'
import { refusedCode } from '../../../../kernel/cells/evaluate/outside/code-guard.js'
import { closure } from '../../../../kernel/cells/evaluate/outside/needed.js'
import { longestLine, readReply } from '../../../../kernel/cells/evaluate/outside/replies.js'
import { permissionFlag } from '../../../../kernel/cells/host-node/command-line.js'
import { residentMegabytes } from '../../../../kernel/cells/host-node/memory-watch.js'
import { cellId, handWritten, programOf } from '../../../isolation/programs.js'

const body = {
  outcome: 'computed',
  values: [],
  figures: [],
  advisories: [],
  assumptions: [],
  requirements: [],
  log: [],
}
const cell = handWritten({ id: 'a', body: 'const a = 1', declares: ['a'] })
const known = new Set([cell.id])

describe('readReply', () => {
  it('readReply(line) takes the id and fingerprint from the program, never from the line', () => {
    const line = `result ${JSON.stringify({ ...body, cell: 'other', fingerprint: 'f' })}`
    const reply = readReply(line, cell, known)
    expect(reply).toMatchObject({ kind: 'finished', result: { cell: 'a', fingerprint: cell.fingerprint } })
  })

  it.each([
    ['begin b', 'began another cell'],
    ['held b a', 'held back another cell'],
    ['held a unknown', 'held back another cell'],
    ['end', 'ended before'],
    ['fault', 'fault of its own'],
    ['nonsense', 'something unknown'],
    ['', 'something unknown'],
    [`result ${'x'.repeat(longestLine)}`, 'more than it may'],
  ])('readReply(line) takes a line out of turn for a breach: %#', (line, words) => {
    const reply = readReply(line, cell, known)
    expect(reply).toMatchObject({ kind: 'breach', reason: expect.stringContaining(words) })
  })

  it('readReply(line) takes a line after the last cell for a breach', () => {
    expect(readReply('begin a', undefined, known)).toMatchObject({ kind: 'breach' })
    expect(readReply('end', undefined, known)).toEqual({ kind: 'end' })
  })

  it.each([
    'result {',
    'result 7',
    `result ${JSON.stringify({ ...body, outcome: 'fine' })}`,
    `result ${JSON.stringify({ ...body, extra: 1 })}`,
  ])('readReply(line) turns a body that is no result into a failure of the cell: %s', (line) => {
    const reply = readReply(line, cell, known)
    expect(reply).toMatchObject({ kind: 'finished', result: { outcome: 'failed', error: { code: 'OUTPUT_INVALID' } } })
  })

  it('readReply(line) says how many values there are when they are too many, and what to do', () => {
    const values = Array.from({ length: 2001 }, (_, index) => ({
      name: `x${index}`,
      value: { kind: 'number', si: 1 },
      dimension: null,
    }))
    const reply = readReply(`result ${JSON.stringify({ ...body, values })}`, cell, known)
    const message = expect.stringContaining('2001 named values; at most 2000 are accepted. Put them into a list')
    expect(reply).toMatchObject({ result: { error: { message } } })
    const none = readReply(`result ${JSON.stringify({ ...body, values: 7 })}`, cell, known)
    expect(none).toMatchObject({ result: { error: { message: expect.stringContaining('no list') } } })
  })

  it('readReply(line) says so when there are too many figures', () => {
    const axis = { label: '', dimension: '1' }
    const figures = Array.from({ length: 101 }, () => ({ figure: 'plot', caption: '', x: axis, y: axis, marks: [] }))
    const reply = readReply(`result ${JSON.stringify({ ...body, figures })}`, cell, known)
    expect(reply).toMatchObject({ result: { error: { message: expect.stringContaining('too many figures') } } })
  })
})

describe('refusedCode', () => {
  it('refusedCode(code) refuses import() and import.meta however they are spaced, and code it cannot read', () => {
    expect(refusedCode('(() => import/* */("x"))')).toContain('import')
    expect(refusedCode('(() => import.meta)')).toContain('cannot be read')
    expect(refusedCode('(() => { import')).toContain('cannot be read')
    expect(refusedCode('(() => "import(x)")')).toBeUndefined()
  })
})

describe('closure', () => {
  it('closure(cells, ids) keeps what the cells read, through others too, in order', () => {
    const cells = [
      handWritten({ id: 'a', body: '' }),
      handWritten({ id: 'b', body: '', reads: { x: 'a' } }),
      handWritten({ id: 'c', body: '' }),
      handWritten({ id: 'd', body: '', reads: { y: 'b' } }),
    ]
    expect(closure(cells, new Set([cellId('d')])).map(({ id }) => id)).toEqual(['a', 'b', 'd'])
  })
})

describe('createEvaluationHost', () => {
  const program = programOf('k', [
    { id: 'a', body: '' },
    { id: 'b', body: '' },
  ])
  const codes = async (platform: Platform) => {
    const { results } = await createEvaluationHost(platform).evaluate(program, {}, 'all')
    return results.map(({ outcome, error }) => error?.code ?? outcome)
  }

  it('evaluate gives up with a sentence when no isolate can be opened', async () => {
    let opened = 0
    const platform = platformOf(() => {
      opened += 1
      throw new Error('no room')
    })
    expect(await codes(platform)).toEqual(['EVALUATOR_LOST', 'EVALUATOR_LOST'])
    expect(opened).toBe(2)
  })

  it('evaluate blames the cell during which the isolate was lost and goes on', async () => {
    let opened = 0
    const platform = platformOf(() => {
      opened += 1
      return opened === 1
        ? scripted(['begin a', 'begin a forged'])
        : scripted([`begin b`, `result ${JSON.stringify(body)}`, 'end'])
    })
    expect(await codes(platform)).toEqual(['EVALUATOR_LOST', 'computed'])
  })

  it('close ends the isolates, and evaluate then fails with a sentence', async () => {
    const host = createEvaluationHost(platformOf(() => scripted([])))
    await host.close()
    const { results } = await host.evaluate(program, {}, 'all')
    expect(results[0]?.error?.message).toContain('was closed')
  })
})

describe('command line of the child', () => {
  it.each([
    ['20.19.0', '--experimental-permission'],
    ['22.12.0', '--experimental-permission'],
    ['22.13.0', '--permission'],
    ['23.4.0', '--experimental-permission'],
    ['23.5.0', '--permission'],
    ['24.0.0', '--permission'],
  ])('permissionFlag(%s) is %s', (version, flag) => {
    expect(permissionFlag(version)).toBe(flag)
  })

  it('residentMegabytes(process) is a number for this process and undefined for none', async () => {
    expect(await residentMegabytes(process.pid)).toBeGreaterThan(10)
    expect(await residentMegabytes(2 ** 30)).toBeUndefined()
  })
})

function platformOf(open: () => Isolate): Platform {
  return { openIsolate: async () => open(), startTimer: () => () => {}, spare: false }
}

/** An isolate that answers a run with these lines. */
function scripted(lines: readonly string[]): Isolate {
  let listener: IsolateListener | undefined
  return {
    send(message) {
      if (JSON.parse(message).type === 'run') for (const line of lines) listener?.onLine(line)
    },
    listen(next) {
      listener = next
    },
    watch() {},
    end() {},
  }
}
