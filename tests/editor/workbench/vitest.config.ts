import { defineConfig } from 'vitest/config';

/** The tests in a real editor: one after the other, for each starts a whole workbench. */
export default defineConfig({
  test: {
    root: new URL('../../..', import.meta.url).pathname,
    include: ['tests/editor/workbench/*.e2e.ts'],
    fileParallelism: false,
    // What comes after builds on what was before.
    bail: 1,
    testTimeout: 240_000,
    hookTimeout: 300_000,
    globalSetup: ['tests/editor/workbench/setup.ts'],
  },
});
