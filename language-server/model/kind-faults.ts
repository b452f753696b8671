/** Facts about things that are named where a thing of another kind belongs, and about positions that they lack. */
import type { Position, Span } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { list, type Thing } from './model.ts';

/** `by` is what names it, in words: a word in backticks. */
export function wrongKind(
  file: string,
  { start, end }: Span,
  thing: Thing,
  allowed: readonly string[],
  by: string,
): Fact {
  return {
    check: 'wrong-kind',
    at: { file, start, end },
    subject: { thing },
    words: { by, wanted: aKindOf(allowed), is: thing.type },
    story: [{ at: thing.place, what: 'declared', thing }],
  };
}

export function unknownPosition(file: string, position: Position, thing: Thing): Fact {
  const { start, end } = position;
  const numbered = thing.positions.every((name) => /^\d+$/.test(name));
  const names = thing.positions.map((name) => `#${name}`);
  return {
    check: 'unknown-position',
    at: { file, start, end },
    subject: { thing },
    words: {
      position: position.to === undefined ? `#${position.from}` : `#${position.from}..#${position.to}`,
      known: numbered && names.length > 2 ? `${names[0]} to ${names[names.length - 1]}` : list(names),
    },
    story: [{ at: thing.place, what: 'declared', thing }],
  };
}

/** `a part`, `a part, seal or fastener` */
function aKindOf(kinds: readonly string[]): string {
  const words = list(kinds).replace(/ and (?=\S+$)/, ' or ');
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;
}
