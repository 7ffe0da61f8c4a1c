/** Figures of the invented scenario, one per mark and manner of drawing. */
import type { Figure } from '../../../shared/contracts/index.js'

const power = 'kg m^2 s^-3'
const speeds = Array.from({ length: 9 }, (_, index) => 36 + 5 * index)
const needed = speeds.map((speed) => 0.31 * speed ** 3 + 1.2e6 / speed)
const speedAxis = { label: 'true airspeed', dimension: 'm s^-1', unit: 'm/s' }

export const powerCurve: Figure = {
  figure: 'plot',
  caption: 'Power required in level flight.',
  x: speedAxis,
  y: { label: 'power required', dimension: power, unit: 'kW', from: 0 },
  marks: [
    { mark: 'line', x: speeds, y: needed, label: 'rotors exposed' },
    { mark: 'line', x: speeds, y: needed.map((value) => value * 0.97), label: 'folded' },
    { mark: 'rule', axis: 'x', at: 46.86, label: '1.3 times stall', ink: 'warning' },
    { mark: 'rule', axis: 'y', at: 100e3, label: 'continuous limit' },
    { mark: 'dot', x: [58, 60], y: [81e3, 86e3], names: ['cruise', 'dash'], label: 'flown' },
  ],
}

export const massBars: Figure = {
  figure: 'plot',
  caption: 'Where the mass goes.',
  x: { label: 'mass', dimension: 'kg' },
  y: { label: 'item', dimension: '1' },
  marks: [
    {
      mark: 'bar',
      names: ['structure', 'battery', 'systems, the fixed ones and their share of gross mass', 'battery'],
      value: [523.8, 411.2, 139.1, 3],
    },
  ],
}

export const driverBars: Figure = {
  figure: 'plot',
  caption: 'Drivers of gross mass.',
  x: { label: 'elasticity', dimension: '1' },
  y: { label: 'assumption', dimension: '1' },
  marks: [
    { mark: 'bar', names: ['payload', 'range'], value: [0.77, 0.44], label: 'adds mass' },
    { mark: 'bar', names: ['pack energy'], value: [-0.79], ink: 'second', label: 'saves mass' },
    { mark: 'rule', axis: 'x', at: 0.5, label: 'half' },
  ],
}

export const sideBySide: Figure = {
  ...driverBars,
  caption: 'Two layouts side by side.',
  marks: [
    { mark: 'bar', names: ['hover', 'cruise'], value: [3, 1], label: 'eight rotors' },
    { mark: 'bar', names: ['hover', 'cruise'], value: [2, 1.5], label: 'six rotors', ink: 'third' },
  ],
}

export const planView: Figure = {
  figure: 'plot',
  caption: 'Plan view to scale.',
  toScale: true,
  x: { label: 'across', dimension: 'm' },
  y: { label: 'ahead', dimension: 'm' },
  marks: [
    { mark: 'polygon', x: [-6, 6, 6, -6], y: [0.5, 0.5, -0.5, -0.5], filled: true, label: 'wing' },
    { mark: 'circle', x: -3, y: 2, radius: 1.3, ink: 'accent', label: 'clockwise' },
    { mark: 'circle', x: 3, y: 2, radius: 1.3, ink: 'accent', broken: true, label: 'counter-clockwise' },
    { mark: 'text', x: -3, y: 2, text: '1' },
    { mark: 'text', x: 3, y: 2, text: '2', anchor: 'start' },
  ],
}

const grid = Array.from({ length: 20 }, (_, index) => [index % 5, Math.floor(index / 5)] as const)

export const contours: Figure = {
  figure: 'plot',
  caption: 'Gross mass over range and wing area.',
  x: { label: 'range', dimension: 'm', unit: 'km' },
  y: { label: 'wing area', dimension: 'm^2' },
  marks: [
    {
      mark: 'contour',
      x: grid.map(([i]) => i * 2e4),
      y: grid.map(([, j]) => 10 + j * 2),
      value: grid.map(([i, j]) => 1000 + 100 * i + 40 * j),
      levels: [1150, 1350],
      dimension: 'kg',
      unit: 't',
    },
  ],
}

export const spread: Figure = {
  figure: 'plot',
  caption: 'Spread of gross mass.',
  x: { label: 'range', dimension: 'm', unit: 'km' },
  y: { label: 'gross mass', dimension: 'kg', scale: 'logarithmic' },
  marks: [
    { mark: 'band', x: [2e4, 8e4, 1.6e5], low: [1100, 1400, 2600], high: [1200, 1600, 3300], label: 'nine in ten' },
    { mark: 'area', x: [2e4, 8e4], y: [1150, 1390], base: 1000, ink: 'second', label: 'short sectors' },
    { mark: 'line', x: [2e4, 8e4, 1.6e5], y: [1150, 1500, 2900], broken: true },
  ],
}

export const nothing: Figure = { ...powerCurve, caption: 'Nothing yet.', marks: [{ mark: 'line', x: [], y: [] }] }

export const allFigures = { powerCurve, massBars, driverBars, sideBySide, planView, contours, spread, nothing }
