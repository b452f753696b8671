/** Steps left out or changed: proofs, locks, hoists, fluids, compounds, cleaning, bleeding, filling, waits. */
import type { Action, Block, Tail } from '../../grammar/syntax/tree.ts';
import { actionsIn, type Items, lineAt, replaced, saidAt } from './seed-items.ts';
import type { Seed, SeedKind } from './seeds.ts';

const DROPPED: Readonly<Record<string, SeedKind>> = {
  prove: 'proof dropped',
  'lock out': 'lock dropped',
  coat: 'compound or lubricant dropped',
  lubricate: 'compound or lubricant dropped',
  bleed: 'bleeding dropped',
  fill: 'filling dropped',
};

export function actionSeeds(source: string, body: Block, items: Items): Seed[] {
  return actionsIn(body).flatMap((action) => {
    const seed = (kind: SeedKind, text: string): Seed => ({
      kind,
      line: lineAt(source, action.start),
      what: saidAt(source, action),
      text,
    });
    const found: Seed[] = [];
    const kind = DROPPED[action.verb];
    if (kind) found.push(seed(kind, replaced(source, action, '')));
    if (action.verb === 'clean' && action.objects.some(({ name }) => items.get(name.text)?.type === 'face'))
      found.push(seed('cleaning dropped', replaced(source, action, '')));
    if (action.verb === 'check' && action.objects.some(({ name }) => isTester(items, name.text)))
      found.push(seed('tester tried on one side', replaced(source, action, '')));
    if (action.verb === 'wait' && action.quantity && action.quantity.amounts.length > 0)
      found.push(seed('wait cut to a tenth', replaced(source, action.quantity, tenth(source, action))));
    for (const tail of action.tails) found.push(...tailSeeds(source, action, tail, items, seed));
    return found;
  });
}

function tailSeeds(
  source: string,
  action: Action,
  tail: Tail,
  items: Items,
  seed: (kind: SeedKind, text: string) => Seed,
): Seed[] {
  if (tail.tail !== 'with') return [];
  const found: Seed[] = [];
  const lifts = tail.refs.length === 1 && /hoist|crane|sling/.test(tail.refs[0]!.name.text);
  if (lifts) found.push(seed('hoist dropped', replaced(source, tail, '')));
  const puts = action.verb === 'coat' || action.verb === 'lubricate';
  const fills = action.verb === 'fill' || action.verb === 'top up';
  if (!puts && !fills) return found;
  for (const { name } of tail.refs) {
    const type = items.get(name.text)?.type;
    if (type !== 'fluid' && type !== 'consumable') continue;
    const other = [...items.values()].find((one) => one.type === type && one.name?.text !== name.text);
    if (other?.name)
      found.push(seed(puts ? 'compound swapped' : 'fluid swapped', replaced(source, name, other.name.text)));
  }
  const [amount] = tail.quantity?.amounts ?? [];
  if (fills && amount) {
    const typed = source.slice(amount.start, amount.end);
    const more = typed.replace(/^[\d.]+/, (number) => String(Number(number) * 10));
    if (more !== typed) found.push(seed('amount ten times as much', replaced(source, amount, more)));
  }
  return found;
}

function tenth(source: string, action: Action): string {
  const { start, end } = action.quantity!;
  return source.slice(start, end).replace(/[\d.]+/g, (number) => String(Number(number) / 10));
}

function isTester(items: Items, name: string): boolean {
  return items.get(name)?.type === 'tool' && /tester|meter/.test(name);
}
