import { transform } from 'esbuild-wasm'
import { describe, expect, test } from 'vitest'
import { createEraser, guardTransform, type Transform } from '../../../../kernel/cells/compile/index.js'

const failure = (text: string, column = 0, lineText = '') => ({
  errors: [{ text, location: { line: 1, column, lineText } }],
})

describe('createEraser', () => {
  test('createEraser() takes types away and nothing else', async () => {
    const [erased] = await createEraser(transform)([
      'const unused: number = 1\nfunction never(a?: string): void {}\nif (false) never()',
    ])
    expect(erased).toMatchObject({ ok: true, map: expect.stringContaining('"mappings"') })
    expect(erased?.ok === true && erased.code).toBe(
      '"use strict";\nconst unused = 1;\nfunction never(a) {\n}\nif (false) never();\n',
    )
  })

  test('createEraser() asks the compiler once per text, also while it is still at work', async () => {
    const asked: string[] = []
    const erase = createEraser(async (source) => {
      asked.push(source)
      return { code: source, map: '{}' }
    })
    await Promise.all([erase(['a', 'b', 'a']), erase(['b'])])
    await erase(['a'])
    expect(asked).toEqual(['a', 'b'])
  })

  test('createEraser() forgets the text used longest ago when it holds as many as it may', async () => {
    const asked: string[] = []
    const erase = createEraser(async (source) => {
      asked.push(source)
      return { code: source, map: '{}' }
    }, 2)
    for (const source of ['a', 'b', 'a', 'c', 'a', 'b']) await erase([source])
    expect(asked).toEqual(['a', 'b', 'c', 'b'])
  })

  test('createEraser() gives the place of an error in characters, not in bytes', async () => {
    const [erased] = await createEraser(transform)(['const ρ = "日😀" + )'])
    expect(erased).toEqual({ ok: false, line: 1, column: 19, message: '")" does not fit here.' })
  })

  test('createEraser() passes a failure on that is not about the source, and tries again the next time', async () => {
    let broken = true
    const erase = createEraser(async (source) => {
      if (broken) throw new Error('the compiler did not start')
      return { code: source, map: '{}' }
    })
    await expect(erase(['a'])).rejects.toThrow('the compiler did not start')
    broken = false
    expect(await erase(['a'])).toEqual([{ ok: true, code: 'a', map: '{}' }])
  })

  test.each([
    [{ errors: [] }],
    [{ errors: [{ text: 'no place', location: null }] }],
    [{ errors: 'many' }],
    [null],
    ['text'],
  ])('createEraser() passes %j on, which names no place in the source', async (thrown) => {
    await expect(createEraser(() => Promise.reject(thrown))(['a'])).rejects.toBe(thrown)
  })

  test.each([
    ['Expected ")" but found end of file', 'The cell ends where ")" should follow.'],
    ['Expected identifier but found "="', 'A name should stand here, not "=".'],
    ['Something new', 'Something new.'],
    ['Is it so?', 'Is it so?'],
  ])('createEraser() words %j for people', async (text, message) => {
    expect(await createEraser(() => Promise.reject(failure(text)))(['a'])).toEqual([
      { ok: false, line: 1, column: 1, message },
    ])
  })
})

/** A compiler that ends at a source holding `fatal`, never answers one holding `endless`, and can be started anew. */
function fragile() {
  const state = { alive: true, restarts: 0, seen: [] as string[], startable: true }
  const compile: Transform = (source) => {
    state.seen.push(source)
    if (!state.alive) return Promise.reject(new Error('the service is no longer running'))
    if (source.includes('fatal')) {
      state.alive = false
      return Promise.reject(new Error('the service was stopped'))
    }
    if (source.includes('endless')) return new Promise(() => undefined)
    if (source.includes('wrong')) return Promise.reject(failure('Unexpected "wrong"'))
    return Promise.resolve({ code: source, map: '{}' })
  }
  const guarded = guardTransform(compile, {
    restart: async () => {
      state.restarts += 1
      state.alive = state.startable
    },
    after: (milliseconds, call) => {
      const timer = setTimeout(call, milliseconds / 100)
      return () => clearTimeout(timer)
    },
    timeLimit: 2000,
  })
  return { state, guarded }
}

describe('guardTransform', () => {
  test('guardTransform() refuses a source that ends the compiler and goes on with the others', async () => {
    const { guarded, state } = fragile()
    const erased = await createEraser(guarded)(['a', 'fatal', 'b', 'wrong', 'c'])
    expect(erased.map((one) => (one.ok ? one.code : one.message))).toEqual([
      'a',
      'The cell is nested too deeply, or too long, to be read.',
      'b',
      '"wrong" does not fit here.',
      'c',
    ])
    expect(state.restarts).toBe(2)
  })

  test('guardTransform() ends a compiler that gives no answer in time', async () => {
    const { guarded, state } = fragile()
    const erased = await createEraser(guarded)(['endless', 'b'])
    expect(erased).toMatchObject([{ ok: false, line: 1, column: 1 }, { ok: true }])
    expect(state.restarts).toBe(2)
  })

  test('guardTransform() blames no source when the compiler itself cannot be started', async () => {
    const { guarded, state } = fragile()
    state.startable = false
    await expect(createEraser(guarded)(['fatal'])).rejects.toThrow('the service is no longer running')
  })

  test('guardTransform() gives one source at a time', async () => {
    let open = 0
    let most = 0
    const guarded = guardTransform(
      async (source) => {
        open += 1
        most = Math.max(most, open)
        await Promise.resolve()
        open -= 1
        return { code: source, map: '{}' }
      },
      { restart: async () => undefined, after: () => () => undefined },
    )
    await createEraser(guarded)(['a', 'b', 'c'])
    expect(most).toBe(1)
  })
})
