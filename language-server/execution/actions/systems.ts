/** Systems: made safe and brought back, drained and filled, bled, run. */
import { AWAY, bit, CONNECTED, DRAINED, FULL, LOW, NO, YES } from '../aspects.ts';
import { type CaseSet, NONE } from '../cases.ts';
import type { Run } from '../run.ts';
import { already, closed } from './common.ts';
import { cured } from './curing.ts';

export function isolate(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    const set = already(
      run,
      system,
      run.entries('live', system),
      bit(YES),
      existing(run, system),
      false,
      'isolated',
    );
    run.set('live', system, YES, set);
    run.set('proved', system, NO, set);
    for (const isolator of run.model.isolators[system]!) {
      moveIsolator(run, isolator, YES, set);
      cutOthers(run, system, isolator, set);
    }
  }
}

export function restore(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    const set = already(
      run,
      system,
      run.entries('live', system),
      bit(NO),
      existing(run, system),
      true,
      'restored',
    );
    energise(run, system, set);
    for (const isolator of run.model.isolators[system]!) {
      moveIsolator(run, isolator, NO, set);
      for (const other of run.model.isolates[isolator]!) {
        if (other === system) continue;
        const dead = run.where('live', other, bit(YES), set);
        energise(run, other, dead, [isolator]);
        // Restoring that one as well is not done twice.
        run.assume('live', other, NO, dead);
      }
    }
  }
}

/** One switch may cut off more than the system that was meant: that is no work of its own on the others. */
function cutOthers(run: Run, system: number, isolator: number, within: CaseSet): void {
  for (const other of run.model.isolates[isolator]!) {
    if (other === system) continue;
    let all = run.where('live', other, bit(NO), within);
    for (const one of run.model.isolators[other]!) {
      const connection = run.thing(one).type === 'connection';
      all = run.cases.and(
        all,
        connection ? run.where('place', one, ~bit(CONNECTED), all) : run.where('moved', one, bit(YES), all),
      );
    }
    run.assume('live', other, YES, all);
    run.set('proved', other, NO, all);
  }
}

function moveIsolator(run: Run, isolator: number, value: number, within: CaseSet): void {
  if (run.thing(isolator).type === 'connection')
    run.set('place', isolator, value === YES ? 1 : CONNECTED, within);
  else run.set('moved', isolator, value, within);
}

/** Energy comes back: nothing of the system may be open or locked out. */
export function energise(run: Run, system: number, within: CaseSet, except: readonly number[] = []): void {
  if (within === NONE) return;
  closed(run, 'restored-out-of-order', system, within);
  for (const isolator of run.model.isolators[system]!) {
    if (except.includes(isolator)) continue;
    run.require('restored-out-of-order', system, 'lock', isolator, bit(NO), NO, within, 'locked');
  }
  run.set('live', system, NO, within);
  run.set('proved', system, NO, within);
}

export function relieve(run: Run, systems: readonly number[]): void {
  for (const system of systems) run.set('pressure', system, YES);
}

/** Of a part: the systems it opens or is in are cool; a part in none changes nothing that is tracked. */
export function letCool(run: Run, items: readonly number[]): void {
  for (const item of items) {
    if (run.thing(item).type === 'system') run.set('heat', item, YES);
    else
      for (const system of [...run.model.opens[item]!, ...run.model.runs[item]!])
        run.set('heat', system, YES);
  }
}

export function prove(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    const thing = run.thing(system);
    const set = existing(run, system);
    if (thing.hasLive)
      run.require('not-made-safe', system, 'live', system, bit(YES), YES, set, 'restored', { live: 'live' });
    if (thing.hasPressure)
      run.require('not-made-safe', system, 'pressure', system, bit(YES), YES, set, 'pressurised', {
        'under pressure': 'under pressure',
      });
    run.set('proved', system, YES, set);
  }
}

/** After a finding the system is taken to be live or dead, and its isolators with it. */
export function assumeLive(run: Run, system: number, value: number, within: CaseSet): void {
  run.assume('live', system, value, within);
  for (const isolator of run.model.isolators[system]!) {
    if (run.thing(isolator).type === 'connection')
      run.assume('place', isolator, value === YES ? 1 : CONNECTED, within);
    else run.assume('moved', isolator, value, within);
    if (value === NO) run.assume('lock', isolator, NO, within);
  }
}

export function drain(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    const set = already(
      run,
      system,
      run.entries('fluid', system),
      bit(DRAINED),
      existing(run, system),
      false,
      'drained',
    );
    run.set('fluid', system, DRAINED, set);
    if (run.thing(system).needsBleeding) run.set('bled', system, YES, set);
  }
}

export function fill(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    const set = already(
      run,
      system,
      run.entries('fluid', system),
      bit(FULL),
      existing(run, system),
      true,
      'filled',
    );
    closed(run, 'restored-out-of-order', system, set);
    cured(run, system, set);
    run.set('fluid', system, FULL, set);
  }
}

export function topUp(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    cured(run, system, existing(run, system));
    run.set('fluid', system, FULL);
  }
}

export function bleed(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    run.set('bled', system, NO);
    run.set('fluid', system, FULL, run.where('fluid', system, bit(LOW)));
  }
}

export function evacuate(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    if (run.thing(system).hasFluid)
      run.require(
        'opened-full',
        system,
        'fluid',
        system,
        bit(DRAINED),
        DRAINED,
        existing(run, system),
        'filled',
        { verb: 'evacuate' },
      );
  }
}

export function pressurise(run: Run, systems: readonly number[]): void {
  for (const system of systems) {
    closed(run, 'restored-out-of-order', system, existing(run, system));
    cured(run, system, existing(run, system));
    run.set('pressure', system, NO);
    run.set('proved', system, NO);
  }
}

/** Running asks that everything it runs is whole, and makes it hot and puts it under pressure. */
export function runMachine(run: Run, items: readonly number[]): void {
  const { model, cases } = run;
  const systems = new Set<number>();
  for (const item of items) {
    systems.add(item);
    for (const system of model.runs[item]!) systems.add(system);
  }
  if (items.length === 0) {
    for (const thing of model.things) {
      if (thing.type === 'system')
        for (let i = 0; i < thing.positions.length; i++) systems.add(thing.first + i);
    }
  }
  for (const system of systems) {
    const thing = run.thing(system);
    if (thing.type !== 'system') continue;
    const set = existing(run, system);
    closed(run, 'restored-out-of-order', system, set);
    if (thing.hasFluid)
      run.require('restored-out-of-order', system, 'fluid', system, ~bit(DRAINED), FULL, set, 'drained');
    if (thing.hasLive)
      assumeLive(
        run,
        system,
        NO,
        run.require('restored-out-of-order', system, 'live', system, bit(NO), NO, set, 'isolated'),
      );
    for (const isolator of model.isolators[system]!) {
      run.require('restored-out-of-order', system, 'lock', isolator, bit(NO), NO, set, 'locked');
    }
    run.set('pressure', system, NO, set);
    run.set('heat', system, NO, set);
    run.set('proved', system, NO, set);
  }
  if (model.couplings.length === 0) return;
  const coupled = new Set(model.couplings.flatMap((coupling) => coupling.items));
  for (const thing of model.things) {
    if (thing.type !== 'tool') continue;
    const locked = model.locks[thing.first]!.filter((item) => coupled.has(item));
    if (locked.length === 0) continue;
    run.require(
      'turned-while-locked',
      locked[0]!,
      'place',
      thing.first,
      bit(AWAY),
      AWAY,
      cases.and(run.within, thing.exists),
      'put in place',
    );
  }
}

function existing(run: Run, item: number): CaseSet {
  return run.cases.and(run.within, run.thing(item).exists);
}
