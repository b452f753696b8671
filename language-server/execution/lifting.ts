/**
 * Weights that are lifted by hand: what a step takes off or puts back, with all that moves along, against what so
 * many people can lift in any posture (HSE filter, largest box). Only declared masses count, so the true weight is
 * not less. Nothing is said where nobody says how many people there are and four could lift it, where a lifting tool is
 * named, or where the thing hangs or stands on a support. Fact `heavy-lift`: a guideline, never a proof of safety.
 */
import type { Action, Procedure } from '../../grammar/syntax/tree.ts';
import { type LiftingGuideline, MOST_IN_A_TEAM, mostByHand } from '../hazards/index.ts';
import { bandIn, readTyped } from '../model/fastening-amounts.ts';
import { clauseOf } from '../model/fastening-declared.ts';
import type { Model, Thing } from '../model/model.ts';
import { bit, NO, OFF, PLACED } from './aspects.ts';
import { type CaseSet, NONE } from './cases.ts';
import { movedWith } from './geometry.ts';
import type { Run } from './run.ts';
import type { Watcher } from './watch.ts';
import { placeOf, withoutRounds } from './watch-place.ts';

const LIFTS: Readonly<Record<string, 'off' | 'on' | 'up'>> = {
  remove: 'off',
  unbolt: 'off',
  refit: 'on',
  fit: 'on',
  'trial fit': 'on',
  'bolt up': 'on',
  raise: 'up',
  // With nothing to hold it up, people do.
  support: 'up',
};

/** Tools that carry the weight, by what they are called. */
const CARRIES =
  /\b(hoist|crane|jack|lift|lifter|lifting|sling|slings|chain|tackle|winch|gantry|trolley|forklift|fork|truck|table|stand|stands|blocks?|davit|hook|strap|platform|cradle|frame|dolly|bench|eye|eyes|beam)\b/i;

/** Different weights of one thing in different cases that are told apart. */
const MOST_WEIGHTS = 64;

interface Weight {
  readonly mass: number;
  readonly with: readonly number[];
  readonly cases: CaseSet;
}

export class LiftWatch implements Watcher {
  private readonly run: Run;
  private readonly masses: ReadonlyMap<number, number>;
  private readonly stated: number | undefined;
  private readonly guideline: LiftingGuideline;

  constructor(run: Run, procedure: Procedure, guideline: LiftingGuideline = 'hse') {
    this.run = run;
    this.guideline = guideline;
    this.masses = massesOf(run.model);
    const header = procedure.headers.find((one) => one.header === 'people');
    this.stated = header?.header === 'people' ? header.count : undefined;
  }

  /** It looks at each step by itself. */
  memory(): undefined {}
  recall(): void {}

  before(action: Action, file: string, items: readonly number[]): void {
    const lifted = LIFTS[action.verb];
    if (!lifted || this.masses.size === 0 || this.run.usedAt || this.run.round > 0) return;
    const bears = (name: string) =>
      action.verb === 'support' ? this.run.model.byName.get(name)?.type === 'tool' : this.isCarrier(name);
    if (action.tails.some((tail) => 'refs' in tail && tail.refs.some((ref) => bears(ref.name.text)))) return;
    const named = action.tails.find((tail) => tail.tail === 'with' && tail.people !== undefined);
    const people = (named?.tail === 'with' ? named.people : undefined) ?? this.stated;
    const limit = mostByHand(people ?? MOST_IN_A_TEAM, this.guideline);
    for (const item of items) {
      const { cases } = this.run;
      const thing = this.run.thing(item);
      if (thing.type !== 'part' && thing.type !== 'control' && thing.type !== 'isolator') continue;
      const there = cases.and(this.run.within, thing.exists);
      const place = lifted === 'on' ? bit(OFF) : PLACED;
      const loose = action.fresh ? there : this.run.where('place', item, place, there);
      const carried = this.run.where('supported', item, bit(NO), loose);
      for (const weight of this.weights(item, carried)) {
        if (weight.mass <= limit) continue;
        this.run.fact({
          check: 'heavy-lift',
          at: placeOf({ action, file }, thing),
          subject: { thing, items: [item] },
          others: weight.with.map((one) => ({ thing: this.run.thing(one), items: [one] })),
          cases: withoutRounds(this.run, weight.cases),
          words: {
            mass: number(weight.mass),
            limit: number(limit),
            guideline: people === 1 ? this.guideline : 'hse',
            ...(people === undefined ? {} : { people: String(people) }),
          },
        });
      }
    }
  }

  /** The mass of the item with what moves along, heaviest first, with the cases of each. */
  private weights(item: number, within: CaseSet): Weight[] {
    const own = this.masses.get(item);
    let all: Weight[] = [{ mass: own ?? 0, with: [], cases: within }];
    if (within === NONE) return [];
    const { cases } = this.run;
    for (const [rider, along] of movedWith(this.run, [item], within).moved) {
      const mass = this.masses.get(rider);
      if (rider === item || mass === undefined || all.length > MOST_WEIGHTS) continue;
      all = all.flatMap((one) => {
        const both = cases.and(one.cases, along);
        const rest = cases.minus(one.cases, along);
        return [
          ...(both === NONE ? [] : [{ mass: one.mass + mass, with: [...one.with, rider], cases: both }]),
          ...(rest === NONE ? [] : [{ ...one, cases: rest }]),
        ];
      });
    }
    return all.sort((a, b) => b.mass - a.mass);
  }

  private isCarrier(name: string): boolean {
    const tool = this.run.model.byName.get(name);
    return tool?.type === 'tool' && CARRIES.test(`${tool.name.replaceAll('-', ' ')} ${tool.title}`);
  }
}

/** kg, the low end where a range is declared; of each one of a group. */
const weighed = new WeakMap<Model, ReadonlyMap<number, number>>();

/** Item -> kg, of what has a mass; read once for all procedures of a machine. */
function massesOf(model: Model): ReadonlyMap<number, number> {
  let masses = weighed.get(model);
  if (!masses) {
    const all = new Map<number, number>();
    for (const thing of model.things) {
      const mass = massOf(model, thing);
      if (mass === undefined) continue;
      for (let item = thing.first; item < thing.first + thing.positions.length; item++) all.set(item, mass);
    }
    masses = all;
    weighed.set(model, masses);
  }
  return masses;
}

function massOf(model: Model, thing: Thing): number | undefined {
  const read = readTyped(clauseOf(thing, 'mass')?.quantity, model.values);
  if (read?.unit.kind !== 'mass') return undefined;
  const { low } = bandIn(read, 'kg');
  return low > 0 ? low : undefined;
}

function number(value: number): string {
  return String(Number(value.toFixed(1)));
}
