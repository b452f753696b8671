/**
 * Every state word on every kind of thing that it can be said of (LANGUAGE.md, "States, claims and conditions"): what is so
 * at the start, what makes it so, and what a claim at the start makes so. Each is asked by `if`, with a marker that comes
 * off where the answer is yes, and by `ends with`.
 */
import { expect, test } from 'vitest';
import { found, jobText, machineOf } from './courses.ts';

const machine = machineOf(`machine m "M" {
  part bed "bed" fixed
  part marker "marker" on bed
  part lid "lid" on bed  opens bath
  part pads "pads" x2 on bed
  seal ring "ring" on bed
  fastener nuts "nuts" x2  on bed  plan { 10 N·m; 22 N·m }
  connection hose "hose" joins lid to bed
  control knob "knob" in air  normally off
  control flap "flap" on bed  normally closed
  isolator breaker "breaker" in mains
  system mains "mains" live 400 V  isolated at breaker  proved with tester
  system air "air" pressure 3 bar
  system bath "bath" holds 2 L oil  temperature 90 °C  needs bleeding
  fluid oil "oil"
  face rim "rim" on bed
  tool jack "jack"
  tool tester "tester"
}
`);

/** What the steps make of it: the word is said of the thing before them, and after them. */
const ROWS: readonly (readonly [claim: string, before: boolean, after: boolean, steps: string])[] = [
  ['lid fitted', true, false, 'remove lid'],
  ['lid fitted', true, true, 'move aside lid'],
  ['lid fitted', true, true, 'remove lid; trial fit lid'],
  ['lid fitted', true, false, 'remove lid and discard'],
  ['pads fitted', true, false, 'remove pads #2'],
  ['lid off', false, true, 'remove lid'],
  ['lid off', false, true, 'remove lid and discard'],
  ['lid off', false, false, 'move aside lid'],
  ['pads off', false, false, 'remove pads #1'],
  ['pads #1 off', false, true, 'remove pads #1'],
  ['lid aside', false, true, 'move aside lid'],
  ['lid aside', false, false, 'remove lid'],
  ['lid marked', false, true, 'mark lid'],
  ['lid new', false, true, 'remove lid; fit new lid'],
  ['lid supported', false, true, 'support lid'],
  ['lid raised', false, true, 'raise lid'],
  ['lid supported', false, false, 'support lid; lower lid'],
  ['lid locked', false, true, 'lock lid'],
  ['lid unlocked', true, false, 'lock lid'],
  ['ring fitted', true, false, 'remove ring'],
  ['ring off', false, true, 'remove ring'],
  ['ring new', false, true, 'remove ring; fit new ring'],
  ['nuts fitted', true, false, 'remove nuts'],
  ['nuts fitted', true, true, 'loosen nuts'],
  ['nuts off', false, true, 'remove nuts'],
  ['nuts off', false, false, 'loosen nuts'],
  ['nuts loose', false, true, 'loosen nuts'],
  ['nuts loose', false, true, 'remove nuts; fit nuts by hand'],
  ['nuts loose', false, false, 'loosen nuts; tighten nuts stage 1'],
  ['nuts hand-tight', false, true, 'remove nuts; fit nuts by hand'],
  ['nuts hand-tight', false, false, 'loosen nuts'],
  ['nuts tight', true, false, 'loosen nuts'],
  ['nuts tight', true, false, 'loosen nuts; tighten nuts stage 1'],
  ['nuts tight', true, true, 'loosen nuts; tighten nuts'],
  ['nuts new', false, true, 'remove nuts; fit new nuts'],
  ['hose connected', true, false, 'disconnect hose'],
  ['hose connected', true, false, 'disconnect hose; cap hose'],
  ['hose disconnected', false, true, 'disconnect hose'],
  ['hose disconnected', false, true, 'disconnect hose; cap hose'],
  ['hose capped', false, true, 'disconnect hose; cap hose'],
  ['hose capped', false, false, 'disconnect hose'],
  ['hose open', false, true, 'open hose'],
  ['hose closed', true, false, 'open hose'],
  ['knob on', false, true, 'switch on knob'],
  ['knob off', true, false, 'switch on knob'],
  ['knob open', false, true, 'open knob'],
  ['knob closed', true, false, 'open knob'],
  ['knob locked', false, true, 'lock out knob'],
  ['flap open', false, true, 'open flap'],
  ['flap closed', true, false, 'open flap'],
  ['flap off', false, true, 'remove flap'],
  ['flap off', false, false, 'open flap'],
  ['breaker on', true, false, 'switch off breaker'],
  ['breaker off', false, true, 'isolate mains'],
  ['breaker locked', false, true, 'isolate mains; lock out breaker'],
  ['breaker unlocked', true, false, 'isolate mains; lock out breaker'],
  ['mains live', true, false, 'isolate mains'],
  ['mains on', true, false, 'isolate mains'],
  ['mains off', false, true, 'switch off breaker'],
  ['mains isolated', false, true, 'isolate mains'],
  ['mains safe', false, true, 'isolate mains; prove mains safe'],
  ['mains safe', false, false, 'isolate mains; prove mains safe; restore mains'],
  ['air pressurised', true, false, 'relieve air'],
  ['air pressurised', true, true, 'relieve air; pressurise air'],
  ['air relieved', false, true, 'relieve air'],
  ['bath full', true, false, 'drain bath'],
  ['bath full', true, false, 'let cool bath; remove lid'],
  ['bath drained', false, true, 'drain bath'],
  ['bath drained', false, false, 'let cool bath; remove lid'],
  ['bath hot', true, false, 'let cool bath'],
  ['bath cool', false, true, 'let cool lid'],
  ['bath bled', true, false, 'drain bath; fill bath'],
  ['bath bled', true, true, 'drain bath; fill bath; bleed bath'],
  ['rim clean', false, true, 'clean rim'],
  ['rim dirty', true, false, 'clean rim'],
  ['jack fitted', false, true, 'fit jack'],
  ['jack off', true, false, 'fit jack'],
];
/** A machine in working order is so; no claim at the start makes a thing be what it is not said of. */
const ASKED = /^(left-off marker|contract-broken )/;

const asked = (steps: readonly string[], headers = '') =>
  found(machine, jobText(steps, headers))
    .map((line) => line.replace(/^\d+ /, ''))
    .filter((line) => ASKED.test(line));

const question = (claim: string) => {
  const words = claim.split(' ');
  return [
    `if ${claim} {`,
    'remove marker',
    '}',
    `if ${words.slice(0, -1).join(' ')} not ${words.at(-1)} {`,
    'clean bed',
    '}',
  ];
};

test.each(ROWS)('%s: %s before and %s after `%s`', (claim, before, after, row) => {
  const steps = row.split('; ');
  const yes = ['left-off marker'];
  expect(asked(question(claim))).toEqual(before ? yes : []);
  expect(asked([...steps, ...question(claim)])).toEqual(after ? yes : []);
  const broken = (is: boolean) => (is ? [] : [expect.stringContaining('contract-broken')]);
  expect(asked(['clean bed'], `ends with ${claim}`)).toEqual(broken(before));
  expect(asked(steps, `ends with ${claim}`)).toEqual(broken(after));
  // What a claim says of the start is so.
  expect(asked(question(claim), `starts with ${claim}`)).toEqual(yes);
  // And the other way round.
  const words = claim.split(' ');
  const not = [`if ${words.slice(0, -1).join(' ')} not ${words.at(-1)} {`, 'remove marker', '}'];
  expect(asked([...steps, ...not])).toEqual(after ? [] : yes);
});

test('what is claimed for several things is asked of each, of positions by name, and not of what is left out', () => {
  expect(asked(['remove pads #1'], 'ends with pads, lid off')).toEqual([
    'contract-broken pads#2 {state off, side ends}',
    'contract-broken lid {state off, side ends}',
  ]);
  expect(asked(['remove pads #1'], 'ends with pads off except pads #2')).toEqual([]);
  expect(asked(['remove lid'], 'ends with everything off except lid, marker')).toEqual([]);
});
