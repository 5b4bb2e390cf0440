// How vitest finds and runs the tests. Those in a real editor have a runner of their own in test/editor.

import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/editor/**', 'node_modules/**'],
    setupFiles: ['test/seed.ts'],
    // Bundles are built and git repositories made inside some tests, on machines of two cores.
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
