/**
 * What the sentence of a notice says. The parts are those of ANSI Z535.6 and IEC/IEEE 82079-1 (what happens, how to avoid
 * it); the sentences were written for these tests, their parts told by hand. Rule 5.5 of ASD-STE100: a note never
 * instructs.
 */
import { describe, expect, test } from 'vitest';
import { instructionsIn, noticeParts } from '../../../language-server/hazards/index.ts';

const VERBS = new Set(
  'remove open drain let turn clean fit refit tighten lower support check oil grease lock'.split(' '),
);

describe('parts of a notice', () => {
  test.each([
    ['Air at 10 bar throws grit into the eyes. Open the cock slowly.', true, true],
    ['Oil at 160 bar goes through the skin. Keep your hands away.', true, true],
    ['Wear gloves.', false, true],
    ['The head is hot.', true, false],
    ['Do not touch the terminals.', false, true],
    ['Do not touch the terminals: the shock kills.', true, true],
    ['Before you open the cap, let the engine cool. Steam scalds.', true, true],
    ['A falling motor crushes hands.', true, false],
    ['The guard must stay on.', true, true],
    ['Lower the cover with care: it can damage the studs.', true, true],
    ['Open flames ignite the vapour.', true, false],
    ['Drain water is hot.', true, false],
    ['Moisture in the system damages it.', true, false],
    ['When the engine runs, the fan cuts.', true, false],
    ['If the gauge does not read zero, stop.', false, true],
  ])('%s', (sentence, consequence, avoidance) => {
    expect(noticeParts(sentence, VERBS).avoidance).toBe(avoidance);
    if (consequence) expect(noticeParts(sentence, VERBS).consequence).toBe(true);
  });

  test('a command alone tells no consequence', () => {
    expect(noticeParts('Wear gloves.', VERBS).consequence).toBe(false);
    expect(noticeParts('Keep clear. Use the sling.', VERBS).consequence).toBe(false);
  });
});

describe('instructions', () => {
  const verbs = new Map([
    ...[...VERBS].map((verb): [string, string] => [verb, verb]),
    ['grease', 'lubricate'],
    ['take off', 'remove'],
  ]);
  const startsWithName = (rest: string) => /^packing|^head bolts/i.test(rest);
  const told = (sentence: string) => instructionsIn(sentence, verbs, startsWithName).map(({ verb }) => verb);

  test.each([
    ['Grease the packing groove, fit new packing and a new gasket.', ['lubricate', 'fit']],
    ['Tighten the head bolts again after a day.', ['tighten']],
    ['Take off the cover.', ['remove']],
    ['If the gasket is torn, fit a new one.', ['fit']],
    ['Tighten head bolts.', ['tighten']],
    ['The belt settles in the first hour.', []],
    ['Oil at 80 °C burns.', []],
    ['Open flames are forbidden.', []],
    ['Never open the lid.', []],
    ['The pump is easier to fit with two people.', []],
    ['Clean oil is clear.', []],
  ])('%s', (sentence, wanted) => expect(told(sentence)).toEqual(wanted));
});
