/**
 * Where a missing step would stand, by the rule of the trade that things go back in the reverse order of coming off.
 * Goes by the words of the text alone: what really fits is for the checker to say.
 */
import {
  after,
  beforeNotices,
  blocksOf,
  type Event,
  endOf,
  type Outline,
  type Site,
  type Spot,
  type Way,
} from './mend-outline.ts';

/**
 * Where what the step took away would go back, most natural first: after what came off next, before what came
 * off last before it; then at the ends of blocks and before steps, from the end of the text backwards.
 */
export function sitesToPutBack(outline: Outline, away: Spot): Site[] {
  const sites = new Sites();
  const mirrored = interleaved(
    firstFew(neighbours(outline, away, 'away', 1), ({ name, spot }) => {
      const back = backOf(outline, name, spot.order);
      return back && after(back.last);
    }),
    firstFew(neighbours(outline, away, 'away', -1), ({ name }) => {
      const back = backOf(outline, name, away.order);
      return back && beforeNotices(back.first);
    }),
  );
  for (const site of mirrored) sites.add(site);
  for (const parent of [...away.parents].reverse()) {
    if (parent.statement.kind === 'task') break;
    for (const block of blocksOf(parent.statement)) if (block === away.block) sites.add(endOf(block));
  }
  const { body } = outline.procedure;
  if (body?.statements.some(({ kind }) => kind === 'action')) sites.add(endOf(body));
  for (const statement of [...(body?.statements ?? [])].reverse()) {
    if (statement.kind !== 'task' && statement.kind !== 'step') continue;
    if (statement.end >= away.statement.start && statement.body) sites.add(endOf(statement.body));
  }
  for (const spot of [...outline.spots].reverse()) {
    // Undone as soon as it is done it would be for nothing.
    if (spot.order <= away.order + 1 || sites.full) break;
    if (spot.statement.kind === 'action') sites.add(beforeNotices(spot));
  }
  return sites.list;
}

/** Where what the step puts back would have come off: before what goes back just before it, and the like. */
export function sitesToTakeAway(outline: Outline, back: Spot): Site[] {
  const sites = new Sites();
  const mirrored = interleaved(
    firstFew(neighbours(outline, back, 'back', -1), ({ name }) => {
      const away = awayOf(outline, name, back.order);
      return away && beforeNotices(away);
    }),
    firstFew(neighbours(outline, back, 'back', 1), ({ name }) => {
      const away = awayOf(outline, name, back.order);
      return away && after(away);
    }),
  );
  for (const site of mirrored) sites.add(site);
  for (const spot of [...outline.spots].reverse()) {
    if (sites.full) break;
    if (spot.order > back.order) continue;
    if (spot.statement.kind === 'action') sites.add(beforeNotices(spot));
  }
  return sites.list;
}

/** Where the thing first goes back after a step, and the last step of going back (tight, secured). */
export function backOf(
  outline: Outline,
  name: string,
  from: number,
): { first: Spot; last: Spot } | undefined {
  let found: { first: Spot; last: Spot } | undefined;
  for (const event of outline.events) {
    if (event.name !== name || event.spot.order <= from) continue;
    if (event.way === 'back') found = { first: found?.first ?? event.spot, last: event.spot };
    else if (found) break;
  }
  return found;
}

/** Where the thing was taken away last before a step. */
export function awayOf(outline: Outline, name: string, until: number): Spot | undefined {
  return outline.events
    .filter((event) => event.name === name && event.way === 'away' && event.spot.order < until)
    .at(-1)?.spot;
}

/** Where the thing is taken away next after a step. */
export function nextAway(outline: Outline, name: string, from: number): Spot | undefined {
  return outline.events.find(
    (event) => event.name === name && event.way === 'away' && event.spot.order > from,
  )?.spot;
}

/** Events of other steps from a step on, nearest first, each thing once. */
function neighbours(outline: Outline, spot: Spot, way: Way, direction: 1 | -1): Event[] {
  const seen = new Set<string>();
  const own = new Set(outline.events.filter((event) => event.spot === spot).map(({ name }) => name));
  const events = direction === 1 ? outline.events : [...outline.events].reverse();
  return events.filter((event) => {
    if (event.way !== way || own.has(event.name) || seen.has(event.name)) return false;
    if (direction * (event.spot.order - spot.order) <= 0) return false;
    seen.add(event.name);
    return true;
  });
}

/** Neighbours that are looked at, and places that are taken from them. */
const MOST_NEIGHBOURS = 40;

const FEW = 4;

function firstFew(events: readonly Event[], site: (event: Event) => Site | undefined): Site[] {
  const found: Site[] = [];
  for (const event of events.slice(0, MOST_NEIGHBOURS)) {
    const one = site(event);
    if (one) found.push(one);
    if (found.length === FEW) break;
  }
  return found;
}

function interleaved<T>(a: readonly T[], b: readonly T[]): T[] {
  return Array.from({ length: Math.max(a.length, b.length) }, (_, index) => [a[index], b[index]])
    .flat()
    .filter((one) => one !== undefined);
}

/** More places than this are never tried. */
const MOST_SITES = 60;

/** Places, each once. */
class Sites {
  readonly list: Site[] = [];

  get full(): boolean {
    return this.list.length >= MOST_SITES;
  }

  add(site: Site): void {
    if (this.full) return;
    const known = this.list.some(({ block, index }) => block === site.block && index === site.index);
    if (!known) this.list.push(site);
  }
}
