/**
 * What was found before, kept for as long as what it rests on is the same: models by their declarations, findings by
 * the procedure, its machine and the procedures that it uses. "The same" is "the same object" (see graft.ts). What
 * rests on procedures that use each other in a circle is never kept: there the order of asking counts.
 */
import type { Machine, Procedure } from '../../grammar/syntax/tree.ts';
import type { Checked, Kept, ModelMade } from '../checks/kept.ts';
import { SharedWork } from '../execution/shared-work.ts';
import { buildModel } from '../model/build.ts';
import type { Model } from '../model/model.ts';
import { findMachine, findProcedure, type LoadedFile } from '../model/names.ts';
import { namesAfterDo } from '../model/row.ts';
import { Surveys } from '../model/survey.ts';
import { KeptExecutions } from './kept-executions.ts';

/** What was done and not taken over, counted since the beginning. */
export interface CheckingWork {
  models: number;
  /** Procedures that were checked. */
  procedures: number;
  /** Other parts (declarations, quantities of an item) that were checked. */
  parts: number;
  /** Actions that were executed. */
  actions: number;
}

interface Entry<Value> {
  basis: readonly unknown[];
  value: Value;
}

export class KeptWork {
  readonly work: CheckingWork = { models: 0, procedures: 0, parts: 0, actions: 0 };
  private readonly procedures = new WeakMap<object, Entry<Checked>>();
  private readonly parts = new WeakMap<object, Entry<Checked>>();
  private readonly named = new Map<string, Entry<Checked>>();
  private readonly models = new WeakMap<Machine, Entry<ModelMade>>();
  private readonly sharedModels = new Map<string, Entry<ModelMade>>();
  private readonly alone = new WeakMap<Model, Map<Procedure, Entry<ReadonlySet<string>>>>();
  private readonly used = new WeakMap<Procedure, readonly string[]>();
  private readonly surveys = new Map<string, Surveys>();
  private readonly executions = new KeptExecutions();

  /** For checking one file as the others stand now. `settings` is what all findings rest on. */
  for(visible: (file: LoadedFile) => readonly LoadedFile[], settings: readonly unknown[]): Round {
    const rounds: { model: Model; shared: SharedWork; visible: readonly LoadedFile[] }[] = [];
    return {
      unit: (of, { model, procedure, file, more }, work) => {
        const reach = procedure ? this.reach(procedure, visible(file)) : [];
        if (reach === undefined) return this.counted(procedure, work());
        const basis = [file.path, model, ...settings, ...(more ?? []), ...reach];
        const store = typeof of === 'string' ? undefined : procedure ? this.procedures : this.parts;
        const known = store ? store.get(of as object) : this.named.get(of as string);
        if (known && equal(known.basis, basis)) return known.value;
        const value = this.counted(procedure, work());
        if (store) store.set(of as object, { basis, value });
        else this.named.set(of as string, { basis, value });
        return value;
      },
      model: (machine, file, seen) => this.model(machine, file, seen),
      surveys: (path) => {
        const surveys = this.surveys.get(path) ?? new Surveys();
        this.surveys.set(path, surveys);
        return surveys;
      },
      execution: (procedure, on) => {
        const reach = this.reach(procedure, on.visible);
        if (!reach) return undefined;
        return this.executions.take(procedure, on, [...settings, ...reach]);
      },
      shared: (model, seen) => {
        const shared = new SharedWork();
        for (const [procedure, { basis, value }] of this.alone.get(model) ?? []) {
          const reach = this.reach(procedure, seen);
          if (reach && equal(basis, reach)) shared.alone.set(procedure, value);
        }
        rounds.push({ model, shared, visible: seen });
        return shared;
      },
      done: () => {
        for (const { model, shared, visible: seen } of rounds) {
          const kept = new Map<Procedure, Entry<ReadonlySet<string>>>();
          for (const [procedure, value] of shared.alone) {
            const basis = this.reach(procedure, seen);
            if (basis) kept.set(procedure, { basis, value });
          }
          for (const [procedure, entry] of this.alone.get(model) ?? [])
            if (!kept.has(procedure)) kept.set(procedure, entry);
          this.alone.set(model, current(kept, seen));
        }
      },
    };
  }

  private counted(procedure: Procedure | undefined, checked: Checked): Checked {
    if (procedure) this.work.procedures++;
    else this.work.parts++;
    this.work.actions += checked.statements;
    return checked;
  }

  private model(machine: Machine | undefined, file: LoadedFile, visible: readonly LoadedFile[]): ModelMade {
    const basis = modelBasis(machine, file, visible);
    const known = machine ? this.models.get(machine) : this.sharedModels.get(file.path);
    if (known && equal(known.basis, basis)) return known.value;
    this.work.models++;
    const value = buildModel(machine, file, visible);
    if (machine) this.models.set(machine, { basis, value });
    else this.sharedModels.set(file.path, { basis, value });
    return value;
  }

  /** Rules that may hold, every procedure that it uses, through others too, names for one that is missing; undefined in a circle. */
  private reach(procedure: Procedure, visible: readonly LoadedFile[]): unknown[] | undefined {
    const names = this.namesOf(procedure);
    // Rules at the top of a file hold for its procedures.
    const result: unknown[] = visible.flatMap(({ shared }) => shared.filter(({ kind }) => kind === 'rule'));
    if (names.length === 0) return result;
    const met = new Set<Procedure>();
    const open: Procedure[] = [procedure];
    for (const one of open) {
      for (const name of this.namesOf(one)) {
        const found = findProcedure(visible, name);
        if (!found) {
          result.push(
            visible.flatMap((file) => file.procedures.map((other) => other.name?.text ?? '')).join(' '),
          );
          continue;
        }
        result.push(found.procedure, found.file.path);
        if (met.has(found.procedure)) continue;
        met.add(found.procedure);
        open.push(found.procedure);
      }
    }
    const from = (one: Procedure) =>
      this.namesOf(one).flatMap((name) => findProcedure(visible, name)?.procedure ?? []);
    return inCircle(new Set([procedure, ...met]), from) ? undefined : result;
  }

  /** The names after `do` and `starts where`. */
  private namesOf(procedure: Procedure): readonly string[] {
    let names = this.used.get(procedure);
    if (!names) {
      const all = new Set<string>();
      for (const header of procedure.headers)
        if (header.header === 'starts where' && header.ref) all.add(header.ref.name.text);
      for (const name of namesAfterDo(procedure)) all.add(name);
      names = [...all];
      this.used.set(procedure, names);
    }
    return names;
  }
}

export interface Round extends Kept {
  /** Keeps what was found out on the way. */
  done(): void;
}

/** What a model is made from. */
function modelBasis(
  machine: Machine | undefined,
  file: LoadedFile,
  visible: readonly LoadedFile[],
): unknown[] {
  const basis: unknown[] = [file.path];
  const met = new Set<Machine>();
  for (let one = machine; one && !met.has(one); ) {
    met.add(one);
    basis.push(one);
    if (!one.extends) break;
    const found = findMachine(visible, one.extends.text);
    basis.push(found?.file.path);
    if (!found) {
      basis.push(visible.flatMap((other) => other.machines.map((m) => m.name?.text ?? '')).join(' '));
    }
    one = found?.machine;
  }
  for (const other of visible) basis.push(other.path, ...other.shared);
  return basis;
}

/** Whether any of them leads back to itself. */
function inCircle(all: ReadonlySet<Procedure>, from: (one: Procedure) => readonly Procedure[]): boolean {
  const done = new Set<Procedure>();
  const onTheWay = new Set<Procedure>();
  const leadsBack = (one: Procedure): boolean => {
    if (onTheWay.has(one)) return true;
    if (done.has(one)) return false;
    onTheWay.add(one);
    const back = from(one).some(leadsBack);
    onTheWay.delete(one);
    done.add(one);
    return back;
  };
  return [...all].some(leadsBack);
}

/** Without procedures that are no longer written anywhere that can be seen. */
function current<Value>(
  entries: Map<Procedure, Value>,
  visible: readonly LoadedFile[],
): Map<Procedure, Value> {
  const written = new Set(visible.flatMap(({ procedures }) => procedures));
  return new Map([...entries].filter(([procedure]) => written.has(procedure)));
}

function equal(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index++) if (a[index] !== b[index]) return false;
  return true;
}
