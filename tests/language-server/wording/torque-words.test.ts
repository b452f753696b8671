/**
 * Torques in sentences for technicians: which one is the value to tighten to. The sentences are written for this test
 * in the manner of shop manuals; common practice, no source. Pairs of units after NIST SP 811.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  asksForTorque,
  isVaguelyTight,
  saysWhichWins,
  secondsIn,
  tellsAngleByMarks,
  tellsWhere,
  torquesIn,
} from '../../../language-server/wording/torque-words.ts';

const roles = (sentence: string) =>
  torquesIn(sentence).map(({ from, to, role }) => `${role} ${sentence.slice(from, to)}`);

describe('roles', () => {
  test.each([
    ['Tighten the nuts to 80 N·m.', ['value 80 N·m']],
    ['Torque: 59 ft-lb (80 N·m).', ['value 59 ft-lb', 'second 80 N·m']],
    ['Pull to 70..90 N·m with the long socket.', ['value 70..90 N·m']],
    ['Clean the seat. Pull to 80 N·m.', ['value 80 N·m']],
    ['Do not go over 80 N·m.', ['other 80 N·m']],
    ['Never more than 80 N·m.', ['other 80 N·m']],
    ['Set the wrench to 80 N·m.', ['other 80 N·m']],
    ['Go on turning at 5 N·m. Then pull to 80 N·m.', ['other 5 N·m', 'other 80 N·m']],
    ['Nothing above 5 N·m turns it; pull to 80 N·m.', ['other 5 N·m', 'value 80 N·m']],
    ['Hold the bolt with a 17 mm spanner.', []],
    ['The torque stands on the plate.', []],
    ['', []],
  ])('%s', (sentence, expected) => {
    expect(roles(sentence)).toEqual(expected);
  });
});

describe('second units', () => {
  const pairs = (sentence: string) =>
    secondsIn(sentence).map(({ first, second }) => [
      sentence.slice(first.from, first.to),
      sentence.slice(second.from, second.to),
    ]);
  test.each([
    ['12..15 psi (83..103 kPa)', [['12..15 psi', '83..103 kPa']]],
    [
      '80 lbf·ft (110 N·m) and 6 mm (1/4 in)',
      [
        ['80 lbf·ft', '110 N·m'],
        ['6 mm', '1/4 in'],
      ],
    ],
    // Another thing in brackets is no second unit: another kind, the same unit, words.
    ['1.2 L (1.1 kg)', []],
    ['80 N·m (90 N·m)', []],
    ['80 lbf·ft (110 N·m at the latest)', []],
    ['80 lbf·ft, 110 N·m', []],
  ])('%s', (sentence, expected) => {
    expect(pairs(sentence)).toEqual(expected);
  });
});

describe('what a sentence asks for and tells', () => {
  test.each([
    [asksForTorque, ['Torque the nuts.', 'To the specified torque.'], ['Tighten the nuts.', 'Turn it.']],
    [
      isVaguelyTight,
      ['Tighten securely.', 'Make it firmly tight.'],
      ['Tighten by hand.', 'Insecure lids fall.'],
    ],
    [
      tellsWhere,
      [
        'To the value on the plate.',
        'See chapter 4.',
        'As in table 3.',
        "The maker's value.",
        'To {tight}.',
        '30 N·m',
      ],
      ['To the specified torque.', 'Tighten securely.'],
    ],
    [
      tellsAngleByMarks,
      ['Mark the heads.', 'A quarter turn.', 'One flat.'],
      ['With the gauge.', 'To the stop.'],
    ],
    [
      saysWhichWins,
      ['Whichever comes first.', 'But not over the mark.', 'Stop when it binds.'],
      ['The hub binds.', 'The ring is flat.'],
    ],
  ])('%o', (asks, yes, no) => {
    expect(yes.filter((sentence) => !asks(sentence))).toEqual([]);
    expect(no.filter((sentence) => asks(sentence))).toEqual([]);
  });
});

test('any text is read, and the places lie in it', () => {
  const text = fc.string({ unit: 'grapheme', maxLength: 60 });
  const quantity = fc.constantFrom('80 N·m', '59 ft-lb', '(80 N·m)', '6 mm', ' not over ', '80 Nm)', '½ in');
  fc.assert(
    fc.property(fc.array(fc.oneof(text, quantity), { maxLength: 6 }), (pieces) => {
      const sentence = pieces.join('');
      for (const { from, to } of torquesIn(sentence)) {
        expect(from).toBeGreaterThanOrEqual(0);
        expect(to).toBeGreaterThan(from);
        expect(to).toBeLessThanOrEqual(sentence.length);
      }
      secondsIn(sentence);
    }),
    { seed: 45, numRuns: 500 },
  );
});
