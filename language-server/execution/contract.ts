/** What a procedure says of how it starts and ends: which things a claim is about, and whether it holds. */
import type { Procedure, StateClaim } from '../../grammar/syntax/tree.ts';
import { itemsOf } from '../model/items.ts';
import type { Model, Thing } from '../model/model.ts';
import type { Place } from '../report/finding.ts';
import { type CaseSet, NONE } from './cases.ts';
import { meaning } from './questions.ts';
import type { Run } from './run.ts';

/** Where a procedure is used, what it says it starts with has to hold. */
export function startHolds(run: Run, procedure: Procedure, at: Place, name: string): void {
  for (const header of procedure.headers) {
    if (header.header !== 'starts with') continue;
    for (const claim of header.claims) {
      const word = claim.state?.text;
      if (!word || claim.scope === 'everything') continue;
      for (const { thing, items } of claimed(run.model, claim)) {
        let failing: CaseSet = NONE;
        for (const item of items) {
          const means = meaning(run, thing, item, word);
          if (!means) continue;
          for (const entry of run.entries(means.aspect, item)) {
            if (!((means.mask >>> entry.value) & 1) && !entry.assumed)
              failing = run.cases.or(failing, entry.cases);
          }
          run.assume(means.aspect, item, means.value, run.where(means.aspect, item, ~means.mask));
        }
        if (failing !== NONE) {
          run.fact({
            check: 'contract-broken',
            at,
            subject: { thing, items },
            cases: failing,
            words: { state: word, side: 'starts', procedure: name },
          });
        }
      }
    }
  }
}

/** A procedure that is printed elsewhere is done, as one step: what it says it ends with is so. */
export function makeSo(run: Run, procedure: Procedure): void {
  for (const header of procedure.headers) {
    if (header.header !== 'ends with') continue;
    for (const claim of header.claims) {
      const word = claim.state?.text;
      if (!word) continue;
      for (const { thing, items } of claimed(run.model, claim)) {
        for (const item of items) {
          const means = meaning(run, thing, item, word);
          if (means) run.set(means.aspect, item, means.value);
        }
      }
    }
  }
}

/** A shared declaration that others are `like` and that itself holds, seals or joins nothing is no thing of the machine. */
function isPattern(model: Model, thing: Thing): boolean {
  if (model.seats[thing.first]!.length > 0) return false;
  if (thing.type === 'fastener' || thing.type === 'connection')
    return model.members[thing.first]!.length === 0;
  return thing.type === 'seal' && model.sealedParts[thing.first]!.length === 0;
}

/** The things a claim is about, with their items. */
export function claimed(model: Model, claim: StateClaim): { thing: Thing; items: number[] }[] {
  const except = new Set(
    claim.except.flatMap((ref) =>
      model.byName.has(ref.name.text) ? itemsOf(model.byName.get(ref.name.text)!, ref).items : [],
    ),
  );
  const result: { thing: Thing; items: number[] }[] = [];
  const add = (thing: Thing, items: readonly number[]) => {
    const left = items.filter((item) => !except.has(item));
    if (left.length > 0) result.push({ thing, items: left });
  };
  if (claim.scope === 'everything') {
    for (const thing of model.things) {
      if (['fluid', 'consumable', 'kit', 'face', 'tool'].includes(thing.type) || isPattern(model, thing))
        continue;
      add(
        thing,
        thing.positions.map((_, index) => thing.first + index),
      );
    }
    return result;
  }
  for (const ref of claim.refs) {
    const thing = model.byName.get(ref.name.text);
    if (!thing) continue;
    const { items } = itemsOf(thing, ref);
    if (claim.scope === 'things') {
      add(thing, items);
      continue;
    }
    const all = new Set(items);
    for (const item of all) for (const rider of model.riders[item]!) all.add(rider);
    for (const item of [...all]) {
      for (const belonging of [
        ...model.fastenersOf[item]!,
        ...model.connectionsOf[item]!,
        ...model.seals[item]!,
      ])
        all.add(belonging);
    }
    for (const item of all) add(model.thingOf[item]!, [item]);
  }
  return result;
}
