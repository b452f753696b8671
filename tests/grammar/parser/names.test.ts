/**
 * The words of the language are special only where they can stand: anything may be called by them. Source:
 * the description of the language (“a part may be called `seal` or `cover`”).
 */
import { describe, expect, it } from 'vitest';
import { parse } from '../../../grammar/parser/parse.ts';
import type { Declaration, Machine } from '../../../grammar/syntax/tree.ts';
import { CLAUSE_SHAPES, DECLARATION_KINDS, STATES } from '../../../grammar/tokens/clauses.ts';
import { VERBS } from '../../../grammar/tokens/verbs.ts';
import { HEADER_WORDS, MACHINE_STARTS, STATEMENT_STARTS, TAIL_WORDS } from '../../../grammar/tokens/words.ts';
import { actionOf } from '../../support/trees.ts';

/** `and`, `or` and `is` join other words and are the only ones that name nothing. */
const JOINING = new Set(['and', 'or', 'is']);
const WORDS = [
  ...new Set(
    [
      ...VERBS.flatMap((verb) => [verb.verb, ...(verb.also ?? [])]),
      ...DECLARATION_KINDS,
      ...Object.keys(CLAUSE_SHAPES),
      ...HEADER_WORDS,
      ...MACHINE_STARTS.keys(),
      ...STATEMENT_STARTS.keys(),
      ...TAIL_WORDS,
      ...Object.keys(STATES),
    ].flatMap((phrase) => phrase.split(' ')),
  ),
].filter((word) => !JOINING.has(word));

function machineItems(text: string) {
  const parsed = parse(`machine m {\n${text}\n}`);
  return { items: (parsed.tree.items[0] as Machine).items, problems: parsed.problems };
}

describe('any word is a name', () => {
  it.each(WORDS)('%s: of a declaration', (word) => {
    const { items, problems } = machineItems(`part ${word} "it" on base`);
    // `part of` and `part number "…"` are clauses.
    if (word === 'of' || word === 'number') return;
    expect(problems).toEqual([]);
    expect((items[0] as Declaration).name!.text).toBe(word);
  });

  it.each(WORDS)('%s: in a list, also on a line of its own', (word) => {
    for (const list of [`base, ${word}, cover`, `base,\n    ${word},\n    cover`]) {
      const action = actionOf(`remove ${list}`);
      expect(action.objects.map((ref) => ref.name.text)).toEqual(['base', word, 'cover']);
      const { items, problems } = machineItems(`part p on ${list}`);
      expect(problems).toEqual([]);
      expect(items[0]).toMatchObject({
        clauses: [{ clause: 'on', refs: [{}, { name: { text: word } }, {}] }],
      });
    }
  });

  it.each(WORDS)('%s: the first object of a verb where no tail can begin', (word) => {
    const prepositions = new Set(
      TAIL_WORDS.filter(
        (tail) => !['stage', 'pass', 'expect', 'picture', 'holding', 'times'].includes(tail),
      ).map((tail) => tail.split(' ')[0]!),
    );
    if (
      prepositions.has(word) &&
      !['across', 'all', 'everything', 'below', 'not', 'in', 'because'].includes(word)
    )
      return;
    if (word === 'across') return;
    expect(actionOf(`remove ${word}, base`).objects.map((ref) => ref.name.text)).toEqual([word, 'base']);
  });

  it.each(['seal', 'cover', 'fit', 'lock', 'thread', 'mass', 'plan', 'order'])(
    '%s: in every clause of a part',
    (word) => {
      const { items, problems } = machineItems(
        `part ${word} on ${word} under ${word} held by ${word} opens ${word} x2`,
      );
      expect(problems).toEqual([]);
      expect((items[0] as Declaration).clauses.map((clause) => clause.clause)).toEqual([
        'on',
        'under',
        'held by',
        'opens',
      ]);
    },
  );
});
