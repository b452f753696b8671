import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    // Only what hangs is ended: machines are busy, and no test is about time.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    pool: 'threads',
    maxWorkers: 2,
  },
});
