import { expect, test } from 'vitest'
import { gatherDeclarations } from '../../../../kernel/cells/check/index.js'
import { declarations } from './notebook.js'

const files: Readonly<Record<string, string>> = {
  '/out/kernel/library/preloaded.d.ts':
    "import { u } from './units.js'\nexport declare const preloaded: { u: typeof u }\n",
  '/out/kernel/library/index.d.ts': "export { preloaded } from './preloaded.js'\n",
  '/out/kernel/library/units.d.ts': 'export declare const u: { m: number }\n//# sourceMappingURL=units.d.ts.map\n',
  '/ts/lib.es2023.d.ts': '/// <reference lib="es5" />\n',
  '/ts/lib.es5.d.ts': 'interface Array<T> { length: number }\n',
}
const sources = { buildFolder: '/out', typescriptFolder: '/ts', readFile: (path: string) => files[path] }

test('gatherDeclarations(sources) follows imports and library references, and nothing else', () => {
  const gathered = gatherDeclarations(sources)
  expect(gathered.preloadedPath).toBe('/kernel/library/preloaded.d.ts')
  expect(Object.keys(gathered.files).sort()).toEqual([
    '/kernel/library/index.d.ts',
    '/kernel/library/preloaded.d.ts',
    '/kernel/library/units.d.ts',
    '/lib/lib.es2023.d.ts',
    '/lib/lib.es5.d.ts',
  ])
  expect(gathered.files['/kernel/library/units.d.ts']).not.toContain('sourceMappingURL')
})

test('gatherDeclarations(sources) says what to build or install when files are missing', () => {
  expect(() => gatherDeclarations({ ...sources, buildFolder: '/none' })).toThrow('build the kernel')
  expect(() => gatherDeclarations({ ...sources, typescriptFolder: '/none' })).toThrow('install typescript 5.9.3')
})

test('gatherDeclarations(sources) leaves the page’s own types out of the kernel’s declarations', () => {
  expect(Object.keys(declarations.files).filter((path) => path.includes('lib.dom'))).toEqual([])
})
