/**
 * Sentences and words as ASD-STE100 counts them. Source: an account of the counting rules of issue 9, seen second hand: a
 * number with its unit, an abbreviation, an identifier, a quoted label and a hyphenated group are one word each; text in
 * brackets is one word of its sentence and a sentence of its own. Where sentences end: common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { countWords, sentencesIn } from '../../../language-server/wording/index.ts';

describe('words', () => {
  test.each([
    ['Remove the six bolts.', 4],
    ['Tighten the nuts to 25 N·m.', 5],
    ['Tighten the nuts to 18 lbf·ft (25 N·m).', 6],
    ['Set the pressure to 2.5 bar for 1 h 30 min.', 7],
    ['Disconnect the connector 36L7 from the LRU.', 7],
    ['Push the "MAIN PUMP OFF" button.', 4],
    ['Clean the oil-soaked low-pressure filter.', 5],
    ['Install the cover (refer to the figure on the next page).', 4],
    ['The belt gives {belt-give} in the middle.', 7],
    ['Turn it 1/4 turn, then stop.', 5],
    ['— …', 0],
    ['', 0],
  ])('%s', (sentence, words) => {
    expect(countWords(sentence)).toBe(words);
  });
});

describe('sentences', () => {
  test.each([
    ['One sentence', ['One sentence']],
    ['Let it cool. Then drain it.', ['Let it cool.', 'Then drain it.']],
    ['Is it dry? Good! Go on.', ['Is it dry?', 'Good!', 'Go on.']],
    ['See fig. 3 for the order.', ['See fig. 3 for the order.']],
    ['It carries 325 V d.c. between the pins.', ['It carries 325 V d.c. between the pins.']],
    ['Fill in approx. 2.5 L of oil.', ['Fill in approx. 2.5 L of oil.']],
    ['The end is marked a. Turn it.', ['The end is marked a. Turn it.']],
    ['It gives 8.5 mm.', ['It gives 8.5 mm.']],
    [
      'Fit it (the tab is at the motor) now.',
      ['Fit it (the tab is at the motor) now.', 'the tab is at the motor'],
    ],
    ['Fit it (25 N·m).', ['Fit it (25 N·m).']],
    ['. . .', []],
    ['', []],
  ])('%s', (text, expected) => {
    const found = sentencesIn(text);
    expect(found.map((one) => one.text)).toEqual(expected);
    for (const { text: sentence, from, to } of found) expect(text.slice(from, to)).toBe(sentence);
  });
});
