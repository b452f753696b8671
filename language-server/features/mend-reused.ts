/**
 * Changes for things that may not be used again as they are: of one use, thrown away, lost with another, or on trial.
 */
import type { Edit } from '../../grammar/format/format.ts';
import type { Action } from '../../grammar/syntax/tree.ts';
import type { Changes, Context } from './mend-context.ts';
import { alone, put, without, withVerb } from './mend-edits.ts';
import { earlierSites, first, insertAt, together } from './mend-moves.ts';
import { after, before, beforeNotices } from './mend-outline.ts';
import { backOf, sitesToPutBack } from './mend-sites.ts';
import { type Named, type NewSteps, newStep, puttingBack, takingAway } from './mend-steps.ts';

export function* reused(context: Context): Changes {
  const { subject, action, text, spot, model } = context;
  if (!subject) return;
  const fresh = newStep('fit', subject, 'fit new');
  const own = action?.objects.some((ref) => ref.name.text === subject.thing.name);
  if (action && own && ['refit', 'fit'].includes(action.verb)) {
    if (action.objects.length === 1) {
      const edit = withVerb(text, action, 'fit new');
      if (edit) yield [edit];
    } else {
      const line = alone(text, action, subject.thing.name).replace(/^\w+( new| kit)?/, 'fit new');
      yield* together([put(text, before(spot), [line])], without(text, spot, action, subject.thing.name));
    }
  }
  if (action && own && action.verb === 'connect') {
    const edit = withVerb(text, action, 'fit new');
    if (edit && action.objects.length === 1) yield [edit];
  }
  if (action?.verb === 'bolt up' && subject.thing.type === 'fastener') {
    const edit = withVerb(text, action, 'refit');
    if (edit) yield* together([edit], [put(text, after(spot), [fresh.line])]);
  }
  const thrown: NewSteps[] = [[fresh], [newStep('remove', subject, 'remove', ' and discard'), fresh]];
  yield* first(context, subject, () => thrown);
  yield* insertAt(context, [fresh], after(spot));
  for (const site of earlierSites(context)) for (const steps of thrown) yield* insertAt(context, steps, site);
  // Kept after all.
  for (const other of context.related) {
    const { statement } = other;
    if (statement.kind !== 'action') continue;
    const tail = statement.tails.find((one) => one.tail === 'and discard');
    if (tail && !model.byName.get(subject.thing.name)?.singleUse) yield [kept(text, statement, tail)];
  }
}

export function kept(text: string, action: Action, tail: { start: number; end: number }): Edit {
  let start = tail.start;
  while (start > action.start && /\s/.test(text[start - 1]!)) start--;
  return { start, end: tail.end, text: '' };
}

export function* thrownAwayWith(context: Context): Changes {
  const { subject, action, outline, spot } = context;
  if (!subject || !action) return;
  yield* first(context, subject, (one) => takingAway(one, context));
  const carrier = action.objects[0];
  if (!carrier) return;
  const renewed = backOf(outline, carrier.name.text, spot.order);
  const riding = newStep('move', subject, 'move', ` to new ${carrier.name.text}`);
  yield* insertAt(context, [riding], beforeNotices(spot));
  if (renewed) {
    yield* insertAt(context, [riding], beforeNotices(renewed.first));
    yield* insertAt(context, [newStep('fit', subject, 'fit new')], after(renewed.first));
  }
}

export function* trialNotUndone(context: Context): Changes {
  const { subject, spot, action, text, outline, model } = context;
  if (!subject) return;
  const removal = (one: Named): NewSteps[] => [[newStep('remove', one)]];
  if (action?.verb !== 'trial fit') {
    yield* first(context, subject, removal);
    return;
  }
  // Still on trial at the end.
  const edit = withVerb(text, action, 'refit');
  if (edit) yield [edit];
  const again = [newStep('remove', subject), newStep('refit', subject)];
  yield* insertAt(context, again, after(spot));
  for (const site of sitesToPutBack(outline, spot).slice(0, 8)) {
    yield* insertAt(context, again, site);
    yield* insertAt(context, [newStep('remove', subject)], site);
  }
  yield* insertAt(context, [...puttingBack(subject, model, outline)[0]!], after(spot));
}

export function* reverseImpossible(context: Context): Changes {
  const { spot, subject, text, outline, model } = context;
  const { statement } = spot;
  if (statement.kind !== 'reverse' || !subject || !statement.task) return;
  const last = statement.except[statement.except.length - 1];
  const edit: Edit = last
    ? { start: last.end, end: last.end, text: `, ${subject.thing.name}` }
    : { start: statement.task.end, end: statement.task.end, text: ` except ${subject.thing.name}` };
  for (const steps of puttingBack(subject, model, outline, { thrown: true }).slice(0, 2)) {
    const lines = steps.map(({ line }) => line);
    yield* together([edit], [put(text, before(spot), lines)]);
    yield* together([edit], [put(text, after(spot), lines)]);
  }
}
