import { defineConfig } from 'vitest/config'

/**
 * Journeys in a real Chromium (playwright's library). Each file starts a server and a browser; two at a time, because a journey waits more
 * than it works.
 */
export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/browser/**/*.spec.ts'],
    environment: 'node',
    pool: 'forks',
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // A busy machine can delay a key or a frame past what a person would wait; a journey that fails twice has a fault. Retries are reported.
    retry: 1,
  },
})
