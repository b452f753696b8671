/**
 * Signal words against the published definitions. Sources: ANSI Z535.6 and ISO 3864-2:2016 (danger, warning, caution:
 * high, medium, low risk; notice: not about injury), MIL-STD-38784 (warning: injury or death, caution: equipment, no
 * danger), ASD-STE100 (warning: people, caution: objects). All seen
 * second hand.
 */
import { describe, expect, test } from 'vitest';
import { HARM_WORDS } from '../../../grammar/tokens/clauses.ts';
import {
  HARMS,
  isHarm,
  isMilder,
  meaningOf,
  type Signal,
  signalFor,
  strongest,
} from '../../../language-server/hazards/index.ts';

describe('the word that a harm asks for', () => {
  test.each([
    ['will kill', 'danger', 'warning'],
    ['can kill', 'warning', 'warning'],
    ['can hurt', 'caution', 'warning'],
    ['can damage', 'notice', 'caution'],
  ] as const)('%s: %s for ANSI and ISO, %s for the military and aerospace books', (harm, ansi, military) => {
    expect(signalFor(harm, 'ansi')).toBe(ansi);
    expect(signalFor(harm, 'military')).toBe(military);
  });

  test('caution is the trap: injury for the one, equipment for the other', () => {
    expect(meaningOf('caution', 'ansi')).toMatch(/injury/);
    expect(meaningOf('caution', 'military')).toMatch(/equipment/);
    expect(meaningOf('caution', 'military')).not.toMatch(/injury/);
  });

  test('notice is not about injury for ANSI; danger is no word of the military books; a note is none of either', () => {
    expect(meaningOf('notice', 'ansi')).toMatch(/no injury/);
    expect(meaningOf('danger', 'military')).toBeUndefined();
    for (const convention of ['ansi', 'military'] as const)
      expect(meaningOf('note', convention)).toBeUndefined();
  });
});

test('the order of the words', () => {
  const order: Signal[] = ['note', 'notice', 'caution', 'warning', 'danger'];
  for (const [i, one] of order.entries())
    for (const [j, other] of order.entries()) expect(isMilder(one, other)).toBe(i < j);
  expect(strongest(['caution', 'danger', 'note'])).toBe('danger');
  expect(strongest([])).toBe('note');
});

test('the words of harm are those of the language, and no others', () => {
  expect([...HARMS]).toEqual([...HARM_WORDS]);
  expect(HARMS.every(isHarm)).toBe(true);
  expect(isHarm('can maim')).toBe(false);
});
