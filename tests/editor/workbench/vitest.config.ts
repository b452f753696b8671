import { defineConfig } from 'vitest/config';

/** The tests in a real editor: one after the other, for each starts a whole workbench. */
export default defineConfig({
  test: {
    root: new URL('../../..', import.meta.url).pathname,
    include: ['tests/editor/workbench/*.e2e.ts'],
    fileParallelism: false,
    // What comes after builds on what was before.
    bail: 1,
    // They wait for things, not for a time: these limits are for a machine that is busy with other work.
    testTimeout: 900_000,
    hookTimeout: 600_000,
    expect: { poll: { timeout: Number(process.env.DOWEL_WAIT ?? 240) * 1000, interval: 200 } },
    globalSetup: ['tests/editor/workbench/setup.ts'],
  },
});
