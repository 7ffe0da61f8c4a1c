/** No function of the kernel goes without a property for any input: the tables of calls name them all. */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
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

/** `rotor.hover`, `assumption`: every function that a cell sees without asking. */
const functions = Object.entries(preloaded).flatMap(([name, member]) =>
  typeof member === 'function'
    ? [name]
    : Object.entries(member).flatMap(([part, value]) => (typeof value === 'function' ? [`${name}.${part}`] : [])),
)

describe('the tables of calls with any input', () => {
  const tried = new Set(calls.map(([name]) => name.split(' ', 1)[0]))

  it('try every function of the kernel', () => {
    expect(functions.length).toBeGreaterThan(200)
    expect(functions.filter((name) => !tried.has(name))).toEqual([])
  })

  it('name none that the kernel does not have, and no call twice', () => {
    expect([...tried].filter((name) => name === undefined || !functions.includes(name))).toEqual([])
    expect(new Set(calls.map(([name]) => name)).size).toBe(calls.length)
  })
})
