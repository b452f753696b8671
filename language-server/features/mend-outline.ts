/**
 * A procedure as a list of places: its statements in the order of the text, each in its block, and what each
 * step takes away or puts back, as far as the words alone tell it. Knows no states.
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
