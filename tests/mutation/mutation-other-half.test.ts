/** The other half of the mutants: a file of its own, so that both halves run side by side (see agreement.ts). */
import { describe, it } from 'vitest';
import { expectAgreement, RIGHT } from './agreement.ts';

describe('spoiled procedures, other half', () => {
  it.each(RIGHT)('%s: product and oracle agree', { timeout: 1_200_000 }, (path) =>
    expectAgreement(path, 1, 2),
  );
});
