/**
 * What is lifted by hand against the guideline. HSE INDG143 and L23: the largest box of the filter is 25 kg; a team of two
 * has two thirds, of three half of the sum; more than four are unlikely to work together.
 */
import { clauseOf, kilograms } from './amounts.ts';
import type { Work } from './needs.ts';
import { carriedBy, isPlaced, stateOf } from './needs.ts';
import { things } from './perform.ts';
import type { Action } from './shape.ts';

const PUTS_ON = ['refit', 'fit', 'trial fit', 'bolt up'];
const LIFTS = ['remove', 'unbolt', 'raise', 'support', ...PUTS_ON];
const MOST: Record<number, number> = { 1: 25, 2: (2 / 3) * 50, 3: 37.5, 4: 50 };
/** What such tools are called; common practice, no source. */
const CARRIER =
  /hoist|crane|jack|lift|sling|chain|tackle|winch|gantry|trolley|fork|truck|stand|block|davit|table/i;

export function lifted(w: Work, action: Action, people: number | undefined): void {
  if (!LIFTS.includes(action.verb)) return;
  const tools = action.with.filter(({ name }) => w.model.declared.get(name)?.kind === 'tool');
  const carries = ({ name }: { name: string }) =>
    action.verb === 'support' || CARRIER.test(`${name} ${w.model.declared.get(name)!.title}`);
  if (tools.some(carries)) return;
  const hands = Math.min(Math.max(1, action.people ?? people ?? 4), 4);
  for (const item of action.objects.flatMap((ref) => (w.model.byName.has(ref.name) ? things(w, ref) : []))) {
    const one = stateOf(w, item);
    if (
      !isPlaced(item) ||
      item.kind === 'seal' ||
      one.supportedBy !== undefined ||
      one.raisedBy !== undefined
    )
      continue;
    const isOff = one.place === 'off' || one.place === 'discarded';
    if (PUTS_ON.includes(action.verb) ? !isOff && !action.fresh : isOff) continue;
    let mass = 0;
    for (const along of carriedBy(w, [item]))
      mass += kilograms(clauseOf(along.declaration, 'mass')?.amount) ?? 0;
    if (mass > MOST[hands]! + 1e-9) w.report('heavy-lift');
  }
}
