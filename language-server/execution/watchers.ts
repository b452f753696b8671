/** Who looks on while a procedure is carried out. */
import type { Procedure } from '../../grammar/syntax/tree.ts';
import type { Convention } from '../hazards/index.ts';
import { EnergyOrderWatch } from './energy-order.ts';
import { HazardWatch } from './hazards.ts';
import { LiftWatch } from './lifting.ts';
import type { Run } from './run.ts';
import type { Watcher } from './watch.ts';

export function watchers(run: Run, procedure: Procedure, convention?: Convention): Watcher[] {
  return [new HazardWatch(run, convention), new LiftWatch(run, procedure), new EnergyOrderWatch(run)];
}
