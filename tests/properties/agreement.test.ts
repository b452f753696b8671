/**
 * All cases at once against each case alone: for random machines and procedures, every finding is given in
 * exactly the cases in which checking that case alone gives it. The shape of the claim is that of family-based
 * against product-based analysis (Thüm, Apel, Kästner, Schaefer, Saake, "A classification and survey of
 * analysis strategies for software product lines", ACM Computing Surveys 47(1), 2014).
 */
import { describe, expect, it } from 'vitest';
import { compare } from './each-case.ts';

/** All 2,000 and 50 of them in the long run; a share of them in the normal one. */
const LONG = process.env.DOWEL_LONG === '1';

describe('all cases at once agree with each case alone', () => {
  for (const [axes, jobs] of [
    [6, LONG ? 2_000 : 400],
    [12, LONG ? 50 : 4],
  ] as const) {
    it(`on random jobs with up to ${axes} axes`, { timeout: 1_200_000 }, () => {
      let total = 0;
      let findings = 0;
      const disagreements: string[] = [];
      for (let seed = 1; seed <= jobs; seed++) {
        const result = compare(seed + axes * 100_000, axes);
        total += result.cases;
        findings += result.findings;
        disagreements.push(...result.disagreements);
      }
      console.log(
        `${jobs} jobs with up to ${axes} axes: ${total} cases, ${findings} findings, ${disagreements.length} disagreements`,
      );
      expect(disagreements.slice(0, 10)).toEqual([]);
      expect(findings).toBeGreaterThan(jobs);
    });
  }
});
