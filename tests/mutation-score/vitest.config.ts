/** The tests that a change in the code under test is shown to: quick ones that speak about behaviour. */
import { defineConfig } from 'vitest/config';

const asked = process.env.DOWEL_SCORE_TESTS?.split(',');

export default defineConfig({
  test: {
    include: asked ?? [
      'tests/language/**/*.test.ts',
      'tests/demo/**/*.test.ts',
      'tests/grammar/**/*.test.ts',
    ],
    testTimeout: 120_000,
    pool: 'threads',
    maxWorkers: 1,
  },
});
