/** What is measured, seen or found, as words for the name of a case. */
import type { Action, Interval, Outcome } from '../../grammar/syntax/tree.ts';

/** What is measured, inspected or checked, in words. */
export function phraseOf(action: Action): string {
  const objects = action.objects.map((ref) => ref.name.text.replaceAll('-', ' ')).join(' and ');
  const of = action.tails
    .flatMap((tail) => (tail.tail === 'of' || tail.tail === 'between' ? tail.refs : []))
    .map((ref) => ref.name.text.replaceAll('-', ' '))
    .join(' and ');
  const topic = action.topic?.text.replaceAll('-', ' ');
  if (topic) return objects || of ? `the ${topic} of the ${objects || of}` : `the ${topic}`;
  return objects ? `the ${objects}` : `the ${action.verb}`;
}

export function outcomePhrase(outcome: Outcome, index: number): string {
  if (outcome.word) return outcome.word.text.replaceAll('-', ' ');
  if (outcome.intervals.length === 0) return `outcome ${index + 1}`;
  return outcome.intervals.map(intervalPhrase).join(` ${outcome.join ?? 'or'} `);
}

function intervalPhrase(interval: Interval): string {
  const amounts = interval.quantity?.amounts ?? [];
  const unit = amounts[amounts.length - 1]?.unit?.text ?? '';
  const numbers = amounts.map((amount) => amount.number).join(' to ');
  const value = `${numbers} ${unit}`.trim();
  return interval.bound === 'between' || interval.bound === 'exactly' ? value : `${interval.bound} ${value}`;
}
