/** The checks on fasteners, in the order in which they are listed for readers. */
import type { Check } from './check.ts';
import { adapterUncorrected } from './fastening/adapter-uncorrected.ts';
import { angleBeforeTorque } from './fastening/angle-before-torque.ts';
import { angleTooLarge } from './fastening/angle-too-large.ts';
import { countMissing } from './fastening/count-missing.ts';
import { gaugeMissing } from './fastening/gauge-missing.ts';
import { notSecured } from './fastening/not-secured.ts';
import { orderDiffers } from './fastening/order-differs.ts';
import { orderIncomplete } from './fastening/order-incomplete.ts';
import { orderNotAcross } from './fastening/order-not-across.ts';
import { orderNotFromCentre } from './fastening/order-not-from-centre.ts';
import { retightenedYield } from './fastening/retightened-yield.ts';
import { singleUseReused } from './fastening/single-use-reused.ts';
import { stageOutOfOrder } from './fastening/stage-out-of-order.ts';
import { stageRepeated } from './fastening/stage-repeated.ts';
import { stageSkipped } from './fastening/stage-skipped.ts';
import { stagesFarApart } from './fastening/stages-far-apart.ts';
import { tightenedUnseated } from './fastening/tightened-unseated.ts';
import { torqueAboveStrength } from './fastening/torque-above-strength.ts';
import { torqueAboveUsual } from './fastening/torque-above-usual.ts';
import { torqueBelowUsual } from './fastening/torque-below-usual.ts';
import { torqueMissing } from './fastening/torque-missing.ts';
import { torqueUnbounded } from './fastening/torque-unbounded.ts';
import { twoStops } from './fastening/two-stops.ts';
import { wrenchOutOfRange } from './fastening/wrench-out-of-range.ts';
import { wrenchTooLarge } from './fastening/wrench-too-large.ts';

export const FASTENING: readonly Check[] = [
  // What the execution of a procedure finds.
  singleUseReused,
  tightenedUnseated,
  retightenedYield,
  stageSkipped,
  stageRepeated,
  stageOutOfOrder,
  notSecured,
  // What the machine file and the steps show by themselves.
  torqueAboveStrength,
  torqueAboveUsual,
  torqueBelowUsual,
  torqueMissing,
  torqueUnbounded,
  stagesFarApart,
  angleBeforeTorque,
  angleTooLarge,
  orderIncomplete,
  orderDiffers,
  orderNotAcross,
  orderNotFromCentre,
  wrenchOutOfRange,
  wrenchTooLarge,
  gaugeMissing,
  adapterUncorrected,
  twoStops,
  countMissing,
];
