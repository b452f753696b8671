/**
 * Changes for a step that is done a second time, undoes what was never done, or is out of the plan of its stages.
 */
import type { Action, Block } from '../../grammar/syntax/tree.ts';
import type { Model } from '../model/model.ts';
import type { Changes, Context } from './mend-context.ts';
import { without, withVerb } from './mend-edits.ts';
import {
  afterBack,
  aroundStory,
  bring,
  dropOne,
  earlier,
  first,
  insertAt,
  move,
  nearby,
} from './mend-moves.ts';
import { after, before, beforeNotices, endOf, type Spot } from './mend-outline.ts';
import { nextAway, sitesToPutBack, sitesToTakeAway } from './mend-sites.ts';
import { type Named, type NewSteps, newStep, supporting, undoing } from './mend-steps.ts';

export function* doneTwice(context: Context): Changes {
  const { subject, spot, action, outline, model, text, related } = context;
  if (!subject) return;
  const { name } = subject.thing;
  const repeats = (other: Spot) =>
    other.statement.kind === 'action' &&
    other.statement.verb === action?.verb &&
    other.statement.objects.some((ref) => ref.name.text === name);
  const way = outline.events.find((event) => event.spot === spot && event.name === name)?.way;
  const between =
    way === 'away' && action
      ? undoing(action, subject, model, outline)
      : way === 'back' && action
        ? backwards(action, subject, model)
        : [];
  // Put back though no step took it away: that one is missing.
  if (way === 'back' && related.length === 0) yield* refittedBeforeRemoved(context);
  const round = roundOf(spot);
  // The next round finds what this one left.
  if (round && related.some((other) => other === spot || roundOf(other) === round))
    for (const steps of between) yield* bring(context, steps, endOf(round));
  // Told apart by what they say to the reader they are two steps, and what undoes the first one is missing.
  const said = (other: Spot) => (other.statement.kind === 'action' ? other.statement.text?.value : undefined);
  const differs = related.some((other) => said(other) !== said(spot) && said(spot) !== undefined);
  // Where another kind of step did it already, one of the two stands in the wrong place.
  if (way === 'back') yield* andLaterRemoval(context, name, 6);
  if (way === 'away') yield* afterBack(context, name);
  if (differs || !related.some(repeats)) {
    if (differs) yield* first(context, subject, () => between);
    yield* aroundStory(context);
    for (const other of related) yield* nearby(context, other);
  }
  yield* dropOne(context);
  for (const other of related)
    if (other.statement.kind === 'action') yield without(text, other, other.statement, name);
  for (const other of related) yield* nearby(context, other);
  yield* first(context, subject, () => between);
  yield* earlier(context, [subject], () => between);
}

/** The body of the innermost loop around a step. */
function roundOf(spot: Spot): Block | undefined {
  const path = [...spot.parents, spot];
  for (let index = path.length - 2; index >= 0; index--) {
    const { kind } = path[index]!.statement;
    if (kind === 'repeat' || kind === 'for each') return path[index + 1]!.block;
  }
  return undefined;
}

/** Where the thing comes off only later: the present step behind that, or that before the present step. */
function* andLaterRemoval(context: Context, name: string, most: number): Changes {
  const { outline, spot } = context;
  const away = nextAway(outline, name, spot.order);
  if (!away) return;
  for (const site of sitesToPutBack(outline, away).slice(0, most)) yield* move(context, spot, site);
  for (const site of sitesToTakeAway(outline, spot).slice(0, most)) yield* move(context, away, site);
}

export function* refittedBeforeRemoved(context: Context): Changes {
  const { subject, spot, action, outline, model } = context;
  if (!subject) return;
  const { name } = subject.thing;
  yield* andLaterRemoval(context, name, 10);
  if (action) {
    const removals = backwards(action, subject, model);
    for (const site of sitesToTakeAway(outline, spot).slice(0, 12))
      for (const steps of removals.slice(0, 2)) yield* insertAt(context, steps, site);
  }
  yield* dropOne(context);
}

/** The step that comes before one that puts back. */
function backwards(action: Action, subject: Named, model: Model): NewSteps[] {
  const one = (verb: string, tail = '') => [newStep(verb, subject, verb, tail)];
  const thrown = action.fresh === 'new' || action.fresh === 'kit' ? ' and discard' : '';
  switch (action.verb) {
    case 'refit':
    case 'fit':
    case 'trial fit':
      if (subject.thing.type === 'connection') return [one('disconnect')];
      return thrown ? [one('remove', thrown), one('remove')] : [one('remove'), one('unbolt')];
    case 'bolt up':
      return [one('unbolt'), one('remove')];
    case 'tighten':
      return [one('loosen'), one('remove')];
    case 'connect':
      return [one('disconnect')];
    case 'close':
      return subject.thing.type === 'connection' ? [one('disconnect')] : [one('open')];
    case 'open':
      return [one('close')];
    case 'switch on':
      return [one('switch off')];
    case 'switch off':
      return [one('switch on')];
    case 'move back':
      return [one('move aside')];
    case 'restore':
      return [one('isolate')];
    case 'unlock':
      return [one('lock out')];
    case 'fill':
      return [one('drain')];
    case 'lower':
      return supporting(subject, model, { spots: [], events: [], procedure: EMPTY, conditional: new Map() });
    case 'remove':
      return subject.thing.type === 'tool' ? [one('fit')] : [];
    default:
      return [];
  }
}

const EMPTY = { kind: 'procedure' as const, start: 0, end: 0, headers: [] };

export function* stageOutOfOrder(context: Context): Changes {
  yield* aroundStory(context);
  yield* dropOne(context);
}

export function* stageSkipped(context: Context): Changes {
  const { action, subject, spot, outline } = context;
  const stage = Number(
    action?.tails.find(({ tail }) => tail === 'stage' || tail === 'pass') && stageOf(action),
  );
  if (!action || !subject || !Number.isInteger(stage) || stage < 2) return;
  const missing = (from: number) =>
    Array.from({ length: stage - from }, (_, index) =>
      newStep('tighten', subject, 'tighten', ` stage ${from + index}`),
    );
  // A lower stage that comes only later.
  for (const other of outline.spots) {
    const { statement } = other;
    if (other.order <= spot.order || statement.kind !== 'action' || statement.verb !== 'tighten') continue;
    if (!statement.objects.some((ref) => ref.name.text === subject.thing.name)) continue;
    if (!(Number(stageOf(statement)) < stage)) continue;
    yield* move(context, other, before(spot));
    yield* move(context, spot, after(other));
  }
  for (let from = stage - 1; from >= 1; from--) yield* insertAt(context, missing(from), beforeNotices(spot));
}

function stageOf(action: Action): string | undefined {
  for (const tail of action.tails) if (tail.tail === 'stage') return tail.quantity?.amounts[0]?.number;
  return undefined;
}

export function* retightened(context: Context): Changes {
  const { action, subject, text, spot } = context;
  yield* dropOne(context);
  if (!action || !subject) return;
  if (action.verb === 'fit' || action.verb === 'refit') {
    const edit = withVerb(text, action, 'fit new');
    if (edit) yield [edit];
  }
  const renewed = [
    newStep('remove', subject, 'remove', ' and discard'),
    newStep('fit', subject, 'fit new', ' by hand'),
  ];
  yield* insertAt(context, renewed, beforeNotices(spot));
}
