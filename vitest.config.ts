import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const source = (name: string, file = 'index.ts') =>
  fileURLToPath(new URL(`./packages/${name}/src/${file}`, import.meta.url));

// Tests run on the sources, so that a fault shows its own line.
export default defineConfig({
  resolve: {
    alias: {
      '@stripwright/nesting/worker': source('nesting', 'worker/index.ts'),
      '@stripwright/nesting': source('nesting'),
      '@stripwright/strip-geometry': source('strip-geometry'),
    },
  },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'packages/*/bench/**/*.test.js'],
    setupFiles: ['vitest.setup.ts'],
    testTimeout: 120_000,
    // How many large random problems packages/nesting plans: SOAK=10000 for a long look.
    provide: { largeProblems: Number(process.env.SOAK ?? 1_500) },
  },
});
