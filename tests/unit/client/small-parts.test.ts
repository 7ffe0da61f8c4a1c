import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { dimensionTable, withDimensions } from '../../../client/compute/dimensions.js'
import { lateEraser } from '../../../client/compute/late-eraser.js'
import { latestOnly } from '../../../client/compute/latest.js'
import { phasesOf } from '../../../client/compute/phases.js'
import { Sharing } from '../../../client/compute/sharing.js'
import { fromBase64, toBase64 } from '../../../client/live/base64.js'
import { fromServer } from '../../../client/live/document.js'
import { savingWords } from '../../../client/live/saving-state.js'
import { offsetOfPlace, placeOfOffset } from '../../../client/sheet/caret-place.js'
import { changedParts, sheetViewOf } from '../../../client/sheet/sheet-view.js'
import { type TextControl, TextSynchronizer } from '../../../client/sheet/text-synchronizer.js'
import { answerer, asker } from '../../../client/workers/questions.js'
import type { CellView } from '../../../shared/rendering/view.js'
import { failure, id, program, result, runnable } from './result-samples.js'

const settled = () => new Promise((resolve) => setTimeout(resolve, 0))

describe('withDimensions', () => {
  it('withDimensions(result, table) fills in what the table knows and keeps what is there', () => {
    const table = dimensionTable([{ cell: id('a'), name: 'a', dimension: 'kg' }])
    const filled = withDimensions(result('a', '1'), table)
    expect(filled.values[0]?.dimension).toBe('kg')
    expect(withDimensions(filled, dimensionTable([{ cell: id('a'), name: 'a', dimension: 'm' }]))).toBe(filled)
  })

  it('withDimensions(result, table) answers one result with one object, so that the page can compare by identity', () => {
    const table = dimensionTable([{ cell: id('a'), name: 'a', dimension: 'kg' }])
    const given = result('a', '1')
    expect(withDimensions(given, table)).toBe(withDimensions(given, table))
    expect(withDimensions(given, dimensionTable([]))).toBe(given)
  })
})

describe('phasesOf', () => {
  it('phasesOf(program, wanted, slow) puts slow cells and what reads them last', () => {
    const cells = program([
      runnable('a', '1'),
      runnable('b', '2', ['a']),
      runnable('c', '3'),
      runnable('d', '4', ['b']),
    ])
    const wanted = [id('a'), id('b'), id('c'), id('d')]
    expect(phasesOf(cells, wanted, new Set())).toEqual([wanted])
    expect(phasesOf(cells, wanted, new Set([id('b')]))).toEqual([
      ['a', 'c'],
      ['b', 'd'],
    ])
    expect(phasesOf(cells, [id('d')], new Set([id('b')]))).toEqual([['d']])
  })
})

describe('latestOnly', () => {
  it('latestOnly(ask) answers the questions in between with null', async () => {
    const asked: number[] = []
    const release: (() => void)[] = []
    const ask = latestOnly((question: number) => {
      asked.push(question)
      return new Promise<number>((resolve) => release.push(() => resolve(question * 10)))
    })
    const answers = [ask(1), ask(2), ask(3)]
    release[0]?.()
    await settled()
    release[1]?.()
    expect(await Promise.all(answers)).toEqual([10, null, 30])
    expect(asked).toEqual([1, 3])
  })

  it('latestOnly(ask) goes on after a question that failed', async () => {
    const ask = latestOnly(async (question: number) => {
      if (question === 1) throw new Error('no answer to 1')
      return question
    })
    await expect(ask(1)).rejects.toThrow('no answer to 1')
    expect(await ask(2)).toBe(2)
  })
})

describe('lateEraser', () => {
  const eraser = (name: string) => async (sources: readonly string[]) =>
    sources.map((source) => ({ ok: true as const, code: `${name} ${source}`, map: '' }))

  it('lateEraser(remote, local) asks the remote one until the local one is ready', async () => {
    let ready = (_: ReturnType<typeof eraser>) => {}
    const { erase, start } = lateEraser(eraser('remote'), () => new Promise((resolve) => (ready = resolve)))
    start()
    expect(await erase(['x'])).toMatchObject([{ code: 'remote x' }])
    ready(eraser('local'))
    await settled()
    expect(await erase(['x'])).toMatchObject([{ code: 'local x' }])
  })

  it('lateEraser(remote, local) leaves the page as it was opened to the remote one, and starts the local one at the first edit', async () => {
    let started = 0
    const { erase } = lateEraser(eraser('remote'), async () => {
      started += 1
      return eraser('local')
    })
    expect(await erase(['x'])).toMatchObject([{ code: 'remote x' }])
    expect(started).toBe(0)
    expect(await erase(['y'])).toMatchObject([{ code: 'remote y' }])
    await settled()
    expect(await erase(['z'])).toMatchObject([{ code: 'local z' }])
    expect(started).toBe(1)
  })

  it('lateEraser(remote, local) waits for the local one when the remote one cannot be reached', async () => {
    const { erase } = lateEraser(
      () => Promise.reject(new Error('no network')),
      async () => eraser('local'),
    )
    expect(await erase(['x'])).toMatchObject([{ code: 'local x' }])
  })

  it('lateEraser(remote, local) says why the remote one failed when neither is there', async () => {
    const { erase } = lateEraser(
      () => Promise.reject(new Error('no network')),
      () => Promise.reject(new Error('no compiler')),
    )
    await expect(erase(['x'])).rejects.toThrow('no network')
  })
})

describe('lateEraser, when a source brings the local compiler down', () => {
  it('lateEraser(remote, local) lets the server judge it and starts another compiler', async () => {
    const answer = (name: string) => [{ ok: true as const, code: name, map: '' }]
    let started = 0
    const { erase, start } = lateEraser(
      async () => answer('remote'),
      async () => {
        started += 1
        const name = `local ${started}`
        return (sources) =>
          sources.includes('fatal') ? Promise.reject(new Error('lost')) : Promise.resolve(answer(name))
      },
    )
    start()
    await settled()
    expect(await erase(['x'])).toEqual(answer('local 1'))
    expect(await erase(['fatal'])).toEqual(answer('remote'))
    await settled()
    expect(await erase(['x'])).toEqual(answer('local 2'))
  })
})

describe('Sharing', () => {
  it('Sharing posts results only while the server has every edit, the newest of each cell', async () => {
    const posted: string[][] = []
    const sharing = new Sharing(
      async (results) => {
        posted.push(results.map((each) => each.fingerprint))
        return []
      },
      () => undefined,
    )
    sharing.add([result('a', '1')])
    sharing.add([result('a', '2')])
    expect(posted).toEqual([])
    sharing.setSaved(true)
    await settled()
    expect(posted).toEqual([[result('a', '2').fingerprint]])
  })

  it('Sharing gives back what failed or was stale, and posts the next', async () => {
    let calls = 0
    const back: string[] = []
    const sharing = new Sharing(
      async () => {
        calls += 1
        if (calls === 1) throw new Error('no network')
        return [id('a')]
      },
      (results) => void back.push(...results.map(({ cell, fingerprint }) => `${cell} ${fingerprint}`)),
    )
    sharing.setSaved(true)
    sharing.add([result('a', '1')])
    await settled()
    sharing.add([failure('a', '2'), result('b', '1')])
    await settled()
    expect(calls).toBe(2)
    expect(back).toEqual([`a ${result('a', '1').fingerprint}`, `a ${failure('a', '2').fingerprint}`])
  })
})

describe('base64', () => {
  it('fromBase64(toBase64(bytes)) gives the bytes, long ones too', () => {
    const bytes = Uint8Array.from({ length: 20_001 }, (_, index) => index % 256)
    expect(fromBase64(toBase64(bytes))).toEqual(bytes)
  })
})

describe('savingWords', () => {
  it('savingWords(state) says how safe the edits are', () => {
    const state = { connected: true, ready: true, unsaved: 0 }
    expect(savingWords(state)).toBe('all edits saved')
    expect(savingWords({ ...state, unsaved: 2 })).toBe('saving')
    expect(savingWords({ ...state, connected: false, unsaved: 2 })).toBe('not connected: 2 edits kept here')
    expect(savingWords({ ...state, connected: false })).toBe('not connected; edits will be kept here')
    expect(savingWords({ ...state, connected: false, ready: false })).toBe('connecting')
    expect(savingWords({ ...state, refusal: 'too large.' })).toBe('not saved: too large.')
  })
})

describe('caret places', () => {
  it('offsetOfPlace(text, placeOfOffset(text, offset)) gives the offset', () => {
    const text = 'const a = 1\n\nconst b = 2'
    for (let offset = 0; offset <= text.length; offset += 1)
      expect(offsetOfPlace(text, placeOfOffset(text, offset))).toBe(offset)
  })

  it('offsetOfPlace(text, place) beyond the text gives the nearest end', () => {
    expect(offsetOfPlace('ab\ncd', { line: 9, column: 9 })).toBe(5)
    expect(offsetOfPlace('ab\ncd', { line: 1, column: 9 })).toBe(2)
    expect(offsetOfPlace('ab\ncd', { line: 0, column: 0 })).toBe(0)
  })
})

/** A text control without a browser. */
class FakeControl implements TextControl {
  value = ''
  selectionStart = 0
  selectionEnd = 0
  setSelectionRange(start: number, end: number): void {
    this.selectionStart = start
    this.selectionEnd = end
  }
  /** Types at a place, as a person does. */
  type(at: number, text: string): void {
    this.value = this.value.slice(0, at) + text + this.value.slice(at)
    this.setSelectionRange(at + text.length, at + text.length)
  }
}

function synchronized(source: string) {
  const doc = new Y.Doc()
  const text = doc.getText('text')
  text.insert(0, source)
  const control = new FakeControl()
  const synchronizer = new TextSynchronizer(control, text, () => undefined)
  const remote = (at: number, inserted: string) => doc.transact(() => text.insert(at, inserted), fromServer)
  return { text, control, synchronizer, remote }
}

describe('TextSynchronizer', () => {
  it('takeOwn() writes what was typed, and a change of another person keeps the caret on its word', () => {
    const { text, control, synchronizer, remote } = synchronized('const mass = 1')
    control.type(14, '00')
    synchronizer.takeOwn()
    expect(text.toString()).toBe('const mass = 100')
    remote(0, '// heading\n')
    expect(control.value).toBe('// heading\nconst mass = 100')
    expect(control.selectionStart).toBe(27)
  })

  it('hold(true) shows nothing of others while a character is composed, and loses neither side', () => {
    const { text, control, synchronizer, remote } = synchronized('mass')
    synchronizer.hold(true)
    control.type(4, 'e')
    synchronizer.takeOwn()
    remote(0, 'gross ')
    control.type(5, '\u0301')
    synchronizer.takeOwn()
    expect(control.value).toBe('masse\u0301')
    synchronizer.hold(false)
    expect(text.toString()).toBe('gross masse\u0301')
    expect(control.value).toBe('gross masse\u0301')
  })

  it('revert() puts the control back to the shared text', () => {
    const { text, control, synchronizer } = synchronized('mass')
    control.type(4, ' far too long')
    synchronizer.revert()
    expect(control.value).toBe('mass')
    expect(text.toString()).toBe('mass')
  })

  it('close() ends the binding', () => {
    const { control, synchronizer, remote } = synchronized('mass')
    synchronizer.close()
    remote(0, 'gross ')
    expect(control.value).toBe('mass')
  })
})

const cellView: CellView = {
  id: id('a'),
  kind: 'sizing',
  number: '1',
  source: 'const a = 1',
  state: 'current',
  findings: [],
  folded: false,
  firstFigure: 1,
}

describe('changedParts', () => {
  it('changedParts(before, after) names only what the change touches', () => {
    expect(changedParts(cellView, { ...cellView }, false)).toEqual([])
    expect(changedParts(cellView, { ...cellView, number: '2' }, false)).toEqual(['number'])
    expect(changedParts(cellView, { ...cellView, source: 'const a = 2' }, false)).toEqual(['calculation'])
    expect(changedParts(cellView, { ...cellView, state: 'out of date' }, false)).toEqual(['lines', 'result'])
    expect(changedParts(cellView, { ...cellView, formulas: [] }, false)).toEqual([])
    expect(changedParts({ ...cellView, formulas: [] }, { ...cellView, formulas: [] }, false)).toEqual(['lines'])
    expect(changedParts(cellView, { ...cellView, firstFigure: 2 }, false)).toEqual(['figures'])
    expect(changedParts(cellView, { ...cellView, result: result('a', '1') }, false)).toEqual([
      'reference',
      'lines',
      'result',
      'figures',
    ])
    expect(changedParts(cellView, cellView, true)).toEqual(['result'])
  })
})

describe('sheetViewOf', () => {
  it('sheetViewOf(snapshot, sources) numbers cells by place and figures through the sheet', () => {
    const figure = { figure: 'plot' } as never
    const view = sheetViewOf(
      {
        title: 'T',
        cells: [
          { id: id('a'), kind: 'sizing', source: '', order: 'a' },
          { id: id('b'), kind: 'rationale', source: '', order: 'b' },
          { id: id('c'), kind: 'sizing', source: '', order: 'c', number: '2a' },
        ],
        retired: [],
      },
      {
        id: 'n',
        titleBlock: {},
        isFolded: () => false,
        standing: (cell) => ({ state: 'current', result: { ...result(cell, '1'), figures: [figure, figure] } }),
        findings: () => [],
        formulas: () => undefined,
      },
    )
    expect(view.cells.map((cell) => [cell.number, cell.firstFigure])).toEqual([
      ['1', 1],
      ['2', 3],
      ['2a', 3],
    ])
  })
})

describe('asker and answerer', () => {
  /** A worker without a thread: both ends of one pair. */
  function pair() {
    const scope = { onmessage: null as ((event: MessageEvent) => void) | null, postMessage: (_: unknown) => {} }
    const worker = {
      onmessage: null as ((event: MessageEvent) => void) | null,
      onerror: null as ((event: ErrorEvent) => void) | null,
      postMessage: (data: unknown) => scope.onmessage?.({ data } as MessageEvent),
    }
    scope.postMessage = (data) => worker.onmessage?.({ data } as MessageEvent)
    return { scope, worker }
  }

  it('asker(worker) gets the answer to its question, or the message of the failure', async () => {
    const { scope, worker } = pair()
    answerer<number, number>(scope, async (question) => {
      if (question < 0) throw new Error('below zero')
      return question * 2
    })
    const ask = asker<number, number>(worker as unknown as Worker)
    expect(await Promise.all([ask(1), ask(2)])).toEqual([2, 4])
    await expect(ask(-1)).rejects.toThrow('below zero')
  })

  it('asker(worker) fails open and later questions when the worker cannot run', async () => {
    const { worker } = pair()
    const ask = asker<number, number>(worker as unknown as Worker)
    const open = ask(1)
    worker.onerror?.({ message: '', preventDefault: () => undefined } as ErrorEvent)
    await expect(open).rejects.toThrow('could not run (it did not load)')
    await expect(ask(2)).rejects.toThrow('could not run')
  })
})
