/**
 * Every verb on every kind of thing, in every state that a few steps bring it to, against a record that was read
 * (`npx tsx tests/language-server/execution/record.ts` writes it anew: read what changed). That the record is right is
 * judged outside: for its jobs by the independent executor (pairs-judged.test.ts), written from grammar/STATE.md alone.
 */
import { describe, expect, test } from 'vitest';
import { machineOf } from './courses.ts';
import { MACHINE, nameOf, outcomes, recorded, STATES } from './pairs.ts';

const record = recorded();
const machine = machineOf(MACHINE);

test('the record has every state, and no other', () => {
  expect([...record.keys()]).toEqual(STATES.map(nameOf));
});

describe('each verb', () => {
  test.each(STATES.map((state) => [nameOf(state), state] as const))('%s', (name, state) => {
    expect(outcomes(machine, state)).toEqual(record.get(name));
  });
});
