/**
 * Names in the sentences of steps that two things of the machine go by, where nothing tells which one is meant (facts
 * `name-ambiguous`): the step acts on neither of them nor on what belongs to one, and the sentence names no such thing.
 */
import type { Action } from '../../grammar/syntax/tree.ts';
import { placeInText } from '../wording/place.ts';
import type { Fact } from './facts.ts';
import type { Model, Thing } from './model.ts';
import { sharedNames, thingsNamedIn } from './spoken-things.ts';
import type { ReaderText } from './texts-of.ts';
import type { Where } from './wording-faults.ts';

export function ambiguousNames(model: Model, texts: readonly ReaderText[], file: Where): Fact[] {
  const shared = sharedNames(model);
  if (shared.length === 0) return [];
  const facts: Fact[] = [];
  for (const { text, kind, action } of texts) {
    if (!action || (kind !== 'step' && kind !== 'criterion')) continue;
    for (const { pattern, things } of shared) {
      const match = pattern.exec(text.value);
      if (!match) continue;
      const rest = text.value.replace(match[0], '·');
      const clear = [...actedOn(model, action), ...thingsNamedIn(model, rest)];
      if (clear.some((thing) => things.some((one) => one === thing || belongs(model, one, thing)))) continue;
      facts.push({
        check: 'name-ambiguous',
        at: {
          file: file.path,
          ...placeInText(file.written, text, match.index, match.index + match[0].length),
        },
        words: { name: match[0], may: things.map((one) => told(model, one)).join(' or ') },
        story: things.map((thing) => ({ at: thing.place, what: 'declared', thing })),
      });
      break;
    }
  }
  return facts;
}

function actedOn(model: Model, { objects, tails }: Action): Thing[] {
  const refs = [...objects, ...tails.flatMap((tail) => ('refs' in tail ? tail.refs : []))];
  return refs.flatMap(({ name }) => model.byName.get(name.text) ?? []);
}

/** Whether one of them holds, seals, joins or carries the other. */
function belongs(model: Model, one: Thing, other: Thing): boolean {
  const items = (thing: Thing) => thing.positions.map((_, index) => thing.first + index);
  const others = new Set(items(other));
  const of = [model.seats, model.riders, model.fastenersOf, model.connectionsOf, model.seals, model.members];
  return (
    items(one).some((item) => of.some((lists) => lists[item]!.some((next) => others.has(next)))) ||
    items(other).some((item) => of.some((lists) => lists[item]!.some((next) => items(one).includes(next))))
  );
}

/** `tube-mark` of the tube, where it sits on something; else its name. */
function told(model: Model, thing: Thing): string {
  const seat = model.seats[thing.first]?.[0];
  return seat === undefined ? `\`${thing.name}\`` : `\`${thing.name}\` of the ${model.thingOf[seat]!.title}`;
}
