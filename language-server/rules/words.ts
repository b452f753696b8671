/** What a rule asks, in the words in which a step or a state is written: `turn flywheel 2 turns`, `strap fitted`. */
import { printReader } from '../../grammar/quantity/index.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import { list, type Model, type Thing } from '../model/model.ts';
import type { Demand } from './compile.ts';

/** Names of things that are listed; more are told by the first and a number. */
const MOST_NAMES = 3;

/** `joined`: whether all of its things are meant, or any. */
export function demandWords(model: Model, demand: Demand, joined: 'and' | 'or' = 'and'): string {
  const names = namesOf(model, demand.items);
  const things =
    names.length <= MOST_NAMES ? list(names, joined) : `${names[0]} ${joined} ${names.length - 1} more`;
  if (demand.kind === 'state')
    return `${things} ${demand.negated ? 'not ' : ''}${demand.state === 'safe' ? 'proved safe' : demand.state}`;
  const { verb, quantity, target } = demand;
  const closing = verbNamed(verb)?.closing;
  const amount = quantity ? printReader(quantity) : target > 1 ? `${target} times` : '';
  return [verb, things, closing ?? '', amount].filter((word) => word !== '').join(' ');
}

function namesOf(model: Model, items: readonly number[]): string[] {
  const byThing = new Map<Thing, number[]>();
  for (const item of items) {
    const thing = model.thingOf[item]!;
    byThing.set(thing, [...(byThing.get(thing) ?? []), item]);
  }
  return [...byThing].map(([thing, own]) =>
    own.length >= thing.positions.length
      ? thing.name
      : `${thing.name} ${own.map((item) => `#${thing.positions[item - thing.first]}`).join(', ')}`,
  );
}
