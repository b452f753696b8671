/**
 * What a check of a file that is being edited takes over from the check before it. The engine keeps it; a check from
 * scratch has none.
 */
import type { Machine, Procedure } from '../../grammar/syntax/tree.ts';
import type { Cases } from '../execution/cases.ts';
import type { MoreWatchers } from '../execution/execute.ts';
import type { SharedWork } from '../execution/shared-work.ts';
import type { Fact } from '../model/facts.ts';
import type { Model } from '../model/model.ts';
import type { LoadedFile } from '../model/names.ts';
import type { Surveys } from '../model/survey.ts';
import type { House } from '../project/project.ts';
import type { Finding } from '../report/finding.ts';

/** What one part of a file has shown, and how much was gone through for it. */
export interface Checked {
  findings: Finding[];
  statements: number;
  followed: number;
}

export interface ModelMade {
  model: Model;
  facts: Fact[];
}

/**
 * Keeps what was found for as long as what it rests on is the same. `of` is the node that it is about; `about` the
 * procedure, where it is about one.
 */
export interface Kept {
  unit(
    of: object | string,
    basis: { model?: Model; procedure?: Procedure; file: LoadedFile; more?: readonly unknown[] },
    work: () => Checked,
  ): Checked;
  model(machine: Machine | undefined, file: LoadedFile, visible: readonly LoadedFile[]): ModelMade;
  shared(model: Model, visible: readonly LoadedFile[]): SharedWork;
  /** What the statements of a file's procedures showed before. */
  surveys(path: string): Surveys;
  /** The procedure carried out as far as it is other than before; undefined where it is not kept. */
  execution(
    procedure: Procedure,
    on: {
      model: Model;
      file: LoadedFile;
      visible: readonly LoadedFile[];
      house: House;
      more: MoreWatchers;
    },
  ): { facts: readonly Fact[]; cases: Cases; executed: number; followed: number } | undefined;
}
