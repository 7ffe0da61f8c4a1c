import { describe, expect, it } from 'vitest'
import { DrawingQueue } from '../../../client/sheet/drawing-queue.js'

/** Clockwork that stands still until it is told; each drawing takes 6 ms. */
function bench() {
  let time = 0
  let onChange: (element: Element, near: boolean) => void = () => undefined
  const frames: (() => void)[] = []
  const idle: ((remaining: () => number) => void)[] = []
  const watched = new Set<Element>()
  const drawn: string[] = []
  const queue = new DrawingQueue({
    observe: (call) => {
      onChange = call
      return { watch: (element) => void watched.add(element), leave: (element) => void watched.delete(element) }
    },
    nextFrame: (call) => void frames.push(call),
    whenIdle: (call) => void idle.push(call),
    now: () => time,
  })
  const element = (name: string) => ({ name }) as unknown as Element
  return {
    queue,
    drawn,
    watched,
    element,
    ask: (on: Element, name: string) =>
      queue.later(on, () => {
        drawn.push(name)
        time += 6
      }),
    near: (on: Element, near = true) => onChange(on, near),
    frame: () => frames.splice(0).forEach((call) => void call()),
    idle: (milliseconds: number) => {
      const end = time + milliseconds
      idle.splice(0).forEach((call) => void call(() => end - time))
    },
  }
}

describe('DrawingQueue', () => {
  it('later(element, draw) draws near the screen in the next frames, as much as a frame has room for', () => {
    const { element, ask, near, frame, drawn } = bench()
    const elements = ['a', 'b', 'c', 'd'].map((name) => {
      const made = element(name)
      ask(made, name)
      return made
    })
    expect(drawn).toEqual([])
    for (const each of elements.slice(0, 3)) near(each)
    frame()
    expect(drawn).toEqual(['a', 'b'])
    frame()
    expect(drawn).toEqual(['a', 'b', 'c'])
    frame()
    expect(drawn).toEqual(['a', 'b', 'c'])
  })

  it('later(element, draw) draws the rest while nothing else is to do', () => {
    const { element, ask, idle, drawn } = bench()
    for (const name of ['a', 'b', 'c']) ask(element(name), name)
    idle(12)
    expect(drawn).toEqual(['a', 'b'])
    idle(3)
    expect(drawn).toEqual(['a', 'b'])
    idle(50)
    expect(drawn).toEqual(['a', 'b', 'c'])
  })

  it('later(element, draw) draws once what was asked for twice, as it was asked for last', () => {
    const { element, ask, near, frame, drawn, watched } = bench()
    const a = element('a')
    ask(a, 'first')
    ask(a, 'second')
    near(a)
    frame()
    expect(drawn).toEqual(['second'])
    expect(watched.size).toBe(0)
  })

  it('later(element, draw) leaves what moved away from the screen to an idle moment', () => {
    const { element, ask, near, frame, idle, drawn } = bench()
    const a = element('a')
    ask(a, 'a')
    near(a)
    near(a, false)
    frame()
    expect(drawn).toEqual([])
    idle(20)
    expect(drawn).toEqual(['a'])
  })

  it('forget(element) draws nothing of a cell that left the page', () => {
    const { queue, element, ask, idle, drawn, watched } = bench()
    const a = element('a')
    ask(a, 'a')
    queue.forget(a)
    idle(20)
    expect([drawn, watched.size]).toEqual([[], 0])
  })

  it('drawAll() draws everything before printing', () => {
    const { queue, element, ask, drawn } = bench()
    for (const name of ['a', 'b', 'c']) ask(element(name), name)
    queue.drawAll()
    expect(drawn).toEqual(['a', 'b', 'c'])
  })
})
