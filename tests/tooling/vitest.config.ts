import { defineConfig } from 'vitest/config'

/** Unit, published, property, pipeline, API and documentation tests; browser journeys run in their own project. */
export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    environment: 'node',
    pool: 'forks',
    testTimeout: 20_000,
  },
})
