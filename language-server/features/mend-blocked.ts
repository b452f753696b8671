/**
 * Changes for a step that cannot be done where it stands: what has to come before it, or where else it could stand.
 */
import type { Model } from '../model/model.ts';
import type { Changes, Context } from './mend-context.ts';
import { put, withVerb } from './mend-edits.ts';
import { afterBack, allFirst, bring, earlier, first, insertAtAll, move } from './mend-moves.ts';
import { after, before, beforeNotices, type Outline } from './mend-outline.ts';
import { awayOf, sitesToPutBack } from './mend-sites.ts';
import {
  makingSafe,
  type Named,
  type NewSteps,
  newStep,
  proving,
  puttingBack,
  supporting,
  takingAway,
  undoing,
} from './mend-steps.ts';

export function* covered(context: Context): Changes {
  const { spot, subject, related } = context;
  const back = context.outline.events.some(
    (event) => event.spot === spot && event.name === subject?.thing.name && event.way === 'back',
  );
  if (back) {
    // What covers it went back too early.
    for (const other of related) {
      yield* move(context, spot, beforeNotices(other));
      yield* move(context, other, after(spot));
    }
  }
  yield* clearFirst(context);
}

export function* clearFirst(context: Context): Changes {
  yield* allFirst(context, context.others, (one) => takingAway(one, context));
}

export function* stillHeld(context: Context): Changes {
  const { action, text } = context;
  if (context.others.length === 0 && context.subject) {
    // `discard` of bolts that are still in.
    yield* first(context, context.subject, (one) => takingAway(one, context));
    return;
  }
  yield* clearFirst(context);
  if (action?.verb === 'remove') {
    const edit = withVerb(text, action, 'unbolt');
    if (edit) yield [edit];
  }
}

export function* bringBackFirst(context: Context): Changes {
  const { others, subject, outline, model } = context;
  const missing = others.filter(({ thing }) => thing !== subject?.thing);
  if (missing.length > 0) {
    yield* allFirst(context, missing, (one) => puttingBack(one, model, outline));
    for (const { thing } of missing) yield* afterBack(context, thing.name);
    // It may belong far below, where it is missing at the end.
    for (const one of missing) {
      const away = awayOf(outline, one.thing.name, Number.POSITIVE_INFINITY);
      const ways = away?.statement.kind === 'action' ? undoing(away.statement, one, model, outline) : [];
      if (away) yield* insertAtAll(context, ways.slice(0, 1), sitesToPutBack(outline, away).slice(0, 8));
    }
  }
  if (subject && missing.length < others.length + (others.length === 0 ? 1 : 0)) {
    yield* first(context, subject, (one) =>
      one.thing.type === 'fastener'
        ? [[newStep('fit', one, 'fit', ' by hand')], [newStep('fit', one, 'fit new', ' by hand')]]
        : puttingBack(one, model, outline),
    );
    yield* afterBack(context, subject.thing.name);
  }
}

export function* notInPlace(context: Context): Changes {
  const { related, spot, subject, others, model, outline } = context;
  for (const other of related) yield* move(context, spot, beforeNotices(other));
  const missing = others.length > 0 ? others : subject ? [subject] : [];
  for (const { thing } of missing) yield* afterBack(context, thing.name);
  yield* allFirst(context, missing, (one) => puttingBack(one, model, outline));
}

export function* notSupported(context: Context): Changes {
  const { others, model, outline, action } = context;
  if (action?.verb === 'lower') {
    yield* bringBackFirst(context);
    return;
  }
  yield* allFirst(context, others, (one) => supporting(one, model, outline));
}

export function* turnedWhileLocked(context: Context): Changes {
  const { others, related, spot, subject } = context;
  const locks = others.length > 0 ? others : subject ? [subject] : [];
  yield* allFirst(context, locks, (one) => [[newStep(one.thing.type === 'tool' ? 'remove' : 'unlock', one)]]);
  for (const other of related) yield* move(context, spot, beforeNotices(other));
}

export function* faceNotCleaned(context: Context): Changes {
  const faces = context.others.length > 0 ? context.others : context.subject ? [context.subject] : [];
  yield* allFirst(context, faces, (one) => [[newStep('clean', one)]]);
  yield* earlier(context, faces, (one) => [[newStep('clean', one)]]);
}

/** With what the machine file says it is lubricated with, the first where it names several. */
export function* lubricantMissing(context: Context): Changes {
  const things = context.subject ? [context.subject] : [];
  yield* allFirst(context, things, (one) => {
    const clause = one.thing.declaration.clauses.find((each) => each.clause === 'lubricated with');
    const lubricant = clause && 'refs' in clause ? clause.refs[0]?.name.text : undefined;
    return lubricant === undefined ? [] : [[newStep('lubricate', one, 'lubricate', ` with ${lubricant}`)]];
  });
}

export function* notMadeSafe(context: Context): Changes {
  const systems = systemsIn(context);
  yield* allFirst(context, systems, (one) => makingSafe(one, context.model, context.about.words));
  yield* earlier(context, systems, (one) => makingSafe(one, context.model, context.about.words));
}

export function* notProvedSafe(context: Context): Changes {
  const systems = systemsIn(context);
  for (const made of context.related)
    for (const one of systems) for (const steps of proving(one)) yield* bring(context, steps, after(made));
  yield* allFirst(context, systems, proving);
  yield* earlier(context, systems, proving);
}

export function* isolatedOutOfOrder(context: Context): Changes {
  const { subject, model } = context;
  if (!subject) return;
  const isolated = model.isolates[subject.thing.first]!.map((item) => model.thingOf[item]!);
  for (const thing of isolated)
    yield* first(context, { thing, typed: thing.name }, (one) => [[newStep('isolate', one)]]);
  yield* first(context, subject, (one) => [[newStep('switch off', one)], [newStep('open', one)]]);
}

export function* restoredOutOfOrder(context: Context): Changes {
  const { subject, model, outline } = context;
  const open = context.others.length > 0 ? context.others : subject ? [subject] : [];
  const closing = (one: Named): NewSteps[] => {
    const away = awayOf(outline, one.thing.name, context.spot.order);
    const undone = away?.statement.kind === 'action' ? undoing(away.statement, one, model, outline) : [];
    return [...undone, ...restoring(one, model, outline)];
  };
  for (const { thing } of open) yield* afterBack(context, thing.name);
  yield* allFirst(context, open, closing);
  // At its own place in the order of going back, which may be long before.
  for (const one of open) {
    const away = awayOf(outline, one.thing.name, context.spot.order);
    if (!away) continue;
    for (const site of sitesToPutBack(outline, away).slice(0, 6))
      for (const steps of closing(one).slice(0, 2)) yield* bring(context, steps, site);
  }
}

function restoring(one: Named, model: Model, outline: Outline): NewSteps[] {
  const { type } = one.thing;
  if (type === 'system') return [[newStep('restore', one)], [newStep('fill', one)]];
  if (type === 'control') return [[newStep('close', one)], ...puttingBack(one, model, outline)];
  if (type === 'isolator') return [[newStep('unlock', one)], [newStep('switch on', one)]];
  if (type === 'fastener') return [[newStep('tighten', one)], ...puttingBack(one, model, outline)];
  return puttingBack(one, model, outline);
}

export function* wrongVerb(context: Context): Changes {
  const { action, subject } = context;
  if (!subject) return;
  const verb = action?.verb === 'cap' ? 'disconnect' : 'unlock';
  yield* first(context, subject, (one) => [[newStep(verb, one)]]);
}

/** Back to its own place. */
export function* swapped({ action, subject }: Context): Changes {
  const at = action?.tails.find((tail) => tail.tail === 'at');
  const own = subject?.typed.split(' ').slice(1).join(' ');
  const place = at?.tail === 'at' ? at.positions : [];
  if (own && place.length > 0)
    yield [{ start: place[0]!.start, end: place[place.length - 1]!.end, text: own }];
}

/** Used before it was disturbed, or measured again. */
export function* staleMeasurement(context: Context): Changes {
  const { related, spot, text } = context;
  for (const other of related) yield* move(context, spot, before(other));
  for (const { statement } of related) {
    if (statement.kind !== 'action' || statement.verb !== 'measure') continue;
    yield [put(text, beforeNotices(spot), [text.slice(statement.start, statement.end)])];
  }
}

function systemsIn({ subject, others }: Context): Named[] {
  const systems = others.filter(({ thing }) => thing.type === 'system');
  if (systems.length > 0) return systems;
  return subject?.thing.type === 'system' ? [subject] : [];
}

export function* leadOutOfOrder(context: Context): Changes {
  const { others, model, outline, about } = context;
  yield* allFirst(context, others, (one) =>
    about.words?.flag === 'last on' ? puttingBack(one, model, outline) : takingAway(one, context),
  );
}
