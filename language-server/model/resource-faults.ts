/**
 * What a procedure says that it needs against what its steps use: tools and people, new parts and fluids, time. Facts
 * `tool-unlisted`, `tool-unused`, `people-short`, `supply-short`, `time-differs`.
 */
import type { Fact } from './facts.ts';
import type { Model } from './model.ts';
import type { LoadedFile } from './names.ts';
import { supplyFaults } from './supply-faults.ts';
import type { Survey, Surveys } from './survey.ts';
import { timeFaults } from './time-faults.ts';
import { toolFaults } from './tool-faults.ts';

export function resourceFaults(
  model: Model,
  survey: Survey,
  file: LoadedFile,
  visible: readonly LoadedFile[],
  surveys: Surveys,
): Fact[] {
  return [
    ...toolFaults(model, survey, file, visible, surveys),
    ...supplyFaults(model, survey, file),
    ...timeFaults(model, survey.procedure, file),
  ];
}
