/**
 * The end of a procedure: everything that an action took away, loosened, opened or isolated is back, unless
 * `ends with` says otherwise. See grammar/STATE.md, "At the end".
 */
import type { Thing } from '../model/model.ts';
import { CHECKS } from './actions/compounds.ts';
import {
  ASIDE,
  ASPECT,
  type Aspect,
  bit,
  CONNECTED,
  DRAINED,
  FINAL,
  FITTED,
  GONE,
  IN_PLACE,
  LOW,
  not,
  OFF,
  OUT,
  TRIAL,
  WENT_IN_BARE,
  YES,
} from './aspects.ts';
import { type CaseSet, NONE } from './cases.ts';
import { chosenAtTheEnd } from './chosen.ts';
import type { Run } from './run.ts';
import type { Entry } from './state.ts';

export interface Ending {
  /** The cases in which the text is finished. */
  finished: CaseSet;
  /** Items that may be away, and whatever belongs to them. */
  mayBeAway: ReadonlySet<number>;
  /** `aspect item` pairs that `ends with` claims to be otherwise than at the start. */
  claimed: ReadonlySet<string>;
  /** Items that the procedure found away and has to put back (`starts with everything off`). */
  mustCome: ReadonlySet<number>;
}

export function atTheEnd(run: Run, ending: Ending): void {
  run.within = ending.finished;
  if (run.within === NONE) return;
  // What nobody touched is as it was, and most of the rest is back.
  const open = new Set<number>();
  for (const item of run.changed) if (!isAtRest(run, item)) open.add(item);
  for (const item of ending.mustCome) if (!isAtRest(run, item)) open.add(item);
  // In the order of the machine, as a reader expects it.
  for (const item of [...open].sort((a, b) => a - b)) {
    if (!ending.mayBeAway.has(item)) endOf(run, run.thing(item), item, ending);
  }
  chosenAtTheEnd(run, ending);
  run.flush();
}

/** All that is asked at the end stands as on a machine in working order, whoever made it so. */
function isAtRest({ state, model }: Run, item: number): boolean {
  for (const aspect of ASKED) if (!state.isZero(aspect * model.items + item)) return false;
  return true;
}

const ASKED: readonly number[] = (
  [
    ...['place', 'supported', 'bypass', 'lock', 'moved', 'secured'],
    ...['live', 'fluid', 'bled', 'coated', 'oiled'],
  ] as Aspect[]
).map((aspect) => ASPECT[aspect]);

function endOf(run: Run, thing: Thing, item: number, ending: Ending): void {
  const claimed = (aspect: Aspect) => ending.claimed.size > 0 && ending.claimed.has(`${aspect} ${item}`);
  const left = (check: string, aspect: Aspect, mask: number, within = run.within) => {
    if (claimed(aspect) || within === NONE) return;
    for (const entry of run.entries(aspect, item, within)) {
      if ((mask >>> entry.value) & 1) report(run, check, item, entry, ending);
    }
  };
  for (const kind of ['coated', 'oiled'] as const) left(CHECKS[kind], kind, bit(WENT_IN_BARE));
  switch (thing.type) {
    case 'part':
    case 'seal':
    case 'control':
    case 'isolator':
      if (!claimed('place')) placeAtEnd(run, thing, item, ending);
      left('left-supported', 'supported', bit(YES));
      left('bypass-left', 'bypass', bit(YES));
      left('left-locked', 'lock', bit(YES));
      if (thing.type !== 'part' && thing.type !== 'seal')
        left('left-open', 'moved', bit(YES), notSystemsOwn(run, item));
      return;
    case 'fastener': {
      const within = run.cases.minus(run.within, partsAway(run, run.model.members[item]!));
      const lost = run.where('lost', item, bit(YES), within);
      left('thrown-away-with', 'place', bit(OUT), lost);
      left('left-off', 'place', bit(OUT), run.cases.minus(within, lost));
      left('left-loose', 'place', not(OUT, FINAL), within);
      if (thing.needsSecuring)
        left('not-secured', 'secured', bit(YES), run.where('place', item, not(OUT), within));
      left('bypass-left', 'bypass', bit(YES));
      return;
    }
    case 'connection': {
      const within = run.cases.minus(run.within, partsAway(run, run.model.members[item]!));
      left('left-disconnected', 'place', not(CONNECTED), run.cases.and(within, notSystemsOwn(run, item)));
      left('bypass-left', 'bypass', bit(YES));
      return;
    }
    case 'tool':
      // What it still holds up or bridges is the finding; the tool goes with it.
      left('fixture-left-on', 'place', bit(IN_PLACE), run.cases.minus(run.within, stillHolding(run, item)));
      return;
    case 'system':
      left('left-isolated', 'live', bit(YES));
      left('left-drained', 'fluid', bit(DRAINED));
      left('opened-full', 'fluid', bit(LOW));
      if (thing.needsBleeding)
        left('not-bled', 'bled', bit(YES), run.where('fluid', item, ~bit(DRAINED, LOW)));
      return;
    default:
      return;
  }
}

function stillHolding(run: Run, tool: number): CaseSet {
  let set: CaseSet = NONE;
  for (const item of run.heldBy.get(tool) ?? []) {
    for (const aspect of ['supported', 'bypass'] as const)
      set = run.cases.or(set, run.where(aspect, item, bit(YES)));
  }
  return set;
}

/** Where a system is isolated, its isolator is off with it: one cause, one finding, on the system. */
function notSystemsOwn(run: Run, item: number): CaseSet {
  let set = run.within;
  for (const system of run.model.isolates[item]!)
    set = run.cases.minus(set, run.where('live', system, bit(YES), set));
  return set;
}

function placeAtEnd(run: Run, thing: Thing, item: number, ending: Ending): void {
  const { cases, model } = run;
  for (const entry of run.entries('place', item)) {
    if (entry.value === FITTED || entry.assumed) continue;
    let within = entry.cases;
    if (thing.type === 'seal') within = cases.minus(within, partsAway(run, model.sealedParts[item]!));
    if (within === NONE) continue;
    const left: Entry = { ...entry, cases: within };
    if (entry.value === ASIDE) report(run, 'left-aside', item, left, ending);
    else if (entry.value === TRIAL) report(run, 'trial-not-undone', item, left, ending);
    else if (entry.value === GONE) {
      const lost = run.where('lost', item, bit(YES), within);
      // What carried it is itself left off: that is the finding.
      const carrier = partsAway(run, model.seats[item]!);
      within = cases.minus(within, cases.and(lost, carrier));
      if (cases.minus(lost, carrier) !== NONE)
        report(run, 'thrown-away-with', item, { ...left, cases: cases.minus(lost, carrier) }, ending);
      const thrown = cases.minus(within, lost);
      if (thrown !== NONE) report(run, 'left-off', item, { ...left, cases: thrown }, ending);
    } else {
      const rider = firstRider(run, item, left);
      if (rider)
        run.blame('seat-missing', rider.item, {
          other: item,
          cases: within,
          since: entry.since,
          what: 'taken off',
          at: rider.since,
        });
      else report(run, 'left-off', item, left, ending);
    }
  }
}

/** The first thing that was put on the item after it came off, and still sits there. */
function firstRider(run: Run, item: number, left: Entry): { item: number; since: number } | undefined {
  let first: { item: number; since: number } | undefined;
  for (const rider of run.model.riders[item]!) {
    for (const entry of run.entries('place', rider, left.cases)) {
      if (entry.value !== FITTED || entry.assumed || entry.since <= left.since || entry.since < 0) continue;
      if (!first || entry.since < first.since) first = { item: rider, since: entry.since };
    }
  }
  return first;
}

/** The cases in which a part of these is away: what holds or seals it is then no finding of its own. */
function partsAway(run: Run, items: readonly number[]): CaseSet {
  let set: CaseSet = NONE;
  for (const item of items) {
    const { type } = run.thing(item);
    if (type !== 'part' && type !== 'control' && type !== 'isolator') continue;
    for (const entry of run.entries('place', item)) {
      // What was only taken to be off hides nothing.
      if ((entry.value === OFF || entry.value === GONE) && !entry.assumed)
        set = run.cases.or(set, entry.cases);
    }
  }
  return set;
}

function report(run: Run, check: string, item: number, entry: Entry, ending: Ending): void {
  if (entry.assumed) return;
  if (entry.since >= 0) run.blame(check, item, { cases: entry.cases, at: entry.since });
  else if (ending.mustCome.has(item)) run.blame(check, item, { cases: entry.cases, at: BEFORE });
}

/** Stands for the procedure's header, where things are said to be away at the start. */
export const BEFORE = -1;
