/** The things of a machine as sentences name them: by name, title or other names, in singular or plural. */
import type { Model, Thing } from './model.ts';

/** A name as sentences write it; its patterns are made when they are asked for, since most never are. */
class Spoken {
  readonly thing: Thing;
  readonly stem: string;
  private whole: RegExp | undefined;
  private first: RegExp | undefined;

  constructor(words: string, thing: Thing) {
    this.thing = thing;
    this.stem = literal(words.replace(/(?<!s)s$/, ''));
  }

  get pattern(): RegExp {
    this.whole ??= new RegExp(`(?<![\\w-])${this.stem}(?:e?s)?(?![\\w-])`, 'i');
    return this.whole;
  }

  get atStart(): RegExp {
    this.first ??= new RegExp(`^${this.stem}(?:e?s)?(?![\\w-])`, 'i');
    return this.first;
  }
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

/** The names that sentences may use for several things, each with all that go by it. */
export function sharedNames(model: Model): { pattern: RegExp; things: Thing[] }[] {
  const known = sharedOf.get(model);
  if (known) return known;
  const byStem = new Map<string, { name: Spoken; things: Thing[] }>();
  for (const name of spoken(model)) {
    const one = byStem.get(name.stem);
    if (!one) byStem.set(name.stem, { name, things: [name.thing] });
    else if (!one.things.includes(name.thing)) one.things.push(name.thing);
  }
  const shared = [...byStem.values()]
    .filter(({ things }) => things.length > 1)
    .map(({ name, things }) => ({ pattern: name.pattern, things }));
  sharedOf.set(model, shared);
  return shared;
}

const sharedOf = new WeakMap<Model, { pattern: RegExp; things: Thing[] }[]>();

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
  const made = named.map(({ words, thing }) => new Spoken(words, thing));
  spokenOf.set(model, made);
  return made;
}

function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
