/**
 * Repeats that may go round for ever: an end that no round can bring about (`loop-cannot-end`), no most number of
 * rounds and no way out inside (`loop-without-limit`), or a most number of rounds with nothing said for when it does
 * not come right (`loop-runs-out`).
 */
import type { Condition, Repeat, Span } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { visited } from './flow-walk.ts';

export function loopFaults(repeat: Repeat, path: string): Fact[] {
  const { until, atMost, body, otherwise } = repeat;
  // Without `until`, or with half of it, the text itself is what is wrong.
  if (!until || !body) return [];
  const place = ({ start, end }: Span) => ({ file: path, start, end });
  const inside = visited(body);
  const wayOut = inside.some(({ statement }) => statement.kind === 'stop');
  const fixed = axisNobodySets(until, inside);
  if (fixed && !wayOut) return [{ check: 'loop-cannot-end', at: place(until), words: { axis: fixed } }];
  const at = place({ start: repeat.start, end: until.end });
  if (atMost === undefined) return wayOut ? [] : [{ check: 'loop-without-limit', at }];
  if (otherwise || wayOut) return [];
  return [{ check: 'loop-runs-out', at, words: { most: String(atMost) } }];
}

/** The variant or choice that the end is about, where no round finds or chooses it anew. */
function axisNobodySets(condition: Condition, inside: ReturnType<typeof visited>): string | undefined {
  if (condition.kind === 'and') {
    for (const part of condition.parts) {
      const axis = axisNobodySets(part, inside);
      if (axis) return axis;
    }
    return undefined;
  }
  if (condition.kind !== 'axis') return undefined;
  const name = condition.axis.text;
  const set = inside.some(({ statement }) => {
    if (statement.kind === 'choice') return statement.name?.text === name;
    // A task or procedure that is used may measure it.
    if (statement.kind === 'do') return true;
    if (statement.kind !== 'action') return false;
    return statement.tails.some((tail) => tail.tail === 'as' && tail.name?.text === name);
  });
  return set ? undefined : name;
}
