/** Advisories of one kind are said once, at their worst. */
import { describe, expect, test } from 'vitest'
import type { Advisory } from '../../../shared/contracts/index.js'
import { groupAdvisories, groupWords } from '../../../shared/rendering/index.js'

const loading = (value: number): Advisory => ({
  code: 'BLADE_LOADING',
  method: 'rotor.hover',
  quantity: 'bladeLoading',
  value,
  range: [0, 0.12],
  message: `A blade loading of ${value} leaves no margin.`,
})
const floor = (segment: number, least: number): Advisory => ({
  code: 'SPEED_FLOOR',
  method: 'mission.demand',
  quantity: `segments[${segment}].speed`,
  value: 56,
  range: [least, null],
  message: `Segment ${segment + 1} is flown at ${least} m/s.`,
})

describe('groupAdvisories', () => {
  test('groupAdvisories says the worst of a kind and counts the others', () => {
    const [group, ...none] = groupAdvisories([loading(0.13), loading(0.18), loading(0.15)])
    expect(none).toEqual([])
    expect(group).toEqual({ worst: loading(0.18), more: 2 })
    expect(group && groupWords(group)).toBe('A blade loading of 0.18 leaves no margin. (The worst of 3 alike.)')
  })

  test('groupAdvisories takes places of one list as one kind, below a range as well', () => {
    const groups = groupAdvisories([floor(2, 57), floor(3, 63), floor(4, 60)])
    expect(groups).toEqual([{ worst: floor(3, 63), more: 2 }])
  })

  test('groupAdvisories keeps kinds apart and in their order, and a single one as it is', () => {
    const plain: Advisory = { code: 'HOUSE_MODEL', method: 'drag.stowageOptions', message: 'A house model.' }
    const groups = groupAdvisories([plain, loading(0.13), floor(2, 57), plain])
    expect(groups.map(({ worst }) => worst.code)).toEqual(['HOUSE_MODEL', 'BLADE_LOADING', 'SPEED_FLOOR'])
    expect(groups[0]).toEqual({ worst: plain, more: 1 })
    expect(groups[1] && groupWords(groups[1])).toBe(loading(0.13).message)
  })
})
