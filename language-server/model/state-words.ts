/** State words in conditions, claims and rules: that there is such a state, and that such a thing can be in it. */
import type { Name } from '../../grammar/syntax/tree.ts';
import { STATES } from '../../grammar/tokens/clauses.ts';
import type { Fact } from './facts.ts';
import { wrongKind } from './kind-faults.ts';
import type { Thing } from './model.ts';
import { unknownName } from './names.ts';

/** Ways of speaking that are understood beside the states that a kind properly has. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  off: ['system', 'connection'],
  on: ['system'],
  fitted: ['connection', 'control', 'isolator'],
  aside: ['control', 'isolator', 'seal'],
  locked: ['tool'],
  unlocked: ['tool'],
  clean: ['connection', 'control', 'isolator'],
  supported: ['control', 'isolator'],
  marked: ['fastener', 'connection', 'seal', 'control', 'isolator'],
  new: ['connection', 'control', 'isolator', 'kit'],
};

export function stateFaults(file: string, state: Name, things: readonly Thing[]): Fact[] {
  if (state.text === '') return [];
  const kinds = STATES[state.text];
  if (!kinds) return [unknownName(file, state, 'state', Object.keys(STATES))];
  const able = [...kinds, ...(ALSO[state.text] ?? [])];
  const wrong = things.find((thing) => !able.includes(thing.type));
  return wrong ? [wrongKind(file, state, wrong, kinds, `The state \`${state.text}\``)] : [];
}
