/**
 * The one list of the checks, by group, in the order in which they are listed for readers. A new check is one
 * file and one line here.
 */
import type { Check } from './check.ts';
import { FASTENING } from './fastening-list.ts';
import { branchUnfinished } from './flow/branch-unfinished.ts';
import { findingWithoutAction } from './flow/finding-without-action.ts';
import { loopCannotEnd } from './flow/loop-cannot-end.ts';
import { loopNotRestored } from './flow/loop-not-restored.ts';
import { loopRunsOut } from './flow/loop-runs-out.ts';
import { loopWithoutLimit } from './flow/loop-without-limit.ts';
import { outcomeGoesOn } from './flow/outcome-goes-on.ts';
import { outcomeMissing } from './flow/outcome-missing.ts';
import { rangeGap } from './flow/range-gap.ts';
import { rangeImpossible } from './flow/range-impossible.ts';
import { rangeOverlap } from './flow/range-overlap.ts';
import { referenceWrong } from './flow/reference-wrong.ts';
import { reverseImpossible } from './flow/reverse-impossible.ts';
import { staleMeasurement } from './flow/stale-measurement.ts';
import { undecided } from './flow/undecided.ts';
import { variantDead } from './flow/variant-dead.ts';
import { variantUncovered } from './flow/variant-uncovered.ts';
import { compoundMissing } from './fluids/compound-missing.ts';
import { faceNotCleaned } from './fluids/face-not-cleaned.ts';
import { filledBeforeCured } from './fluids/filled-before-cured.ts';
import { fluidDiffers } from './fluids/fluid-differs.ts';
import { lubricantMissing } from './fluids/lubricant-missing.ts';
import { notBled } from './fluids/not-bled.ts';
import { openedFull } from './fluids/opened-full.ts';
import { quantityDiffers } from './fluids/quantity-differs.ts';
import { tolerancesDiffer } from './fluids/tolerances-differ.ts';
import { vacuumReversed } from './fluids/vacuum-reversed.ts';
import { HAZARDS, RESOURCES } from './hazards-list.ts';
import { CONTRACTS, MACHINE, NAMES, QUANTITIES, TEXT } from './names-and-text.ts';
import { bypassLeft } from './order/bypass-left.ts';
import { chosenNotFitted } from './order/chosen-not-fitted.ts';
import { covered } from './order/covered.ts';
import { directionDiffers } from './order/direction-differs.ts';
import { discardedReused } from './order/discarded-reused.ts';
import { doneTwice } from './order/done-twice.ts';
import { fixtureLeftOn } from './order/fixture-left-on.ts';
import { leftAside } from './order/left-aside.ts';
import { leftDisconnected } from './order/left-disconnected.ts';
import { leftDrained } from './order/left-drained.ts';
import { leftIsolated } from './order/left-isolated.ts';
import { leftLocked } from './order/left-locked.ts';
import { leftLoose } from './order/left-loose.ts';
import { leftOff } from './order/left-off.ts';
import { leftOpen } from './order/left-open.ts';
import { leftSupported } from './order/left-supported.ts';
import { neverNeeded } from './order/never-needed.ts';
import { notInPlace } from './order/not-in-place.ts';
import { notMarked } from './order/not-marked.ts';
import { notSupported } from './order/not-supported.ts';
import { refittedBeforeRemoved } from './order/refitted-before-removed.ts';
import { restoredOutOfOrder } from './order/restored-out-of-order.ts';
import { sealMissing } from './order/seal-missing.ts';
import { seatMissing } from './order/seat-missing.ts';
import { startWithoutSeal } from './order/start-without-seal.ts';
import { stillConnected } from './order/still-connected.ts';
import { stillHeld } from './order/still-held.ts';
import { swapped } from './order/swapped.ts';
import { thrownAwayWith } from './order/thrown-away-with.ts';
import { trialNotUndone } from './order/trial-not-undone.ts';
import { turnedWhileLocked } from './order/turned-while-locked.ts';
import { wrongVerb } from './order/wrong-verb.ts';
import { RULES } from './rules-list.ts';
import { toolFailure } from './text/tool-failure.ts';
import { WORDING } from './wording-list.ts';

const ORDER: readonly Check[] = [
  leftOff,
  leftLoose,
  leftAside,
  leftOpen,
  leftDisconnected,
  leftDrained,
  leftIsolated,
  leftLocked,
  leftSupported,
  fixtureLeftOn,
  bypassLeft,
  refittedBeforeRemoved,
  doneTwice,
  stillHeld,
  stillConnected,
  covered,
  seatMissing,
  sealMissing,
  notInPlace,
  thrownAwayWith,
  notSupported,
  turnedWhileLocked,
  notMarked,
  swapped,
  trialNotUndone,
  chosenNotFitted,
  startWithoutSeal,
  wrongVerb,
  directionDiffers,
  restoredOutOfOrder,
  discardedReused,
  neverNeeded,
];

const FLOW: readonly Check[] = [
  branchUnfinished,
  variantUncovered,
  variantDead,
  loopNotRestored,
  staleMeasurement,
  reverseImpossible,
  undecided,
  // What the text shows by itself.
  rangeGap,
  rangeOverlap,
  rangeImpossible,
  findingWithoutAction,
  outcomeMissing,
  outcomeGoesOn,
  loopCannotEnd,
  loopWithoutLimit,
  loopRunsOut,
  referenceWrong,
];

const FLUIDS: readonly Check[] = [
  openedFull,
  notBled,
  faceNotCleaned,
  compoundMissing,
  lubricantMissing,
  filledBeforeCured,
  fluidDiffers,
  quantityDiffers,
  vacuumReversed,
  tolerancesDiffer,
];

export const ALL_CHECKS: readonly Check[] = [
  // What the execution of a procedure finds.
  ...ORDER,
  ...FASTENING,
  ...HAZARDS,
  ...RESOURCES,
  ...FLUIDS,
  // What branches, repeats, variants and measurements show.
  ...FLOW,
  ...CONTRACTS,
  // What names, quantities, machine files and the text itself show.
  ...RULES,
  ...NAMES,
  ...QUANTITIES,
  ...WORDING,
  ...MACHINE,
  ...TEXT,
];

const BY_NAME: ReadonlyMap<string, Check> = new Map(
  [...ALL_CHECKS, toolFailure].map((check) => [check.name, check]),
);

export function checkNamed(name: string): Check | undefined {
  return BY_NAME.get(name);
}
