import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

/** Unit, published, property, pipeline, API and documentation tests; browser journeys run in their own project. */
export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    environment: 'node',
    pool: 'forks',
    // Every core works, and the files of a worker share their modules: importing the kernel anew for each file took longer than the tests.
    maxWorkers: availableParallelism(),
    isolate: false,
    testTimeout: 20_000,
  },
})
