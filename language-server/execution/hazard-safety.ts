/** Whether the energy that a hazard is about is gone: by the state of its system, or for a part that was left to cool. */
import { energyOf } from '../hazards/index.ts';
import { bit, DRAINED, YES } from './aspects.ts';
import { type CaseSet, NONE } from './cases.ts';
import type { DeclaredHazard } from './declared-hazards.ts';
import type { Run } from './run.ts';

export class HazardSafety {
  /** Parts left to cool. */
  private readonly cooled = new Map<number, CaseSet>();
  private readonly run: Run;

  constructor(run: Run) {
    this.run = run;
  }

  memory(): [number, CaseSet][] {
    return [...this.cooled];
  }

  recall(cooled: readonly [number, CaseSet][]): void {
    this.cooled.clear();
    for (const [item, set] of cooled) this.cooled.set(item, set);
  }

  /** A step was done: what cools, and what a run makes hot again. */
  after(verb: string, items: readonly number[]): void {
    const { cases, within } = this.run;
    if (verb === 'run')
      for (const [item, set] of this.cooled) this.cooled.set(item, cases.minus(set, within));
    if (verb === 'let cool')
      for (const item of this.coolsWith(items))
        this.cooled.set(item, cases.or(this.cooled.get(item) ?? NONE, within));
  }

  /** The cases in which the energy that the hazard is about is gone. */
  safe({ thing, hazard, system }: DeclaredHazard): CaseSet {
    const { run } = this;
    if (system === undefined) {
      if (hazard !== 'hot') return NONE;
      let all: CaseSet = thing.exists;
      for (let item = thing.first; item < thing.first + thing.positions.length; item++)
        all = run.cases.and(all, this.cooled.get(item) ?? NONE);
      return all;
    }
    const of = run.thing(system);
    const energy = energyOf(hazard);
    const exists = of.exists;
    if (energy === 'fluid' && of.hasFluid) return run.where('fluid', system, bit(DRAINED), exists);
    const has = { pressure: of.hasPressure, heat: of.hasHeat, live: of.hasLive };
    if (energy && energy !== 'fluid' && has[energy]) return run.where(energy, system, bit(YES), exists);
    // A hazard of another kind is gone with all energy that the system has.
    let all: CaseSet = exists;
    let any = false;
    for (const one of ['pressure', 'heat', 'live'] as const) {
      if (!has[one]) continue;
      any = true;
      all = run.cases.and(all, run.where(one, system, bit(YES), exists));
    }
    return any ? all : NONE;
  }

  /** What cools with these: what sits on them, and what opens the systems that are meant. */
  private coolsWith(items: readonly number[]): Set<number> {
    const { model } = this.run;
    const all = new Set(items);
    for (const item of all) {
      for (const rider of model.riders[item]!) all.add(rider);
      if (model.thingOf[item]!.type === 'system') for (const point of model.openedBy[item]!) all.add(point);
    }
    return all;
  }
}
