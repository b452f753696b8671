/**
 * Commands and second instructions. Sources: ASD-STE100 rules 5.2 and 5.3 and the exceptions of 5.2 (numbers as in issue 9,
 * seen second hand in tests/outside/ste-rules.csv); the sentences marked STE are its published pairs, from memory. The
 * others are everyday sentences: common practice, no source.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ALL_CHECKS } from '../../../language-server/checks/all.ts';
import {
  approximateIn,
  isInstruction,
  notImperativeIn,
  secondInstructionIn,
} from '../../../language-server/wording/index.ts';

describe('an instruction', () => {
  test.each([
    ['Remove the cover.', true],
    ['Slowly open the valve.', true],
    ['Do not turn the shaft.', true],
    ['Keep clear of the rope.', true],
    ['If the ring is worn, renew it.', true],
    ['Look along the rope.', true],
    ['Oil at 80 °C burns.', false],
    ['Oil the thread.', true],
    ['Drain water is hot.', false],
    ['Work on live parts kills.', false],
    ['The screw has a left-hand thread.', false],
    ['On bolt 1, its anvil touching the head.', false],
    ['Clockwise.', false],
    ['', false],
  ])('%s: %s', (sentence, expected) => {
    expect(isInstruction(sentence)).toBe(expected);
  });
});

describe('a second instruction (rule 5.2)', () => {
  test.each([
    // STE, from memory: to be written as two sentences.
    ['Set the TEST switch to the middle position and release the SHORT-CIRCUIT TEST switch.', 'release'],
    ['Remove the four bolts, then lift off the cover.', 'lift'],
    ['Add the rest of the other cover and put one half on each.', 'put'],
    ['If it leaks, drain the sump and renew the ring.', 'renew'],
    // Exceptions: close pairs, at the same time, a result or limit right after a measurement.
    ['Remove and discard the gasket.', undefined],
    ['Hold the bolt and install the nut.', undefined],
    ['Turn the shaft while you tighten the nut.', undefined],
    ['Measure the gap and record the value.', undefined],
    ['Read the gauge and make sure that it shows zero.', undefined],
    // One instruction only.
    ['Tighten the nut and the bolt.', undefined],
    ['Do not lift the cover and turn the shaft.', undefined],
    ['Take the average.', undefined],
    ['The leads are long enough, and the plug is marked.', undefined],
    ['When the light comes on, set the switch to NORMAL.', undefined],
    ['Lower the cover onto its dowels, a little at each bolt in turn.', undefined],
    ['Use the long bar and a block of wood.', undefined],
    ['Clean the face with a rag, a brush and paint thinner.', undefined],
    ['', undefined],
  ])('%s', (sentence, verb) => {
    const found = secondInstructionIn(sentence);
    expect(found?.verb).toBe(verb);
    if (found) expect(sentence.slice(found.from).toLowerCase().startsWith(verb!)).toBe(true);
  });
});

describe('an instruction that is no command (rule 5.3)', () => {
  test.each([
    // STE, from memory.
    ['The test can be continued.', 'can be continued'],
    ['Oil and grease are to be removed with a degreasing agent.', 'are to be removed'],
    ['Continue the test.', undefined],
    ['Remove oil and grease with a degreasing agent.', undefined],
    ['The bolts must then be tightened.', 'must then be tightened'],
    ['The mechanic should clean the face.', 'The mechanic should clean'],
    ['You must check the oil first.', 'You must check'],
    // States and conditions.
    ['The valve must be closed.', undefined],
    ['The mark must be at the top.', undefined],
    ['If the bolts are to be tightened again, oil them.', undefined],
    ['The cover can be seen from the deck.', undefined],
    ['You must have a clean bench.', undefined],
    ['', undefined],
  ])('%s', (sentence, words) => {
    expect(notImperativeIn(sentence)?.words).toBe(words);
  });
});

describe('a value without limits', () => {
  test.each([
    ['Set the gap to about 0.3 mm.', 'about 0.3 mm'],
    ['Tighten it to approximately 20 N·m.', 'approximately 20 N·m'],
    ['Set the gap to 0.3 ± 0.05 mm.', undefined],
    ['The oil runs for about 5 min.', undefined],
    ['Look about 3 times.', undefined],
  ])('%s', (sentence, words) => {
    expect(approximateIn(sentence)?.words).toBe(words);
  });
});

test('every rule that a check names is one of the standard, with its issue', () => {
  const rules = new Set(
    readFileSync(new URL('../../outside/ste-rules.csv', import.meta.url), 'utf8')
      .split('\n')
      .slice(1)
      .flatMap((line) => line.split(',')[0]!.split('/')),
  );
  const named = ALL_CHECKS.filter(({ source }) => source.includes('ASD-STE100'));
  expect(named.length).toBeGreaterThan(8);
  for (const { name, source } of named) {
    const numbers = [...source.matchAll(/rules? ((?:(?:GR-)?\d+(?:\.\d+)?(?: and |, )?)+)/g)].flatMap(
      (match) => match[1]!.split(/ and |, /),
    );
    for (const number of numbers) expect(rules.has(number), `${name}: rule ${number}`).toBe(true);
    if (numbers.length > 0 && source.includes('issue')) expect(source).toMatch(/issue \d/);
  }
});
