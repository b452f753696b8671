/** What is said of a word in the editor is what the language reference says of it. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { VERBS } from '../../../grammar/tokens/verbs.ts';
import {
  CLAUSE_HELP,
  HEADER_HELP,
  TAIL_HELP,
  VERB_HELP,
} from '../../../language-server/features/word-help.ts';

const REFERENCE = readFileSync(resolve(import.meta.dirname, '../../../grammar/LANGUAGE.md'), 'utf8');
/** The cells of every row of its tables. */
const ROWS = REFERENCE.split('\n')
  .filter((line) => line.startsWith('| '))
  .map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );

describe('clauses, headers, tails', () => {
  const all = [...Object.entries(CLAUSE_HELP), ...Object.entries(HEADER_HELP), ...Object.entries(TAIL_HELP)];
  test.each(all)('%s', (word, { says }) => {
    const first = word === 'count' ? '`x6`' : `\`${word}`;
    expect(ROWS.some(([name, meaning]) => name!.includes(first) && meaning === says)).toBe(true);
  });
});

test.each(VERBS.map(({ verb }) => verb))('%s', (verb) => {
  const help = VERB_HELP[verb]!;
  // Tables of three columns: the verb, what it asks, what it does; a row may tell of two verbs.
  const rows = ROWS.filter((row) => row.length === 3 && row[0]!.includes(`\`${verb}\``));
  const told = rows.filter(([, asks, does]) => asks === (help.asks ?? '') && does!.includes(help.does));
  expect(told.length, verb).toBeGreaterThan(0);
});
