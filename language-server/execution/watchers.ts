/** Who looks on while a procedure is carried out. */
import type { Procedure } from '../../grammar/syntax/tree.ts';
import type { House } from '../project/project.ts';
import { EnergyOrderWatch } from './energy-order.ts';
import { HazardWatch } from './hazards.ts';
import { LiftWatch } from './lifting.ts';
import type { Run } from './run.ts';
import type { Watcher } from './watch.ts';

export function watchers(run: Run, procedure: Procedure, house: House): Watcher[] {
  return [
    new HazardWatch(run, house.convention),
    new LiftWatch(run, procedure, house.liftingGuideline),
    new EnergyOrderWatch(run),
  ];
}
