// The table of DEVELOPERS.md ("who may import whom") as rules; CI fails on another edge or a cycle.
const inside = (folder) => `^${folder}/`
const only = (name, from, allowed, also = {}) => ({
  name,
  severity: 'error',
  from: { path: inside(from) },
  to: {
    pathNot: [inside(from), ...allowed.map((path) => (path.includes('node_modules') ? path : inside(path)))],
    ...also,
  },
})
const library = (...names) => names.map((name) => `node_modules/(@types/)?${name}(/|$)`)

module.exports = {
  forbidden: [
    {
      name: 'no-cycle',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    { name: 'nothing-imports-tests', severity: 'error', from: { pathNot: '^tests/' }, to: { path: '^tests/' } },
    {
      name: 'no-node-in-pure-layers',
      severity: 'error',
      from: {
        path: '^(shared|kernel/library|client|kernel/cells/(program|analyse|check|compile|order|evaluate|host-browser))/',
        // Both run at build time only.
        pathNot: ['^kernel/cells/evaluate/bundle\\.mjs$', '^client/vite\\.config\\.ts$'],
      },
      to: { dependencyTypes: ['core'] },
    },
    only('contracts', 'shared/contracts', library('zod')),
    only('rendering', 'shared/rendering', [
      'shared/contracts',
      ...library('@observablehq', 'micromark.*', 'temml', 'mdast.*'),
    ]),
    only('kernel-library', 'kernel/library', ['shared/contracts', 'node_modules/']),
    only('kernel-cells', 'kernel/cells', ['shared/contracts', 'kernel/library', 'node_modules/'], {
      dependencyTypesNot: ['core'],
    }),
    { name: 'server', severity: 'error', from: { path: '^server/' }, to: { path: '^client/' } },
    { name: 'client', severity: 'error', from: { path: '^client/' }, to: { path: '^server/' } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^\\.build' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.js', '.json', '.d.ts'],
    },
  },
}
