import { defineConfig } from 'vitest/config'

/**
 * Journeys in a real Chromium (playwright's library). One file at a time, because each starts a server and a browser,
 * and two keep two cores so busy that keys come late.
 */
export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/browser/**/*.spec.ts'],
    environment: 'node',
    pool: 'forks',
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // A busy machine can delay a key or a frame past what a person would wait; a journey that fails twice has a fault. Retries are reported.
    retry: 1,
  },
})
