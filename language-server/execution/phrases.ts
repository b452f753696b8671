/** What is measured, seen or found, as words for the name of a case. */
import type { Action, Interval, Outcome, Ref } from '../../grammar/syntax/tree.ts';

/** What a position stands for, inside `for each`. */
type Bound = (position: string) => string;

/** `the wear of the shim is over 2 mm`, `the pads #1 are cracked`, `the check of the nuts says “tight”`. */
export function casePhrase(action: Action, outcome: Outcome, index: number, bound: Bound): string {
  const found = outcomePhrase(outcome, index);
  const { what, several } = subjectOf(action, bound);
  if (action.verb === 'check') return `the check of ${what} says “${found}”`;
  return `${what} ${several ? 'are' : 'is'} ${found}`;
}

/** What is measured, inspected or checked, in words. */
function subjectOf(action: Action, bound: Bound): { what: string; several: boolean } {
  const named = (refs: readonly Ref[]) => refs.map((ref) => nameOf(ref, bound)).join(' and ');
  const objects = named(action.objects);
  const topic = action.topic?.text.replaceAll('-', ' ');
  if (topic === undefined) return { what: `the ${objects}`, several: isSeveral(action.objects) };
  const of =
    objects ||
    named(action.tails.flatMap((tail) => (tail.tail === 'of' || tail.tail === 'between' ? tail.refs : [])));
  return { what: of ? `the ${topic} of the ${of}` : `the ${topic}`, several: false };
}

function nameOf({ name, positions }: Ref, bound: Bound): string {
  const told = positions.map(
    ({ from, to }) => `#${bound(from)}${to === undefined ? '' : ` to #${bound(to)}`}`,
  );
  return [name.text.replaceAll('-', ' '), ...told].join(' ');
}

/** By the last letters of the name: `pads`, but not `glass`; one position of several is one. */
function isSeveral(refs: readonly Ref[]): boolean {
  const [only] = refs;
  if (refs.length !== 1 || !only) return refs.length > 1;
  const one = only.positions.length === 1 && only.positions[0]!.to === undefined;
  return !one && /[^s]s$/.test(only.name.text);
}

function outcomePhrase(outcome: Outcome, index: number): string {
  if (outcome.word) return outcome.word.text.replaceAll('-', ' ');
  if (outcome.intervals.length === 0) return `outcome ${index + 1}`;
  return outcome.intervals.map(intervalPhrase).join(` ${outcome.join ?? 'or'} `);
}

function intervalPhrase({ bound, quantity }: Interval): string {
  const amounts = quantity?.amounts ?? [];
  const unit = amounts[amounts.length - 1]?.unit?.text ?? '';
  const numbers = amounts.map((amount) => amount.number).join(' to ');
  const value = quantity?.named?.name.text.replaceAll('-', ' ') ?? `${numbers} ${unit}`.trim();
  return bound === 'between' || bound === 'exactly' ? value : `${bound} ${value}`;
}
