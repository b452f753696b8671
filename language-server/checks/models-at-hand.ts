/**
 * Models of machines, with the work that procedures of one machine share: each made once for all files that are checked,
 * or taken over from the check before.
 */
import type { Machine } from '../../grammar/syntax/tree.ts';
import { SharedWork } from '../execution/shared-work.ts';
import { buildModel } from '../model/build.ts';
import type { Model } from '../model/model.ts';
import type { LoadedFile } from '../model/names.ts';
import type { Kept, ModelMade } from './kept.ts';

/** Models by the machine (or the file of shared declarations) they are made from. */
export type Models = Map<Machine | LoadedFile, ModelMade>;

export class ModelsAtHand {
  /** Models that the file at hand asked for. */
  readonly asked = new Set<Model>();
  /** Models that procedures of the file at hand are for. */
  readonly spoken = new Set<Model>();
  private readonly models: Models;
  private readonly kept: Kept | undefined;
  private readonly shared = new Map<Model, SharedWork>();

  /** `models` may hold some that were made before. */
  constructor(models: Models, kept: Kept | undefined) {
    this.models = models;
    this.kept = kept;
  }

  /** Another file is at hand: what others took of a machine's share of work is nothing to it. */
  nextFile(): void {
    for (const work of this.shared.values()) work.followed = 0;
    this.asked.clear();
    this.spoken.clear();
  }

  /** The model of a machine, or of what a file declares for the machines of others. */
  of(machine: Machine | undefined, file: LoadedFile, visible: readonly LoadedFile[]): ModelMade {
    const key = machine ?? file;
    let made = this.models.get(key);
    if (!made) {
      made = this.kept?.model(machine, file, visible) ?? buildModel(machine, file, visible);
      this.models.set(key, made);
    }
    this.asked.add(made.model);
    return made;
  }

  sharedOf(model: Model, visible: readonly LoadedFile[]): SharedWork {
    const shared = this.shared.get(model) ?? this.kept?.shared(model, visible) ?? new SharedWork();
    this.shared.set(model, shared);
    return shared;
  }

  /** Nothing is asked any more of a file that was checked. */
  letGo(file: LoadedFile): void {
    for (const key of [file, ...file.machines]) {
      const made = this.models.get(key);
      if (made) this.shared.delete(made.model);
      this.models.delete(key);
    }
  }
}
