/** Right procedures are right for both executions; on one half of their mutants the two agree (see agreement.ts). */
import { describe, it } from 'vitest';
import { expectAgreement, expectRightForOracle, expectRightForProduct, RIGHT } from './agreement.ts';

describe('right procedures', () => {
  it.each(RIGHT)('%s is right for the oracle', expectRightForOracle);
  it.each(RIGHT)('%s is right for the product', expectRightForProduct);
});

describe('spoiled procedures, first half', () => {
  it.each(RIGHT)('%s: product and oracle agree', { timeout: 1_200_000 }, (path) =>
    expectAgreement(path, 0, 2),
  );
});
