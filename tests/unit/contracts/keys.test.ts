import { describe, expect, it } from 'vitest'
import { commandOf, keysForAria, keyTable, type PressedKey } from '../../../shared/contracts/index.js'

const press = (key: string, held: Partial<PressedKey> = {}): PressedKey => ({
  key,
  code: '',
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
})

describe('the table of keys', () => {
  it('keyTable has no key twice at one place, and says in words what each does', () => {
    const all = keyTable.flatMap(({ keys, where }) => keys.split(', ').map((key) => `${where}: ${key}`))
    expect(new Set(all).size).toBe(all.length)
    for (const { does } of keyTable) expect(does).toMatch(/^[a-z].*[^.]$/)
  })

  it('commandOf(pressed, places) knows a key only where it works', () => {
    expect(commandOf(press('Delete'), ['page', 'cell'])).toBe('remove')
    expect(commandOf(press('Delete'), ['page', 'editor'])).toBeUndefined()
    expect(commandOf(press('ArrowUp', { altKey: true }), ['cell'])).toBe('move up')
    expect(commandOf(press('ArrowUp'), ['cell'])).toBeUndefined()
    expect(commandOf(press('Insert', { shiftKey: true }), ['cell'])).toBe('add above')
  })

  it('commandOf(pressed, places) asks the first place first: while writing, Escape leaves and stops no run', () => {
    expect(commandOf(press('Escape'), ['editor', 'page'])).toBe('leave')
    expect(commandOf(press('Escape'), ['cell', 'page'])).toBe('stop')
    expect(commandOf(press('z', { ctrlKey: true }), ['editor', 'page'])).toBe('undo')
  })

  it('commandOf(pressed, places) takes the command key for Ctrl, and every one of several keys', () => {
    expect(commandOf(press('z', { metaKey: true }), ['page'])).toBe('undo')
    expect(commandOf(press('Z', { ctrlKey: true, shiftKey: true }), ['page'])).toBe('redo')
    expect(commandOf(press('y', { ctrlKey: true }), ['page'])).toBe('redo')
  })

  it('commandOf(pressed, places) reads the key itself when Alt changes its sign, and leaves AltGr to typing', () => {
    const held = { ctrlKey: true, altKey: true, code: 'KeyS' }
    expect(commandOf(press('ß', held), ['editor'])).toBe('split')
    const altGr = { ...held, getModifierState: (modifier: string) => modifier === 'AltGraph' }
    expect(commandOf(press('ś', altGr), ['editor'])).toBeUndefined()
  })

  it('keysForAria(command, where) writes them as assistive technology expects', () => {
    expect(keysForAria('redo', 'page')).toBe('Control+Shift+Z Control+Y')
    expect(keysForAria('redo', 'cell')).toBe('')
  })
})
