/**
 * What could mend a finding: for each check a short list of changes to the text, most natural first. Nothing
 * here is known to be right: mend-search.ts tries each change and keeps what the checker finds clean.
 */
import {
  bringBackFirst,
  clearFirst,
  covered,
  faceNotCleaned,
  isolatedOutOfOrder,
  leadOutOfOrder,
  lubricantMissing,
  notInPlace,
  notMadeSafe,
  notProvedSafe,
  notSupported,
  restoredOutOfOrder,
  staleMeasurement,
  stillHeld,
  swapped,
  turnedWhileLocked,
  wrongVerb,
} from './mend-blocked.ts';
import type { Changes, Context } from './mend-context.ts';
import { contractBroken, later, left, openedFull } from './mend-end.ts';
import { cautionLate, cautionMissing, supplyShort, toolUnlisted } from './mend-lists.ts';
import { allFirst, aroundStory, dropOne, first, nearby } from './mend-moves.ts';
import {
  doneTwice,
  refittedBeforeRemoved,
  retightened,
  stageOutOfOrder,
  stageSkipped,
} from './mend-repeated.ts';
import { reused, reverseImpossible, thrownAwayWith, trialNotUndone } from './mend-reused.ts';
import { type Named, newStep } from './mend-steps.ts';

/** Changes that may mend the finding. Each is a list of replacements that do not overlap. */
export function* changesFor(context: Context): Changes {
  const make = CHANGES[context.about.check];
  if (!make) return;
  const { subject, alike } = context;
  if (subject && alike.length > 0) {
    // What is said of several things is mended for all of them at once.
    const typed = inTextOrder(context, [subject, ...alike]).map((one) => one.typed);
    let most = MOST_AT_ONCE;
    for (const edits of make({ ...context, subject: { ...subject, typed: typed.join(', ') }, alike: [] })) {
      if (most-- === 0) break;
      yield edits;
    }
  }
  yield* make(context);
  if (LISTS.has(context.about.check)) return;
  yield* aroundStory(context);
  if (context.action) yield* nearby(context, context.spot);
}

/** What a list lacks is not mended by moving steps, and a notice that is missing only by the notices there are. */
const LISTS: ReadonlySet<string> = new Set(['tool-unlisted', 'supply-short', 'caution-missing']);

/** Changes for several things at once that are tried before those for one. */
const MOST_AT_ONCE = 8;

/** As the step names them. */
function inTextOrder({ action }: Context, all: readonly Named[]): Named[] {
  const at = ({ thing }: Named) => action?.objects.findIndex((ref) => ref.name.text === thing.name) ?? -1;
  return [...all].sort((a, b) => at(a) - at(b));
}

const CHANGES: Readonly<Record<string, (context: Context) => Changes>> = {
  covered,
  'still-held': stillHeld,
  'still-connected': (context) => clearFirst(context),
  'seat-missing': bringBackFirst,
  'seal-missing': bringBackFirst,
  'not-in-place': notInPlace,
  'tightened-unseated': bringBackFirst,
  'not-supported': notSupported,
  'turned-while-locked': turnedWhileLocked,
  'not-marked': (context) => first(context, context.subject, (one) => [[newStep('mark', one)]]),
  'face-not-cleaned': faceNotCleaned,
  'lubricant-missing': lubricantMissing,
  'not-made-safe': notMadeSafe,
  'not-proved-safe': notProvedSafe,
  'isolated-out-of-order': isolatedOutOfOrder,
  'restored-out-of-order': restoredOutOfOrder,
  'single-use-reused': reused,
  'discarded-reused': reused,
  'thrown-away-with': thrownAwayWith,
  'done-twice': doneTwice,
  'refitted-before-removed': refittedBeforeRemoved,
  'stage-skipped': stageSkipped,
  'stage-repeated': dropOne,
  'stage-out-of-order': stageOutOfOrder,
  'retightened-yield': retightened,
  'trial-not-undone': trialNotUndone,
  'wrong-verb': wrongVerb,
  swapped,
  'stale-measurement': staleMeasurement,
  'reverse-impossible': reverseImpossible,
  'caution-missing': cautionMissing,
  'caution-late': cautionLate,
  'not-kept-safe': bringBackFirst,
  'relieved-before-lock': (context) =>
    allFirst(context, context.others, (one) => [[newStep('lock out', one)]]),
  'lead-out-of-order': leadOutOfOrder,
  'tool-unlisted': toolUnlisted,
  'supply-short': supplyShort,
  'left-off': left,
  'left-loose': left,
  'left-aside': left,
  'left-open': left,
  'left-disconnected': left,
  'left-drained': left,
  'left-isolated': left,
  'left-locked': left,
  'left-supported': left,
  'fixture-left-on': left,
  'bypass-left': left,
  'opened-full': openedFull,
  'contract-broken': contractBroken,
  'not-bled': (context) => later(context, (one) => [[newStep('bleed', one)]]),
  'not-secured': (context) => later(context, (one) => [[newStep('secure', one)]]),
};
