/** Where a finding about a step is shown: at the name of the thing, else at the step without its outcomes. */
import type { Action } from '../../grammar/syntax/tree.ts';
import type { Story } from '../model/facts.ts';
import { headOf } from '../model/flow-walk.ts';
import type { Thing } from '../model/model.ts';
import type { Place } from '../report/finding.ts';
import { type CaseSet, NONE } from './cases.ts';
import type { Run } from './run.ts';

/** A step that is remembered. */
export interface Step {
  readonly action: Action;
  readonly file: string;
}

export function placeOf({ action, file }: Step, thing?: Thing): Place {
  const ref = thing && action.objects.find(({ name }) => name.text === thing.name);
  const { start, end } = ref ?? headOf(action);
  return { file, start, end };
}

/** What a step did, for the story of a finding. */
export function storyOf(verb: string): Story {
  return STORIES[verb] ?? 'worked on';
}

const STORIES: Readonly<Record<string, Story>> = {
  remove: 'taken off',
  unbolt: 'taken off',
  'move aside': 'moved aside',
  'move back': 'moved back',
  refit: 'put back',
  fit: 'put back',
  'trial fit': 'fitted on trial',
  'bolt up': 'put back',
  loosen: 'loosened',
  tighten: 'tightened',
  disconnect: 'disconnected',
  connect: 'connected',
  open: 'opened',
  close: 'closed',
  'switch off': 'isolated',
  isolate: 'isolated',
  restore: 'restored',
  'lock out': 'locked',
  unlock: 'unlocked',
  drain: 'drained',
  recover: 'drained',
  fill: 'filled',
  'top up': 'filled',
  relieve: 'relieved',
  pressurise: 'pressurised',
  inflate: 'pressurised',
  'let cool': 'cooled',
  prove: 'proved',
  support: 'supported',
  raise: 'supported',
  clean: 'cleaned',
  measure: 'measured',
};

/** The cases in which the present step does anything: some of its things exist there. */
export function doneIn(run: Run, items: readonly number[]): CaseSet {
  if (items.length === 0) return run.within;
  let set: CaseSet = NONE;
  for (const item of items) set = run.cases.or(set, run.thing(item).exists);
  return run.cases.and(run.within, set);
}

/** The cases of the job, without the rounds of repeats: these are no cases of their own. */
export function withoutRounds(run: Run, set: CaseSet): CaseSet {
  let result = set;
  run.cases.axes.forEach(({ key }, axis) => {
    if (result !== NONE && key.startsWith('repeat ')) result = run.cases.forget(result, axis);
  });
  return result;
}
