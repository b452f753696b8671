/** The analyses of what a file declares, machine by machine. */
import type { Machine } from '../../grammar/syntax/tree.ts';
import type { Fact } from '../model/facts.ts';
import { fasteningFaults } from '../model/fastening-faults.ts';
import { declaredFlowFaults } from '../model/flow-faults.ts';
import { declaredHazardFaults } from '../model/hazard-faults.ts';
import { machineFaults } from '../model/machine-faults.ts';
import type { Model } from '../model/model.ts';
import type { LoadedFile } from '../model/names.ts';
import { ruleFaults } from '../rules/faults.ts';
import type { ModelMade } from './kept.ts';

export interface Analysis {
  /** Where a failure of it is reported. */
  start: number;
  model: Model;
  facts(): readonly Fact[];
}

/** `made`: the models of the file's machines; of a file that declares for machines elsewhere, the one without a machine. */
export function analysesOfDeclarations(
  file: LoadedFile,
  made: ReadonlyMap<Machine | undefined, ModelMade>,
): Analysis[] {
  // A machine that extends another in the same file has the other's faults too.
  const told = new Set<string>();
  const isNew = ({ check, at }: Fact): boolean => {
    const key = `${check} ${at.start} ${at.end}`;
    const before = told.has(key);
    told.add(key);
    return !before;
  };
  return [...made].flatMap(([machine, { model, facts }]) => {
    const items = machine ? [...machine.items, ...file.shared] : file.shared;
    // What the machines that use the file declare is not known in it.
    const isOwn = ({ check, at }: Fact) =>
      at.file === file.path && (machine !== undefined || check !== 'unknown-name');
    const analyses = [
      () => machineFaults(model),
      () => fasteningFaults(model),
      () => declaredHazardFaults(model),
      () => ruleFaults(model),
      () => declaredFlowFaults(model, items, file),
    ];
    const start = machine?.start ?? 0;
    return [
      { start, model, facts: () => facts.filter(isOwn) },
      ...analyses.map((faults) => ({
        start,
        model,
        facts: () => faults().filter((fact) => isOwn(fact) && isNew(fact)),
      })),
    ];
  });
}
