/**
 * Conditions that can never hold, whatever is found (`range-impossible`): two opposite states of one thing at once,
 * two values of one choice at once, and sentences that ask for less than one limit and more than a higher one.
 */
import {
  compareCentres,
  type FoundQuantity,
  findQuantities,
  printReader,
} from '../../grammar/quantity/index.ts';
import type { Condition, Span, Statement } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';

export function conditionFaults(statement: Statement, path: string): Fact[] {
  const condition = conditionOf(statement);
  if (!condition) return [];
  const parts = partsOf(condition);
  const impossible =
    // What no variant can be in a `when` is found where the variants are followed.
    (statement.kind === 'when' ? undefined : contradictory(parts)) ??
    parts.map((part) => (part.kind === 'seen' ? crossed(part.text.value) : undefined)).find(Boolean);
  if (!impossible) return [];
  return [
    {
      check: 'range-impossible',
      at: { file: path, start: condition.start, end: condition.end },
      words: { of: 'condition', ...impossible },
    },
  ];
}

/** The same for the sentence of an action: `“If the gap is less than … and more than …”`. */
export function sentenceFaults(text: (Span & { value: string }) | undefined, path: string): Fact[] {
  const impossible = text && crossed(text.value);
  if (!text || !impossible) return [];
  const { start, end } = text;
  return [
    { check: 'range-impossible', at: { file: path, start, end }, words: { of: 'sentence', ...impossible } },
  ];
}

interface Impossible {
  one: string;
  other: string;
}

function conditionOf(statement: Statement): Condition | undefined {
  if (statement.kind === 'if' || statement.kind === 'when') return statement.condition;
  return statement.kind === 'repeat' ? statement.until : undefined;
}

function partsOf(condition: Condition): Condition[] {
  return condition.kind === 'and' ? condition.parts.flatMap(partsOf) : [condition];
}

/** Two of the parts that exclude one another. */
function contradictory(parts: readonly Condition[]): Impossible | undefined {
  for (const [index, one] of parts.entries()) {
    for (const other of parts.slice(index + 1)) {
      if (excludes(one, other)) return { one: wordsOf(one), other: wordsOf(other) };
    }
  }
  return undefined;
}

function excludes(one: Condition, other: Condition): boolean {
  if (one.kind === 'axis' && other.kind === 'axis') {
    if (one.axis.text !== other.axis.text) return false;
    const values = one.values.map(({ text }) => text);
    const others = other.values.map(({ text }) => text);
    const within = (some: string[], all: string[]) => some.length > 0 && some.every((v) => all.includes(v));
    if (one.negated && other.negated) return false;
    if (one.negated) return within(others, values);
    if (other.negated) return within(values, others);
    return values.length > 0 && others.length > 0 && !values.some((value) => others.includes(value));
  }
  if (one.kind === 'state' && other.kind === 'state') {
    if (one.ref.name.text !== other.ref.name.text || !samePositions(one, other)) return false;
    if (one.state.text === other.state.text) return one.negated !== other.negated;
    return !one.negated && !other.negated && opposite(one.state.text, other.state.text);
  }
  return false;
}

function samePositions(one: Condition & { kind: 'state' }, other: Condition & { kind: 'state' }): boolean {
  const words = ({ ref }: { ref: { positions: readonly { from: string; to?: string }[] } }) =>
    ref.positions.map(({ from, to }) => `${from}..${to ?? from}`).join();
  return words(one) === words(other);
}

const OPPOSITES: readonly (readonly [string, string])[] = [
  ['off', 'fitted'],
  ['off', 'on'],
  ['open', 'closed'],
  ['connected', 'disconnected'],
  ['locked', 'unlocked'],
  ['full', 'drained'],
  ['pressurised', 'relieved'],
  ['hot', 'cool'],
  ['live', 'isolated'],
  ['clean', 'dirty'],
  ['loose', 'tight'],
];

function opposite(one: string, other: string): boolean {
  return OPPOSITES.some(([a, b]) => (a === one && b === other) || (a === other && b === one));
}

function wordsOf(condition: Condition): string {
  const not = 'negated' in condition && condition.negated ? 'not ' : '';
  if (condition.kind === 'axis')
    return `${condition.axis.text} is ${not}${condition.values.map(({ text }) => text).join(' or ')}`;
  if (condition.kind === 'state') return `${condition.ref.name.text} ${not}${condition.state.text}`;
  return '';
}

/** `less than 0.005 in and more than 0.025 in`: no reading is both. */
function crossed(sentence: string): Impossible | undefined {
  // Nearly every sentence is done with here.
  if (!sentence.includes(' and ')) return undefined;
  const found = findQuantities(sentence);
  for (const [index, first] of found.entries()) {
    const second = found[index + 1];
    if (!second) break;
    const one = sideOf(sentence, first);
    const other = sideOf(sentence, second);
    const joined = JOINED.test(sentence.slice(first.to, second.from));
    if (!joined || !one || !other || one === other) continue;
    const [less, more] = one === 'less' ? [first, second] : [second, first];
    const order = compareCentres(less.quantity, more.quantity);
    if (order.ok && order.value <= 0)
      return {
        one: `less than ${printReader(less.quantity)}`,
        other: `more than ${printReader(more.quantity)}`,
      };
  }
  return undefined;
}

/** What may stand between the two limits of one thing; anything else could speak of another thing. */
const JOINED =
  /^,? and (?:(?:is|it is|also|at the same time) )?(?:less|more|below|above|over|under|greater|smaller)(?: than)? $/i;
const LESS = /\b(?:(?:less|smaller) than|below|under) $/i;
const MORE = /\b(?:(?:more|greater) than|above|over) $/i;

function sideOf(sentence: string, { from }: FoundQuantity): 'less' | 'more' | undefined {
  const before = sentence.slice(0, from);
  return LESS.test(before) ? 'less' : MORE.test(before) ? 'more' : undefined;
}
