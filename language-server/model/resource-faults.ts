/**
 * What a procedure says that it needs against what its steps use: tools and people, new parts and fluids, time. Facts
 * `tool-unlisted`, `tool-unused`, `people-short`, `supply-short`, `time-differs`.
 */
import type { Procedure } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import type { Model } from './model.ts';
import type { LoadedFile } from './names.ts';
import { supplyFaults } from './supply-faults.ts';
import { timeFaults } from './time-faults.ts';
import { toolFaults } from './tool-faults.ts';

export function resourceFaults(
  model: Model,
  procedure: Procedure,
  file: LoadedFile,
  visible: readonly LoadedFile[],
): Fact[] {
  return [
    ...toolFaults(model, procedure, file, visible),
    ...supplyFaults(model, procedure, file),
    ...timeFaults(model, procedure, file),
  ];
}
