/** The checks on sentences, after ASD-STE100, in the order in which they are listed for readers. All are quiet: a house raises them. */
import type { Check } from './check.ts';
import { latinAbbreviation } from './wording/latin-abbreviation.ts';
import { limitMissing } from './wording/limit-missing.ts';
import { nameAmbiguous } from './wording/name-ambiguous.ts';
import { notImperative } from './wording/not-imperative.ts';
import { semicolon } from './wording/semicolon.ts';
import { sentenceLong } from './wording/sentence-long.ts';
import { textLong } from './wording/text-long.ts';
import { twoInstructions } from './wording/two-instructions.ts';
import { twoNames } from './wording/two-names.ts';
import { vagueWord } from './wording/vague-word.ts';

export const WORDING: readonly Check[] = [
  sentenceLong,
  textLong,
  twoInstructions,
  notImperative,
  vagueWord,
  latinAbbreviation,
  semicolon,
  limitMissing,
  twoNames,
  nameAmbiguous,
];
