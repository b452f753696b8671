/** The samples of the design before and after, and the same when their line breaks and indents are lost. */
import { describe, expect, test } from 'vitest';
import { formatText } from '../../../grammar/format/format.ts';
import { expectLayoutHolds } from './holds.ts';
import { samples } from './samples.ts';

describe.each(samples)('the sample of a $name', ({ typed, laidOut }) => {
  test('is laid out as read through by hand', () => {
    expect(expectLayoutHolds(typed)).toBe(laidOut);
  });

  test('does not change again', () => {
    expect(formatText(laidOut)).toBe(laidOut);
  });

  test('comes out the same from a text without indents', () => {
    expect(formatText(laidOut.replace(/^ +/gm, ''))).toBe(laidOut);
  });

  test('comes out the same from a text with tabs, trailing blanks and other line ends', () => {
    const typedElsewhere = laidOut.replace(/^ {2}/gm, '\t').replace(/\n/g, ' \t\r\n');
    expect(formatText(`\uFEFF${typedElsewhere}`)).toBe(laidOut);
  });

  test('comes out the same with every run of empty lines three times as long', () => {
    expect(formatText(laidOut.replace(/\n\n/g, '\n\n\n\n\n\n'))).toBe(laidOut);
  });
});
