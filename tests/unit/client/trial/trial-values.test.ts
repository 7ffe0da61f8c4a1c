import { describe, expect, it } from 'vitest'
import { trialMemory } from '../../../../client/trial/trial-memory.js'
import { TrialValues } from '../../../../client/trial/trial-values.js'

class Shelf {
  readonly kept = new Map<string, string>()
  getItem(key: string): string | null {
    return this.kept.get(key) ?? null
  }
  setItem(key: string, text: string): void {
    this.kept.set(key, text)
  }
  removeItem(key: string): void {
    this.kept.delete(key)
  }
}

function bench(said: Record<string, number> = { radius: 1.3, mass: 400 }) {
  const shelf = new Shelf()
  const document = new Map(Object.entries(said))
  let changes = 0
  const open = () =>
    new TrialValues(trialMemory('n', shelf as unknown as Storage), {
      said: (name) => document.get(name),
      onChange: () => {
        changes += 1
      },
    })
  const trials = open()
  trials.know(['radius', 'mass', 'share'], true)
  return { trials, document, shelf, open, changes: () => changes }
}

describe('TrialValues', () => {
  it('point() is empty at first, and the same object until something changes', () => {
    const { trials } = bench()
    expect(trials.point()).toEqual({})
    trials.set('radius', 1.42)
    expect(trials.point()).toEqual({ radius: 1.42 })
    expect(trials.point()).toBe(trials.point())
  })

  it('set(name, value) tries a value, and the value of the document is no trial', () => {
    const { trials, changes } = bench()
    trials.set('radius', 1.42)
    expect(trials.get('radius')).toEqual({ value: 1.42, said: 1.3 })
    trials.set('radius', 1.3 * (1 + 1e-15))
    expect(trials.names).toEqual([])
    expect(changes()).toBe(2)
  })

  it('set(name, value) takes no number that is not finite', () => {
    const { trials } = bench()
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) trials.set('radius', value)
    expect(trials.point()).toEqual({})
  })

  it('tryPoint(point) puts a whole point on trial and leaves other names alone', () => {
    const { trials, changes } = bench()
    trials.set('share', 0.2)
    const { tryPoint } = trials
    tryPoint({ radius: 1.42, mass: 420 })
    expect(trials.point()).toEqual({ share: 0.2, radius: 1.42, mass: 420 })
    expect(changes()).toBe(2)
  })

  it('replace(point) forgets what was tried before', () => {
    const { trials } = bench()
    trials.set('share', 0.2)
    trials.replace({ radius: 1.42 })
    expect(trials.point()).toEqual({ radius: 1.42 })
  })

  it('discard(name) and discardAll() forget', () => {
    const { trials, changes, shelf } = bench()
    trials.tryPoint({ radius: 1.42, mass: 420, share: 0.2 })
    trials.discard('radius')
    trials.discard('radius')
    expect(trials.names).toEqual(['mass', 'share'])
    trials.discardAll()
    expect(trials.point()).toEqual({})
    expect(changes()).toBe(3)
    expect(shelf.kept.size).toBe(0)
  })

  it('know(names, whole) forgets a name that is no assumption any more, and waits while a cell cannot be read', () => {
    const { trials } = bench()
    trials.tryPoint({ radius: 1.42, mass: 420 })
    expect(trials.know(['mass'], false)).toEqual([])
    expect(trials.point()).toEqual({ mass: 420 })
    expect(trials.know(['mass', 'radius'], true)).toEqual([])
    expect(trials.point()).toEqual({ radius: 1.42, mass: 420 })
    expect(trials.know(['mass'], true)).toEqual(['radius'])
    expect(trials.names).toEqual(['mass'])
  })

  it('settle() ends a trial of what the document has come to say', () => {
    const { trials, document } = bench()
    trials.tryPoint({ radius: 1.42, mass: 420 })
    document.set('radius', 1.42)
    trials.settle()
    expect(trials.names).toEqual(['mass'])
  })

  it('seen(name) notes what the document says by now', () => {
    const { trials, document } = bench()
    trials.set('radius', 1.42)
    document.set('radius', 1.35)
    expect(trials.get('radius')?.said).toBe(1.3)
    trials.seen('radius', 1.35)
    trials.seen('nobody', 1)
    expect(trials.names).toEqual(['radius'])
    expect(trials.get('radius')?.said).toBe(1.35)
  })

  it('a reload keeps what is tried, in force once the assumptions are known', () => {
    const { trials, open } = bench()
    trials.tryPoint({ radius: 1.42, unknown: 3 })
    const again = open()
    expect(again.point()).toEqual({})
    expect(again.names).toEqual(['radius', 'unknown'])
    again.know(['radius'], true)
    expect(again.point()).toEqual({ radius: 1.42 })
    expect(again.get('radius')?.said).toBe(1.3)
  })
})

describe('trialMemory(notebook, storage)', () => {
  it('read() passes over what is damaged or strange', () => {
    const shelf = new Shelf()
    const memory = trialMemory('n', shelf as unknown as Storage)
    for (const text of ['', '{', '7', '[1, null, ["a"], ["b", 5], ["c", { "value": "1" }], [2, { "value": 1 }]]']) {
      shelf.setItem('hoverfolio trial n', text)
      expect([...memory.read()]).toEqual([])
    }
    shelf.setItem('hoverfolio trial n', '[["d", { "value": 2, "said": "x" }]]')
    expect([...memory.read()]).toEqual([['d', { value: 2 }]])
  })

  it('read() and write(values) do without a storage, and with one that refuses', () => {
    const refusing = new Proxy({} as Storage, {
      get: () => () => {
        throw new Error('the storage is full')
      },
    })
    for (const memory of [trialMemory('n', undefined), trialMemory('n', refusing)]) {
      memory.write(new Map([['a', { value: 1 }]]))
      expect(memory.read().size).toBe(0)
    }
  })
})
