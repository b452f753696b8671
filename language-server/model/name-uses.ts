/**
 * One thing under two names in the sentences of one procedure. Fact `two-names`. Two names of a thing are certain where the
 * machine file gives both (`also called`), or where they are two words of the trade for the same thing.
 */

import type { Written } from '../../grammar/syntax/tree.ts';
import { SAME_THING } from '../wording/index.ts';
import { placeInText } from '../wording/place.ts';
import type { Fact } from './facts.ts';
import type { Model, Thing } from './model.ts';
import type { Survey } from './survey.ts';
import { type ReaderText, textsIn } from './texts-of.ts';

interface Use {
  readonly name: string;
  readonly text: ReaderText;
  readonly from: number;
  readonly to: number;
}

export function twoNames(
  model: Model,
  survey: Survey,
  file: { readonly path: string; readonly written: Written },
): Fact[] {
  const groups = namesOf(model);
  const met = survey.each('names of things', [model], (statement) => {
    let found: { group: number; text: ReaderText }[] | undefined;
    for (const text of textsIn(statement)) {
      const lower = text.text.value.toLowerCase();
      for (let group = 0; group < groups.length; group++) {
        if (!namesAny(lower, groups[group]!.names)) continue;
        found ??= [];
        found.push({ group, text });
      }
    }
    return found ?? NONE;
  });
  if (met.length === 0) return [];
  const texts = new Map<number, ReaderText[]>();
  for (const { group, text } of met) {
    const list = texts.get(group);
    if (list) list.push(text);
    else texts.set(group, [text]);
  }
  const facts: Fact[] = [];
  for (const [group, { thing, names }] of groups.entries()) {
    const inOrder = (texts.get(group) ?? []).sort((a, b) => a.text.start - b.text.start);
    const fact = secondName(names, inOrder, file);
    if (fact) facts.push(thing ? { ...fact, subject: { thing } } : fact);
  }
  return facts;
}

const NONE: readonly { group: number; text: ReaderText }[] = [];

/** Asked of every text for every group: a plain loop. */
function namesAny(lower: string, names: readonly string[]): boolean {
  for (let index = 0; index < names.length; index++) if (lower.includes(names[index]!)) return true;
  return false;
}

/** Where a second of the names comes up. */
function secondName(
  names: readonly string[],
  texts: readonly ReaderText[],
  file: { readonly path: string; readonly written: Written },
): Fact | undefined {
  let first: Use | undefined;
  for (const text of texts) {
    const lower = text.text.value.toLowerCase();
    const uses = names.flatMap((name) => usesIn(name, names, text, lower));
    for (const use of uses.sort((a, b) => a.from - b.from)) {
      if (!first) first = use;
      else if (use.name !== first.name) {
        const at = (one: Use) => ({
          file: file.path,
          ...placeInText(file.written, one.text.text, one.from, one.to),
        });
        return {
          check: 'two-names',
          at: at(use),
          words: { first: first.name, second: use.name },
          story: [{ at: at(first), what: 'named' }],
        };
      }
    }
  }
  return undefined;
}

function usesIn(name: string, names: readonly string[], text: ReaderText, lower: string): Use[] {
  const found: Use[] = [];
  for (let at = lower.indexOf(name); at >= 0; at = lower.indexOf(name, at + 1)) {
    const end = at + name.length;
    if (/[\p{L}\p{N}-]/u.test(lower[at - 1] ?? ' ') || !/^(?:e?s)?(?![\p{L}\p{N}-])/u.test(lower.slice(end)))
      continue;
    // `pump` inside `feed pump` is no other name, and a name in brackets after the first one explains it.
    const inLonger = names.some(
      (other) => other.length > name.length && other.includes(name) && near(lower, other, at),
    );
    if (inLonger || lower[at - 1] === '(' || lower[at - 1] === '"') continue;
    found.push({ name, text, from: at, to: end });
  }
  return found;
}

function near(lower: string, other: string, at: number): boolean {
  const start = lower.indexOf(other, Math.max(0, at - other.length));
  return start >= 0 && start <= at && at < start + other.length;
}

/** Names of one thing. */
interface NameGroup {
  /** Where the machine says so. */
  readonly thing?: Thing;
  readonly names: readonly string[];
}

const namesKnown = new WeakMap<Model, readonly NameGroup[]>();

/** Things with more than one name for readers, where no other thing has one of them; behind them the words of the trade. */
function namesOf(model: Model): readonly NameGroup[] {
  const known = namesKnown.get(model);
  if (known) return known;
  const titles = new Map<string, number>();
  const own = model.things.map((thing) => {
    const also = thing.declaration.clauses.flatMap((clause) =>
      clause.clause === 'also called' ? clause.texts.map(({ value }) => value.trim().toLowerCase()) : [],
    );
    // An empty name would be found everywhere, without end.
    const names = [...new Set([thing.title.trim().toLowerCase(), ...also])].filter((name) => name !== '');
    for (const name of names) titles.set(name, (titles.get(name) ?? 0) + 1);
    return { thing, names };
  });
  const declared = own
    .filter(({ names }) => names.length > 1)
    .map(({ thing, names }) => ({ thing, names: names.filter((name) => titles.get(name) === 1) }))
    .filter(({ names }) => names.length > 1);
  const result = [...declared, ...SAME_THING.map((names) => ({ names }))];
  namesKnown.set(model, result);
  return result;
}
