import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const source = (name: string) =>
  fileURLToPath(new URL(`./packages/${name}/src/index.ts`, import.meta.url));

// Tests run on the sources, so that a fault shows its own line.
export default defineConfig({
  resolve: {
    alias: {
      '@stripwright/nesting': source('nesting'),
      '@stripwright/strip-geometry': source('strip-geometry'),
    },
  },
  test: {
    include: ['packages/*/src/**/*.test.ts'],
    setupFiles: ['vitest.setup.ts'],
    testTimeout: 120_000,
  },
});
