/** The checks on rules of the house and on waivers, in the order in which they are listed for readers. */
import type { Check } from './check.ts';
import { ruleBroken } from './rules/rule-broken.ts';
import { ruleNeverApplies } from './rules/rule-never-applies.ts';
import { waiverRefused } from './rules/waiver-refused.ts';
import { waiverUnused } from './rules/waiver-unused.ts';
import { waiverWithoutReason } from './rules/waiver-without-reason.ts';

export const RULES: readonly Check[] = [
  ruleBroken,
  ruleNeverApplies,
  waiverUnused,
  waiverWithoutReason,
  waiverRefused,
];
