import { describe, expect, test } from 'vitest'
import { Chance } from '../../../../../kernel/cells/evidence/spread/chance.js'
import { evenNormals } from '../../../../../kernel/cells/evidence/spread/even-points.js'
import { normalCumulative } from '../../../../../kernel/cells/evidence/spread/normal-cumulative.js'
import { dimensionSeed, scramble } from '../../../../../kernel/cells/evidence/spread/scramble.js'
import { sobolBits, sobolDimensions } from '../../../../../kernel/cells/evidence/spread/sobol-sequence.js'

// scipy 1.17.1: scipy.stats.qmc.Sobol(192, scramble=False, bits=32).random(1024), rows by index, these dimensions counted from 0.
const dimensions = [0, 1, 2, 5, 20, 63, 127, 191]
const reference = [
  [1, [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5]],
  [2, [0.75, 0.25, 0.25, 0.75, 0.25, 0.75, 0.25, 0.25]],
  [3, [0.25, 0.75, 0.75, 0.25, 0.75, 0.25, 0.75, 0.75]],
  [5, [0.875, 0.875, 0.125, 0.625, 0.625, 0.625, 0.125, 0.125]],
  [100, [0.4140625, 0.2578125, 0.7734375, 0.7421875, 0.7578125, 0.6484375, 0.4609375, 0.9609375]],
  [
    777,
    [0.6923828125, 0.9365234375, 0.1630859375, 0.3564453125, 0.2373046875, 0.4267578125, 0.1181640625, 0.0107421875],
  ],
  [
    1023,
    [0.0009765625, 0.7529296875, 0.6123046875, 0.4384765625, 0.8662109375, 0.0400390625, 0.7001953125, 0.6630859375],
  ],
] as const

describe('sobolBits', () => {
  test.each(reference)('sobolBits(%i, ...) is that of an independent library in every dimension', (index, row) => {
    expect(dimensions.map((dimension) => sobolBits(index, dimension) / 2 ** 32)).toEqual(row)
  })

  test('sobolBits() puts one of 2^k points into each of 2^k slices, in all dimensions, scrambled or not', () => {
    const count = 256
    for (let dimension = 0; dimension < sobolDimensions; dimension += 1)
      for (const seed of [undefined, dimensionSeed(7, dimension)]) {
        const slices = Array.from({ length: count }, (_, index) => {
          const bits = sobolBits(index, dimension)
          return (seed === undefined ? bits : scramble(bits, seed)) >>> 24
        })
        expect(new Set(slices).size).toBe(count)
      }
  })

  test('scramble() keeps pairs of dimensions even: one point in each box of a net', () => {
    const count = 64
    for (const [width, height] of [
      [2, 4],
      [3, 3],
      [4, 2],
    ] as const) {
      const boxes = Array.from({ length: count }, (_, index) => {
        const x = scramble(sobolBits(index, 0), dimensionSeed(1, 0)) >>> (32 - width)
        const y = scramble(sobolBits(index, 1), dimensionSeed(1, 1)) >>> (32 - height)
        return `${x} ${y}`
      })
      expect(new Set(boxes).size).toBe(2 ** Math.min(width + height, 6))
    }
  })
})

describe('evenNormals', () => {
  test('evenNormals() is the same for the same seed, another for another seed, and never infinite', () => {
    const points = (seed: number) => Array.from({ length: 128 }, (_, index) => [...evenNormals(index, 0, 3, seed)])
    expect(points(5)).toEqual(points(5))
    expect(points(5)).not.toEqual(points(6))
    expect(points(0).flat().every(Number.isFinite)).toBe(true)
  })

  test('evenNormals() integrates a smooth function of 20 dimensions ten times better than chance would', () => {
    const count = 4096
    let sum = 0
    for (let index = 0; index < count; index += 1) {
      const normals = evenNormals(index, 0, 20, 3)
      sum += normals.reduce((total, z) => total + normalCumulative(z) - 0.5, 0)
    }
    // By chance the standard error is sqrt(20/12/4096) = 0.020.
    expect(Math.abs(sum / count)).toBeLessThan(0.002)
  })
})

describe('Chance', () => {
  test('Chance gives every permutation about equally often, the same for the same seed', () => {
    const chance = new Chance(11)
    const counts = new Map<string, number>()
    for (let turn = 0; turn < 6000; turn += 1) {
      const order = chance.permutation(3).join('')
      counts.set(order, (counts.get(order) ?? 0) + 1)
    }
    expect(counts.size).toBe(6)
    // 1000 expected, standard deviation 29: five of them.
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(145)
    expect(new Chance(11).permutation(9)).toEqual(new Chance(11).permutation(9))
    expect(new Chance(12).permutation(9)).not.toEqual(new Chance(11).permutation(9))
  })
})
