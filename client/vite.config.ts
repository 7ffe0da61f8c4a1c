import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/**
 * Builds the pages' scripts and styles. The server renders the pages and links what the manifest names; nothing is inlined,
 * so that the strict content policy needs no exception. Addresses are relative, so the server may serve the folder anywhere.
 */
export default defineConfig({
  root: here('.'),
  base: './',
  publicDir: false,
  worker: { format: 'es' },
  build: {
    outDir: here('../.build/client'),
    emptyOutDir: true,
    assetsDir: 'assets',
    assetsInlineLimit: 0,
    manifest: true,
    modulePreload: { polyfill: false },
    target: 'es2023',
    // The checker's TypeScript and the compiler load late, in workers; their size is known.
    chunkSizeWarningLimit: 6000,
    rolldownOptions: {
      checks: { pluginTimings: false },
      input: {
        sheet: here('entries/sheet.ts'),
        list: here('entries/list.ts'),
        methods: here('entries/methods.ts'),
        compare: here('entries/compare.ts'),
      },
    },
  },
})
