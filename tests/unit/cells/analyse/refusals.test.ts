import { describe, expect, test } from 'vitest'
import { graphOf, said } from './support.js'

/** Findings of the one cell, without those of others. */
const saidOf = async (source: string) => said(await graphOf({ it: source, others: 'const other = 1' }), 'it')

describe('analyse: TypeScript that is not for cells', () => {
  test.each([
    ['import { a } from "b"', '1:1', '"import"'],
    ['import "b"', '1:1', '"import"'],
    ['const a = 1\nimport type { A } from "b"', '2:1', '"import"'],
    ['import { type A } from "b"', '1:1', '"import"'],
    ['import fs = require("fs")', '1:1', '"import"'],
    ['const a = import("b")', '1:11', '"import"'],
    ['const a = import.meta', '1:11', '"import"'],
    ['export const a = 1', '1:1', '"export"'],
    ['// note\n\n  export default 3', '3:3', '"export"'],
    ['export * from "a"', '1:1', '"export"'],
    ['const a = 1\n  export interface A {}', '2:3', '"export"'],
    ['export type A = 1', '1:1', '"export"'],
    ['export /* why */ type A = 1', '1:1', '"export"'],
    ['const a = 1; export declare const b: number', '1:14', '"export"'],
    ['export default interface A {}', '1:1', '"export"'],
    ['export { type A }\ntype A = 1', '1:1', '"export"'],
    ['// kinds\nenum Kind { A, B }', '2:1', 'An enum'],
    ['const enum Kind { A }', '1:1', 'An enum'],
    ['function f() {\n  enum Kind { A }\n  return Kind.A\n}', '2:3', 'An enum'],
    ['namespace N { export const x = 1 }', '1:1', 'A namespace'],
    ['const a = 1\nvar b = 2', '2:1', '"var"'],
    ['function f() { var b = 2; return b }', '1:16', '"var"'],
    ['if (other) { function f() {} }', '1:14', 'A function declared inside a block'],
    ['@sealed class A {}', '1:1', 'A decorator'],
    ['class A { constructor(private x: number) {} }', '1:31', 'A constructor parameter'],
    ['class A { constructor(a: number, readonly x = 1) {} }', '1:43', 'A constructor parameter'],
    ['const a = await other', '1:11', '"await"'],
    ['for await (const a of other) {}', '1:1', '"await"'],
    ['async function f() {}', '1:1', 'An async function'],
    ['const f = async () => 1', '1:11', 'An async function'],
    ['function* f() { yield 1 }', '1:1', 'A generator'],
    ['class A { *f() { yield 1 } }', '1:12', 'A generator'],
    ['return 3', '1:1', '"return" at the top level'],
    ['const a = this', '1:11', '"this" at the top level'],
    ['const f = () => this', '1:17', '"this" at the top level'],
    ['using a = other', '1:1', '"using"'],
    ['class A { accessor x = 1 }', '1:11', '"accessor"'],
  ])('analyse() refuses %j', async (source, place, form) => {
    const all = await saidOf(source)
    expect(all.find((sentence) => sentence.startsWith(`${place} syntax error: ${form}`))).toMatch(
      /cannot be used in a cell\. \w/,
    )
  })

  test.each([
    ['const text = "export interface A {}\\nenum B {} var x; import type C"'],
    ['// export type A = 1\nconst a = 1 /* import type B from "c" */'],
    ['const text = `\nexport interface A {}\nenum B {}\n`'],
    ['const pattern = /export type A|enum B/'],
    ['const a = { export: 1, import: 2, enum: 3, var: 4 }\nconst b = a.export + a.import + a.enum'],
    ['declare enum D { A }\nnamespace OnlyTypes { interface A {} }'],
    [
      'function f(this: { a: number }) { return this.a }\nclass A { a = this; static { console.log(this) }; m() { return () => this } }',
    ],
    ['const f = () => { return 1 }\nfunction g() { return 2 }'],
    ['class A { constructor(/* private */ x: number) { console.log(x) } }'],
    ['const a = { get b() { return this }, c() { return this } }'],
    [''],
    ['// nothing but a comment'],
  ])('analyse() accepts %j', async (source) => {
    expect(await saidOf(source)).toEqual([])
  })

  test('analyse() reports every refused form of a cell, not the first only', async () => {
    expect(await saidOf('var a = 1\nenum B { C }\nconst d = async () => this')).toHaveLength(4)
  })

  test('analyse() keeps the names of a cell that it refuses, so that its readers are held back and not puzzled', async () => {
    const graph = await graphOf({ it: 'export const a = 1\nvar b = 2', reader: 'const c = a + b' })
    expect(said(graph, 'reader')).toEqual([])
    expect(graph.upstream.get('reader' as never)).toEqual(['it'])
  })
})

describe('analyse: text that cannot be read', () => {
  test.each([
    ['const a: = 3', '1:10', '"=" does not fit here.'],
    ['const a = 1\nconst b = ', '2:11', 'The cell ends too early'],
    ['const a = "open', '1:16', 'The text in quotes is not closed.'],
    ['const ρ = "日本" + )', '1:18', '")" does not fit here.'],
    ['const a = 1\n\nconst a = 2', '3:7', '"a" is declared twice in this cell'],
    ['let a = 1 b', '1:11', 'Here the statement should end'],
    ['function f() { await other }', '1:16', 'Cells are synchronous'],
    ['with (other) {}', '1:1', '"with" cannot be used'],
    ['new.target', '1:1', '"new.target" has no meaning'],
    ['const a = /(/', '1:11', 'Invalid regular expression'],
    ['#!/usr/bin/env node\nconst a = 1', '1:1', '"#!" does not fit here.'],
    ['"use strict"\nconst public = 1', '2:7', '"public" is a reserved word and cannot be used in cells.'],
    ['const arguments = 1', '1:7', 'Declarations with the name "arguments" cannot be used in cells.'],
    [`const a = ${Array(1200).fill('1').join('+')}`, '1:1', 'The cell is nested too deeply'],
    [`const a = ${'['.repeat(600)}${']'.repeat(600)}`, '1:1', 'Brackets are nested more than 500 deep.'],
  ])('analyse() places what is wrong with %j', async (source, place, sentence) => {
    const all = await saidOf(source)
    expect(all).toHaveLength(1)
    expect(all[0]).toContain(`${place} syntax error: ${sentence}`)
  })

  test('analyse() holds readers back while a cell is being typed instead of calling its names unknown', async () => {
    const graph = await graphOf({
      it: 'const a = 1\nconst { b, c: d } = other\nfunction f() {',
      other: 'const other = { b: 1, c: 2 }',
      reader: 'const x = a + b + d + f()',
    })
    expect(said(graph, 'it')).toHaveLength(1)
    expect(said(graph, 'reader')).toEqual([])
    expect(graph.cells[0]?.declares.map(({ name, line }) => `${name}@${line}`)).toEqual([
      'a@1',
      'b@2',
      'c@2',
      'd@2',
      'f@3',
    ])
  })

  test('analyse() never blames a readable cell for a name that an unreadable one seems to declare', async () => {
    const graph = await graphOf({ it: 'const a = (', well: 'const a = 1', reader: 'const b = a' })
    expect(said(graph, 'well')).toEqual([])
    expect(graph.owner.get('a')).toBe('well')
  })
})

describe('analyse: hidden state', () => {
  test('analyse() warns of a top-level function that changes a name of its cell', async () => {
    expect(await saidOf('let n = 0\nfunction next() { n += 1; return n }')).toEqual([
      '2:19 order warning: The function "next" changes "n", so what it returns depends on how often it was called before; return the value instead.',
    ])
    expect(await saidOf('let n = 0\nconst next = () => { const f = () => n++; return f() }')).toHaveLength(1)
    expect((await saidOf('let n = 0\nclass A { m() { n = 1 } }'))[0]).toContain('The class "A" changes "n"')
  })

  test('analyse() does not warn of a callback that adds up while the cell runs', async () => {
    expect(await saidOf('let sum = 0\nfor (const x of [1, 2]) sum += x\n;[1, 2].forEach((x) => { sum += x })')).toEqual(
      [],
    )
  })
})
