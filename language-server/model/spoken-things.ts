/** The things of a machine as sentences name them: by name, title or other names, in singular or plural. */
import type { Model, Thing } from './model.ts';

interface Spoken {
  readonly pattern: RegExp;
  readonly atStart: RegExp;
  readonly thing: Thing;
}

const spokenOf = new WeakMap<Model, Spoken[]>();

/** The things that a sentence names, longest names first: `head bolts` is not the head. */
export function thingsNamedIn(model: Model, sentence: string): Thing[] {
  const found: Thing[] = [];
  let rest = sentence;
  for (const { pattern, thing } of spoken(model)) {
    if (!pattern.test(rest)) continue;
    found.push(thing);
    rest = rest.replace(pattern, '·');
  }
  return found;
}

export function startsWithThing(model: Model, text: string): boolean {
  return spoken(model).some(({ atStart }) => atStart.test(text));
}

/** Every name that sentences may use, each with all things that go by it. */
export function namesOfThings(model: Model): { pattern: RegExp; things: Thing[] }[] {
  const known = namesOf.get(model);
  if (known) return known;
  const byPattern = new Map<string, { pattern: RegExp; things: Thing[] }>();
  for (const { pattern, thing } of spoken(model)) {
    const one = byPattern.get(pattern.source);
    if (!one) byPattern.set(pattern.source, { pattern, things: [thing] });
    else if (!one.things.includes(thing)) one.things.push(thing);
  }
  const all = [...byPattern.values()];
  namesOf.set(model, all);
  return all;
}

const namesOf = new WeakMap<Model, { pattern: RegExp; things: Thing[] }[]>();

function spoken(model: Model): Spoken[] {
  const known = spokenOf.get(model);
  if (known) return known;
  const named: { words: string; thing: Thing }[] = [];
  for (const thing of model.things) {
    const names = [thing.name, thing.name.replaceAll('-', ' '), thing.title];
    for (const clause of thing.declaration.clauses)
      if (clause.clause === 'also called') names.push(...clause.texts.map(({ value }) => value));
    for (const words of new Set(names.map((name) => name.trim().toLowerCase())))
      if (words.length > 2) named.push({ words, thing });
  }
  named.sort((a, b) => b.words.length - a.words.length);
  const made = named.map(({ words, thing }) => {
    const stem = literal(words.replace(/(?<!s)s$/, ''));
    return {
      pattern: new RegExp(`(?<![\\w-])${stem}(?:e?s)?(?![\\w-])`, 'i'),
      atStart: new RegExp(`^${stem}(?:e?s)?(?![\\w-])`, 'i'),
      thing,
    };
  });
  spokenOf.set(model, made);
  return made;
}

function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
