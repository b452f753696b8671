/**
 * Every word of the language is shown in at least one example, and has its line in the table that explains it:
 * a verb, clause, tail, header or statement that is added without a word in the reference fails here.
 */
import { expect, test } from 'vitest';
import { parse } from '../../grammar/parser/parse.ts';
import type {
  Action,
  Clause,
  Condition,
  Declaration,
  FileItem,
  Header,
  Interval,
  Layout,
  Order,
  Quantity,
  Rule,
  RuleBody,
  Selector,
  Span,
  Stage,
  StateClaim,
  Statement,
  TailName,
} from '../../grammar/syntax/tree.ts';
import { CLAUSE_SHAPES, DECLARATION_KINDS, HARM_WORDS, SIGNALS } from '../../grammar/tokens/clauses.ts';
import { VERBS } from '../../grammar/tokens/verbs.ts';
import { visit } from '../support/trees.ts';
import { examplesIn, REFERENCE, textOf } from './examples.ts';
import { namedFiles, surround } from './surroundings.ts';

const reference = textOf(REFERENCE);
const examples = examplesIn(reference);

/** All nodes of all examples: of what the reader sees, not of what the tests put around it. */
const nodes: Span[] = examples.flatMap((example) => {
  const { files, path } = surround(example, namedFiles(examples));
  const text = files[path]!;
  const start = text.indexOf(example.text);
  const end = start + example.text.length;
  return visit(parse(text).tree)
    .map(({ node }) => node)
    .filter((node) => node.start >= start && node.end <= end);
});

/** The values that a property has anywhere in the examples. */
function shown(property: string): string[] {
  const values = nodes.flatMap((node) => {
    const value = (node as unknown as Record<string, unknown>)[property];
    return typeof value === 'string' ? [value] : [];
  });
  return [...new Set(values)];
}

/** Lists that the tree has as types only; the compiler holds them complete. */
const all = <Word extends string>(words: Readonly<Record<Word, true>>) => Object.keys(words) as Word[];

const TAILS = all<TailName>({
  with: true,
  holding: true,
  while: true,
  'by hand': true,
  by: true,
  from: true,
  into: true,
  between: true,
  of: true,
  except: true,
  until: true,
  for: true,
  within: true,
  'not over': true,
  'not under': true,
  'in order': true,
  at: true,
  to: true,
  stage: true,
  pass: true,
  times: true,
  as: true,
  expect: true,
  picture: true,
  'and discard': true,
});

const HEADERS = all<Header['header']>({
  for: true,
  document: true,
  people: true,
  skill: true,
  'serial numbers': true,
  time: true,
  wear: true,
  tools: true,
  supplies: true,
  'starts with': true,
  'ends with': true,
  'starts where': true,
  elsewhere: true,
  only: true,
  needs: true,
  change: true,
});

const KINDS = all<Exclude<Statement['kind'] | FileItem['kind'], 'broken'>>({
  action: true,
  task: true,
  step: true,
  notice: true,
  when: true,
  if: true,
  choice: true,
  repeat: true,
  'for each': true,
  reverse: true,
  do: true,
  hold: true,
  allow: true,
  stop: true,
  continues: true,
  value: true,
  use: true,
  machine: true,
  procedure: true,
  declaration: true,
  coupled: true,
  table: true,
  variant: true,
  never: true,
  rule: true,
});

const STAGES = all<Stage['kind']>({
  torque: true,
  angle: true,
  percent: true,
  'by hand': true,
  loosen: true,
  'back off': true,
  wait: true,
  until: true,
  again: true,
});

const OTHER_KINDS = all<
  | Condition['kind']
  | Layout['kind']
  | Order['kind']
  | Selector['kind']
  | 'event'
  | 'binary'
  | 'call'
  | 'numbers'
  | 'names'
  | 'positions'
>({
  axis: true,
  state: true,
  seen: true,
  and: true,
  rows: true,
  circle: true,
  places: true,
  named: true,
  listed: true,
  any: true,
  that: true,
  event: true,
  binary: true,
  call: true,
  numbers: true,
  names: true,
  positions: true,
});

const PROPERTIES: readonly (readonly [string, readonly string[]])[] = [
  ['verb', VERBS.map(({ verb }) => verb)],
  ['fresh', all<NonNullable<Action['fresh']>>({ new: true, kit: true })],
  ['clause', Object.keys(CLAUSE_SHAPES) as Clause['clause'][]],
  ['type', DECLARATION_KINDS satisfies readonly Declaration['type'][]],
  ['tail', TAILS],
  ['header', HEADERS],
  ['kind', [...KINDS, ...STAGES, ...OTHER_KINDS]],
  ['signal', SIGNALS],
  ['form', all<Quantity['form']>({ plain: true, range: true, tolerance: true, spread: true, sum: true })],
  [
    'bound',
    all<Interval['bound'] | NonNullable<Quantity['bound']>>({
      below: true,
      'up to': true,
      from: true,
      over: true,
      between: true,
      exactly: true,
      'at least': true,
      'at most': true,
    }),
  ],
  [
    'scope',
    all<StateClaim['scope'] | RuleBody['scope']>({
      things: true,
      'all of': true,
      everything: true,
      always: true,
      before: true,
      after: true,
      while: true,
    }),
  ],
  ['demand', all<Rule['bodies'][number]['demand']>({ require: true, never: true })],
  ['operator', ['+', '-', '*', '/']],
];

test.each(PROPERTIES)('every %s is shown in an example', (property, words) => {
  const seen = shown(property);
  expect(words.filter((word) => !seen.includes(word))).toEqual([]);
});

test('orders are all shown', () => {
  const orders = shown('name');
  expect(['from the middle', 'across', 'in turn', 'reverse'].filter((one) => !orders.includes(one))).toEqual(
    [],
  );
});

/** The words in code at the start of the rows of the tables between two headings. */
function explained(from: string, to: string): string[] {
  const section = reference.slice(reference.indexOf(`\n${from}\n`), reference.indexOf(`\n${to}\n`));
  const made = /<!-- ([a-z-]+) -->[\s\S]*?<!-- \/\1 -->/g;
  const rows = section
    .replace(made, '')
    .split('\n')
    .filter((line) => line.startsWith('| '));
  return rows.flatMap((row) => [...row.split(' | ')[0]!.matchAll(/`([^`]+)`/g)].map(([, word]) => word!));
}

function twiceOrNever(words: readonly string[], lines: readonly string[]): string[] {
  return words.filter((word) => lines.filter((one) => one === word).length !== 1);
}

test('every verb is explained once', () => {
  const lines = explained('## The verbs', '## Tails').filter((word) => !['with', 'for', 'to'].includes(word));
  const words = VERBS.map(({ verb }) => verb);
  expect(twiceOrNever(words, lines)).toEqual([]);
});

test('every clause is explained once', () => {
  const lines = explained('### Every clause', '## The procedure').map((word) =>
    word === 'x6' ? 'count' : word,
  );
  const plan = lines.map((word) => (word.startsWith('plan ') ? 'plan' : word));
  expect(twiceOrNever(Object.keys(CLAUSE_SHAPES), plan)).toEqual([]);
});

test('every header is explained once', () => {
  expect(twiceOrNever(HEADERS, explained('### Headers', '### Tasks, steps, notices'))).toEqual([]);
});

test('every tail is explained', () => {
  const lines = explained('## Tails', '## Flow');
  expect(TAILS.filter((word) => !lines.some((line) => line === word || line.startsWith(`${word} `)))).toEqual(
    [],
  );
});

test('every kind of declaration is explained once', () => {
  const lines = explained('## The machine', '### Parts');
  expect(twiceOrNever(DECLARATION_KINDS, lines)).toEqual([]);
});

test('how bad a hazard is at its worst is listed', () => {
  expect(
    shown('text').filter((text) => (HARM_WORDS as readonly string[]).includes(text)).length,
  ).toBeGreaterThan(1);
});
