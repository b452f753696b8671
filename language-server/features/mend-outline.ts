/**
 * A procedure as a list of places: its statements in the order of the text, each in its block, and what each
 * step takes away or puts back, as far as the words alone tell it. Says where a missing step would stand by
 * the rule of the trade that things go back in the reverse order of coming off. Knows no states.
 */
import type { Action, Block, Procedure, Statement } from '../../grammar/syntax/tree.ts';
import type { Model, Thing } from '../model/model.ts';

export interface Spot {
  statement: Statement;
  block: Block;
  /** Where it stands in its block. */
  index: number;
  /** Where it stands among all statements, in the order of the text. */
  order: number;
  /** What it stands in, outermost first. */
  parents: Spot[];
}

/** A place between statements: before the one with this index, or behind the last one. */
export interface Site {
  block: Block;
  index: number;
}

export type Way = 'away' | 'back';

/** One thing taken away or put back by one step. */
export interface Event {
  spot: Spot;
  name: string;
  way: Way;
}

export interface Outline {
  spots: Spot[];
  events: Event[];
  procedure: Procedure;
  /** For each block the innermost one around it (or itself) that is not done exactly once in every case. */
  conditional: ReadonlyMap<Block, Block | undefined>;
}

export function outlineOf(procedure: Procedure, model: Model): Outline {
  const spots: Spot[] = [];
  const conditional = new Map<Block, Block | undefined>();
  collect(procedure.body, [], undefined, spots, conditional);
  return { spots, events: eventsOf(spots, model), procedure, conditional };
}

export function blocksOf(statement: Statement): Block[] {
  if (statement.kind === 'action') return statement.outcomes.flatMap(({ body }) => body ?? []);
  const blocks = 'body' in statement && statement.body ? [statement.body] : [];
  if ('otherwise' in statement && statement.otherwise) blocks.push(statement.otherwise);
  return blocks;
}

/** The innermost statement around a range; nothing where the range is outside all of them. */
export function spotAt(outline: Outline, start: number, end: number): Spot | undefined {
  let found: Spot | undefined;
  for (const spot of outline.spots)
    if (spot.statement.start <= start && end <= spot.statement.end) found = spot;
  return found;
}

export function before({ block, index }: Spot): Site {
  return { block, index };
}

/** Before a step and the notices that guard it. */
export function beforeNotices({ block, index }: Spot): Site {
  let first = index;
  while (first > 0 && block.statements[first - 1]!.kind === 'notice') first--;
  return { block, index: first };
}

export function after({ block, index }: Spot): Site {
  return { block, index: index + 1 };
}

export function endOf(block: Block): Site {
  return { block, index: block.statements.length };
}

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

function collect(
  block: Block | undefined,
  parents: Spot[],
  condition: Block | undefined,
  spots: Spot[],
  conditional: Map<Block, Block | undefined>,
): void {
  if (!block) return;
  conditional.set(block, condition);
  block.statements.forEach((statement, index) => {
    const spot: Spot = { statement, block, index, order: spots.length, parents };
    spots.push(spot);
    const plain = statement.kind === 'task' || statement.kind === 'step' || statement.kind === 'hold';
    for (const inner of blocksOf(statement))
      collect(inner, [...parents, spot], plain ? condition : inner, spots, conditional);
  });
}

const AWAY: ReadonlySet<string> = new Set([
  'remove',
  'unbolt',
  'move aside',
  'disconnect',
  'loosen',
  'switch off',
  'lock out',
  'isolate',
  'drain',
  'recover',
  'support',
  'raise',
  'lock',
  'bypass',
  'discard',
]);
const BACK: ReadonlySet<string> = new Set([
  'refit',
  'fit',
  'trial fit',
  'bolt up',
  'move back',
  'connect',
  'tighten',
  'secure',
  'switch on',
  'unlock',
  'restore',
  'fill',
  'top up',
  'lower',
]);

function eventsOf(spots: readonly Spot[], model: Model): Event[] {
  const events: Event[] = [];
  /** The verb by which a control first left its position. */
  const moved = new Map<string, string>();
  for (const spot of spots) {
    const { statement } = spot;
    if (statement.kind === 'reverse') {
      const task = statement.task?.text;
      const except = new Set(statement.except.map((ref) => ref.name.text));
      const undone = events.filter(
        (event) =>
          event.way === 'away' &&
          !except.has(event.name) &&
          event.spot.parents.some((parent) => isTask(parent.statement, task)),
      );
      for (const { name } of undone.reverse()) events.push({ spot, name, way: 'back' });
    }
    if (statement.kind !== 'action') continue;
    for (const ref of statement.objects) {
      const thing = model.byName.get(ref.name.text);
      if (!thing) continue;
      const way = wayOf(statement, thing, moved);
      if (!way) continue;
      for (const name of together(statement, thing, model)) events.push({ spot, name, way });
    }
  }
  return events;
}

function isTask(statement: Statement, name: string | undefined): boolean {
  return statement.kind === 'task' && name !== undefined && statement.name?.text === name;
}

/** Which way a step moves a thing; nothing where it leaves it where it is. */
function wayOf(action: Action, thing: Thing, moved: Map<string, string>): Way | undefined {
  const { verb } = action;
  if (thing.type === 'tool') return verb === 'remove' ? 'back' : verb === 'fit' ? 'away' : undefined;
  if (verb === 'open' || verb === 'close') {
    if (thing.type === 'connection') return verb === 'open' ? 'away' : 'back';
    const first = moved.get(thing.name) ?? verb;
    moved.set(thing.name, first);
    return verb === first ? 'away' : 'back';
  }
  if (AWAY.has(verb)) return 'away';
  return BACK.has(verb) ? 'back' : undefined;
}

/** The thing and what its step moves with it: the fasteners of an unbolted part, what a kit holds. */
function together({ verb, fresh }: Action, thing: Thing, model: Model): string[] {
  const items = thing.positions.map((_, index) => thing.first + index);
  const also =
    verb === 'unbolt' || verb === 'bolt up'
      ? items.flatMap((item) => model.heldBy[item]!)
      : fresh === 'kit'
        ? items.flatMap((item) => model.contains[item]!)
        : [];
  return [...new Set([thing.name, ...also.map((item) => model.thingOf[item]!.name)])];
}
