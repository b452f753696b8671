/** The checks on hazards, in the order in which they are listed for readers. */
import type { Check } from './check.ts';
import { cautionLate } from './hazards/caution-late.ts';
import { cautionMissing } from './hazards/caution-missing.ts';
import { heavyLift } from './hazards/heavy-lift.ts';
import { isolatedOutOfOrder } from './hazards/isolated-out-of-order.ts';
import { leadOutOfOrder } from './hazards/lead-out-of-order.ts';
import { notKeptSafe } from './hazards/not-kept-safe.ts';
import { notMadeSafe } from './hazards/not-made-safe.ts';
import { notProvedSafe } from './hazards/not-proved-safe.ts';
import { relievedBeforeLock } from './hazards/relieved-before-lock.ts';
import { signalWordWeak } from './hazards/signal-word-weak.ts';

export const HAZARDS: readonly Check[] = [
  // Energy.
  notMadeSafe,
  notProvedSafe,
  notKeptSafe,
  isolatedOutOfOrder,
  relievedBeforeLock,
  leadOutOfOrder,
  // Notices.
  cautionMissing,
  cautionLate,
  signalWordWeak,
  // Weights.
  heavyLift,
];
