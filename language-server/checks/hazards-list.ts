/** The checks on hazards, and on tools, people, supplies and time, in the order in which they are listed for readers. */
import type { Check } from './check.ts';
import { cautionLate } from './hazards/caution-late.ts';
import { cautionMissing } from './hazards/caution-missing.ts';
import { heavyLift } from './hazards/heavy-lift.ts';
import { isolatedOutOfOrder } from './hazards/isolated-out-of-order.ts';
import { leadOutOfOrder } from './hazards/lead-out-of-order.ts';
import { limitExceeded } from './hazards/limit-exceeded.ts';
import { notKeptSafe } from './hazards/not-kept-safe.ts';
import { notMadeSafe } from './hazards/not-made-safe.ts';
import { notProvedSafe } from './hazards/not-proved-safe.ts';
import { noteGivesSteps } from './hazards/note-gives-steps.ts';
import { noticeGivesSteps } from './hazards/notice-gives-steps.ts';
import { noticeIncomplete } from './hazards/notice-incomplete.ts';
import { relievedBeforeLock } from './hazards/relieved-before-lock.ts';
import { signalWordWeak } from './hazards/signal-word-weak.ts';
import { testerNotProved } from './hazards/tester-not-proved.ts';
import { peopleShort } from './resources/people-short.ts';
import { supplyShort } from './resources/supply-short.ts';
import { timeDiffers } from './resources/time-differs.ts';
import { toolUnlisted } from './resources/tool-unlisted.ts';
import { toolUnused } from './resources/tool-unused.ts';

export const HAZARDS: readonly Check[] = [
  // Energy.
  notMadeSafe,
  notProvedSafe,
  testerNotProved,
  notKeptSafe,
  isolatedOutOfOrder,
  relievedBeforeLock,
  leadOutOfOrder,
  // Notices.
  cautionMissing,
  cautionLate,
  signalWordWeak,
  noticeIncomplete,
  noticeGivesSteps,
  noteGivesSteps,
  // Weights and limits.
  heavyLift,
  limitExceeded,
];

export const RESOURCES: readonly Check[] = [toolUnlisted, toolUnused, peopleShort, supplyShort, timeDiffers];
