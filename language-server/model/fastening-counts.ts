/**
 * Numbers of fasteners in steps: facts `count-differs` for a number that is not the declared one. Also which groups
 * nobody has counted.
 */
import type { Action, Ref } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { declared } from './fastening-declared.ts';
import type { Tightened } from './fastening-steps.ts';
import { itemsOf } from './items.ts';
import type { Model, Thing } from './model.ts';

/** Gathers the numbers that the steps of one procedure name. */
export class Counts {
  private readonly wrong: Fact[] = [];
  private readonly groups = new Map<string, { ref: Ref; thing: Thing; number: number }[]>();
  private readonly model: Model;
  private readonly file: string;

  constructor(model: Model, file: string) {
    this.model = model;
    this.file = file;
  }

  note(action: Action, ref: Ref): void {
    const thing = this.model.byName.get(ref.name.text);
    if (!thing || thing.count === undefined || ref.count === undefined) return;
    if (ref.positions.length > 0) {
      const { length } = itemsOf(thing, ref).items;
      if (length !== ref.count) this.wrong.push(this.differs(ref, thing, ref.count, length));
      return;
    }
    const key = `${thing.id} ${action.verb}`;
    this.groups.set(key, [...(this.groups.get(key) ?? []), { ref, thing, number: ref.count }]);
  }

  /** `remove bolts x2` twice is four: what several steps name is added up. */
  faults(): Fact[] {
    const facts = [...this.wrong];
    for (const group of this.groups.values()) {
      const count = group[0]?.thing.count ?? 0;
      const sum = group.reduce((total, { number }) => total + number, 0);
      if (sum % count === 0) continue;
      for (const { ref, thing, number } of group)
        if (number !== count) facts.push(this.differs(ref, thing, number, count));
    }
    return facts;
  }

  private differs(ref: Ref, thing: Thing, number: number, count: number): Fact {
    return {
      check: 'count-differs',
      at: { file: this.file, start: ref.start, end: ref.end },
      subject: { thing },
      words: { step: 'yes', number: String(number), count: String(count) },
      story: [{ at: thing.place, what: 'declared', thing }],
    };
  }
}

/** A group that goes to a torque, and whose number nobody gives. */
export function isUncounted(model: Model, { thing }: Tightened, typed: boolean): boolean {
  if (thing.type !== 'fastener' || thing.count !== undefined || !isMany(thing)) return false;
  return typed || thing.torque !== undefined || declared(model, thing).final !== undefined;
}

/** A plural title stands for a group; `drain plug` is one and needs no count. */
function isMany({ title }: Thing): boolean {
  const noun = title.split(/ (?:of|on|for|with|in|to|at|from|under|between) |, | \(/)[0] ?? '';
  return /[^us]s$/i.test(noun);
}
