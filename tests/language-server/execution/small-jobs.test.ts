/**
 * Small jobs on one machine, each with what is wrong in it or its right twin. What is right is said by grammar/STATE.md:
 * what each verb needs and does, what a claim of the header asks.
 */
import { describe, expect, test } from 'vitest';
import { checkTexts } from '../../../language-server/checks/check-texts.ts';

const MACHINE = `machine m "M" {
  part bed "bed" fixed
  part cover "cover" on bed  held by bolts
  fastener bolts "bolts" x4  thread M8x1.25  order across  plan { 10 N·m; 22 N·m }
  part lever "lever" on bed  held by nuts
  fastener nuts "nuts" x2  thread M6x1  torque 8 N·m
  part rider "rider" on cover
  system mains "mains" live 400 V  isolated at switch
  isolator switch "main switch" in mains
  system air "air" pressure 8 bar  relieved at valve
  control valve "valve" normally open in air
  system bath "bath" holds 2 L oil  temperature 80 °C
  fluid oil "oil"
}
`;
/** Checks on the course of the job; others speak of lists, notices and words, which are left out here for short. */
const COURSE = new Set(
  `contract-broken left-loose left-off left-aside wrong-verb thrown-away-with tightened-unseated stage-skipped still-held
  stage-repeated refitted-before-removed restored-out-of-order discarded-reused left-isolated left-locked done-twice`.split(
    /\s+/,
  ),
);

function found(job: string): string[] {
  const { findings } = checkTexts({ 'a.dowel': `${MACHINE}procedure p "Job" for m ${job}\n` }, 'a.dowel');
  return findings.map(({ check }) => check).filter((check) => check === 'syntax' || COURSE.has(check));
}

describe('what the header says of the end', () => {
  test.each([
    ['air pressurised', 'clean bed', []],
    ['air pressurised', 'relieve air', ['contract-broken']],
    ['air relieved', 'relieve air', []],
    ['bath hot', 'clean bed', []],
    ['bath hot', 'let cool bath', ['contract-broken']],
    ['bath cool', 'let cool bath', []],
    ['mains live', 'clean bed', []],
    ['mains isolated', 'switch off switch', []],
    ['lever off', 'remove nuts\nremove lever', []],
  ])('%s after %s', (claim, steps, expected) => {
    expect(found(`ends with ${claim} {\n${steps}\n}`)).toEqual(expected);
  });
});

describe('what the steps do', () => {
  test.each([
    ['tight by a share of the torque', 'loosen bolts\ntighten bolts to 50 %', ['left-loose']],
    ['tight by all of it', 'loosen bolts\ntighten bolts to 100 %', []],
    ['one stage only', 'loosen bolts\ntighten bolts stage 1', ['left-loose']],
    ['all stages', 'loosen bolts\ntighten bolts stage 1\ntighten bolts stage 2', []],
    ['the second stage alone', 'loosen bolts\ntighten bolts stage 2', ['stage-skipped']],
    ['all but one, and these again', 'loosen bolts except bolts #1\ntighten bolts #2..#4', []],
    ['all but one, and that one', 'loosen bolts except bolts #1\ntighten bolts #2..#3', ['left-loose']],
    ['a locked switch is moved', 'switch off switch\nlock out switch\nswitch on switch', ['wrong-verb']],
    ['unlocked before', 'switch off switch\nlock out switch\nunlock switch\nswitch on switch', []],
    ['a valve as it stands is opened', 'open valve', ['refitted-before-removed']],
    ['taken off against its nuts', 'remove lever\nrefit lever', ['still-held']],
    ['taken off and put back', 'remove nuts\nremove lever\nrefit lever\nrefit nuts', []],
    ['nuts left loose', 'remove nuts\nremove lever\nrefit lever\nrefit nuts\nloosen nuts', ['left-loose']],
    [
      'thrown away with what sits on it',
      'remove bolts\nremove cover and discard\nfit new cover\nrefit bolts',
      ['thrown-away-with'],
    ],
  ])('%s', (_, steps, expected) => {
    expect(found(`{\n${steps}\n}`)).toEqual(expected);
  });
});
