/** The analyses of what stands in a procedure, without carrying it out; and which faults of the execution they explain. */
import type { Procedure } from '../../grammar/syntax/tree.ts';
import { amountFaults } from '../model/amounts-in-steps.ts';
import type { Fact } from '../model/facts.ts';
import { fasteningSteps } from '../model/fastening-steps.ts';
import { flowFaults } from '../model/flow-faults.ts';
import { actionAt, headOf } from '../model/flow-walk.ts';
import { fluidFaults } from '../model/fluid-faults.ts';
import { hazardFaults } from '../model/hazard-faults.ts';
import type { Model } from '../model/model.ts';
import type { LoadedFile } from '../model/names.ts';
import { pictureFaults } from '../model/picture-faults.ts';
import { resourceFaults } from '../model/resource-faults.ts';
import type { Surveys } from '../model/survey.ts';
import { testerFaults } from '../model/tester-faults.ts';
import { wordingFaults } from '../model/wording-faults.ts';

/** All but those of names (see ../model/procedure-names.ts), which the others and the execution rest on. */
export function analysesOfSteps(
  procedure: Procedure,
  model: Model,
  file: LoadedFile,
  visible: readonly LoadedFile[],
  surveys: Surveys,
): (() => readonly Fact[])[] {
  const survey = surveys.of(procedure);
  return [
    () => fasteningSteps(model, survey, file),
    () => amountFaults(model, survey, file),
    () => flowFaults(model, survey, file),
    () => hazardFaults(model, survey, file),
    () => wordingFaults(model, survey, file),
    () => fluidFaults(model, survey, file),
    () => testerFaults(model, survey, file),
    () => resourceFaults(model, survey, file, visible, surveys),
    () => pictureFaults(survey, file),
  ];
}

/** Where a name is not right, the execution goes on with a guess. */
const GUESSED: ReadonlySet<string> = new Set(['unknown-name', 'unknown-position', 'wrong-kind']);

/**
 * Whether a fault comes from a name that is wrong in the same step: that has its own finding. A slip in one of the outcomes
 * of a step is in another step.
 */
export function followsFrom(named: readonly Fact[], procedure: Procedure, { at }: Fact): boolean {
  const end = () => {
    const action = actionAt(procedure.body, at.start);
    return Math.min(at.end, action ? headOf(action).end : at.end);
  };
  return named.some(
    ({ check, at: slip }) => GUESSED.has(check) && at.start <= slip.start && slip.end <= end(),
  );
}
