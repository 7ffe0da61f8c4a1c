import { describe, expect, it } from 'vitest'
import { turnsBy } from '../../../client/compute/turns.js'

function bench() {
  let time = 0
  const resting: (() => void)[] = []
  const pause = turnsBy({ now: () => time, rest: (call) => void resting.push(call) })
  return {
    pause,
    resting,
    pass: (milliseconds: number) => {
      time += milliseconds
    },
    wake: () => resting.splice(0).forEach((call) => void call()),
  }
}

describe('turnsBy', () => {
  it('pause() asks for no rest while the turn lasts, and for one when it is over', async () => {
    const { pause, pass, resting, wake } = bench()
    expect(pause()).toBeUndefined()
    pass(5)
    expect(pause()).toBeUndefined()
    pass(5)
    const rest = pause()
    expect(rest).toBeInstanceOf(Promise)
    expect(resting).toHaveLength(1)
    wake()
    await rest
    expect(pause()).toBeUndefined()
  })

  it('pause() lets work that begins after a long while have a turn of its own', () => {
    const { pause, pass, resting } = bench()
    pause()
    pass(1000)
    expect(pause()).toBeUndefined()
    expect(resting).toEqual([])
  })
})
