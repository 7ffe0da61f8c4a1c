/** No function of the kernel goes without a property for any input, nor without a box of its validity: the tables name them all. */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { subjects } from './boxes/all.js'
import { calls as authority } from './calls/authority.js'
import { calls as figure } from './calls/figure.js'
import { calls as layout } from './calls/layout.js'
import { calls as limits } from './calls/limits.js'
import { calls as mission } from './calls/mission.js'
import { calls as rotor } from './calls/rotor.js'
import { calls as slice } from './calls/slice.js'
import { calls as systems } from './calls/systems.js'
import { calls as wingAndDrag } from './calls/wing-drag.js'

const calls = [authority, figure, layout, limits, mission, rotor, slice, systems, wingAndDrag].flat()
const boxes = subjects.flatMap(([, list]) => list)

/** `rotor.hover`, `assumption`: every function that a cell sees without asking. */
const functions = Object.entries(preloaded).flatMap(([name, member]) =>
  typeof member === 'function'
    ? [name]
    : Object.entries(member).flatMap(([part, value]) => (typeof value === 'function' ? [`${name}.${part}`] : [])),
)
/** `rotor.climb to a power` is a use of `rotor.climb`. */
const functionOf = (title: string) => title.split(/[ ,]/, 1)[0] ?? ''

describe.each([
  ['calls with any input', calls.map(([name]) => name)],
  ['boxes of validity', boxes.map(({ name }) => name)],
])('the tables of %s', (_, titles) => {
  const tried = new Set(titles.map(functionOf))

  it('try every function of the kernel', () => {
    expect(functions.length).toBeGreaterThan(200)
    expect(functions.filter((name) => !tried.has(name))).toEqual([])
  })

  it('name none that the kernel does not have, and none twice', () => {
    expect([...tried].filter((name) => !functions.includes(name))).toEqual([])
    expect(new Set(titles).size).toBe(titles.length)
  })
})
