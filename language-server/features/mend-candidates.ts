/**
 * What could mend a finding: for each check a short list of changes to the text, most natural first. Nothing
 * here is known to be right: mend-search.ts tries each change and keeps what the checker finds clean.
 */
import type { Edit } from '../../grammar/format/format.ts';
import type { Action, Block } from '../../grammar/syntax/tree.ts';
import type { Model } from '../model/model.ts';
import type { About, Finding } from '../report/finding.ts';
import { alone, cut, moved, overlap, put, without, withVerb } from './mend-edits.ts';
import {
  after,
  awayOf,
  backOf,
  before,
  beforeNotices,
  endOf,
  nextAway,
  type Outline,
  type Site,
  type Spot,
  sitesToPutBack,
  sitesToTakeAway,
  spotAt,
} from './mend-outline.ts';
import {
  makingSafe,
  type Named,
  type NewStep,
  type NewSteps,
  namedIn,
  newStep,
  proving,
  puttingBack,
  sameVerbs,
  supporting,
  takingAway,
  undoing,
} from './mend-steps.ts';

export interface Context {
  text: string;
  finding: Finding;
  about: About;
  outline: Outline;
  model: Model;
  /** The step that the finding is at. */
  spot: Spot;
  /** That step, where it is an action. */
  action: Action | undefined;
  subject: Named | undefined;
  others: Named[];
  /** The earlier steps of the story. */
  related: Spot[];
  /** Other things of which the same is said at the same step. */
  alike: Named[];
}

type Changes = Generator<Edit[]>;

export function contextOf(
  text: string,
  finding: Finding,
  findings: readonly Finding[],
  outline: Outline,
  model: Model,
): Context | undefined {
  const { about } = finding;
  const found = spotAt(outline, finding.start, finding.end);
  // What the heading says is off at the start has no step that it is about.
  const spot = found ?? outline.spots[0];
  if (!about || !spot) return undefined;
  const alike = findings.filter(
    (other) =>
      other.message !== finding.message &&
      other.check === finding.check &&
      other.about?.check === about.check &&
      spotAt(outline, other.start, other.end) === found,
  );
  const named = (typed: readonly string[]) => namedIn(model, typed).map((one) => inRounds(one, spot));
  return {
    text,
    finding,
    about,
    outline,
    model,
    spot,
    action: found?.statement.kind === 'action' ? found.statement : undefined,
    subject: named(about.things)[0],
    others: named(about.others),
    related: finding.related.flatMap((place) =>
      place.file === finding.file
        ? outline.spots.filter(
            ({ statement }) =>
              statement.kind === 'action' && statement.start === place.start && statement.end === place.end,
          )
        : [],
    ),
    alike: named(alike.flatMap((other) => other.about?.things ?? [])),
  };
}

/** In a loop over positions a position is the loop's own: `#side` for `#left`. */
function inRounds({ thing, typed }: Named, spot: Spot): Named {
  const position = typed.split(' #')[1];
  if (position === undefined || position.includes(',')) return { thing, typed };
  for (const { statement } of [...spot.parents].reverse()) {
    if (statement.kind !== 'for each' || !statement.variable || !statement.over) continue;
    const { over, variable } = statement;
    const among =
      over.kind === 'numbers'
        ? Number(position) >= over.from && Number(position) <= over.to
        : over.kind === 'positions' || over.names.some(({ text }) => text === position);
    if (among) return { thing, typed: `${thing.name} #${variable.text}` };
  }
  return { thing, typed };
}

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

/** What a list lacks is not mended by moving steps. */
const LISTS: ReadonlySet<string> = new Set(['tool-unlisted', 'supply-short']);

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
  'stage-out-of-order': dropOne,
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

// ------------------------------------------------------------------------------- blocked steps

function* covered(context: Context): Changes {
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

function* clearFirst(context: Context): Changes {
  yield* allFirst(context, context.others, (one) => takingAway(one, context));
}

function* stillHeld(context: Context): Changes {
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

function* bringBackFirst(context: Context): Changes {
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

function* notInPlace(context: Context): Changes {
  const { related, spot, subject, others, model, outline } = context;
  for (const other of related) yield* move(context, spot, beforeNotices(other));
  const missing = others.length > 0 ? others : subject ? [subject] : [];
  for (const { thing } of missing) yield* afterBack(context, thing.name);
  yield* allFirst(context, missing, (one) => puttingBack(one, model, outline));
}

function* notSupported(context: Context): Changes {
  const { others, model, outline, action } = context;
  if (action?.verb === 'lower') {
    yield* bringBackFirst(context);
    return;
  }
  yield* allFirst(context, others, (one) => supporting(one, model, outline));
}

function* turnedWhileLocked(context: Context): Changes {
  const { others, related, spot, subject } = context;
  const locks = others.length > 0 ? others : subject ? [subject] : [];
  yield* allFirst(context, locks, (one) => [[newStep(one.thing.type === 'tool' ? 'remove' : 'unlock', one)]]);
  for (const other of related) yield* move(context, spot, beforeNotices(other));
}

function* faceNotCleaned(context: Context): Changes {
  const faces = context.others.length > 0 ? context.others : context.subject ? [context.subject] : [];
  yield* allFirst(context, faces, (one) => [[newStep('clean', one)]]);
  yield* earlier(context, faces, (one) => [[newStep('clean', one)]]);
}

function* notMadeSafe(context: Context): Changes {
  const systems = systemsIn(context);
  yield* allFirst(context, systems, (one) => makingSafe(one, context.model, context.about.words));
  yield* earlier(context, systems, (one) => makingSafe(one, context.model, context.about.words));
}

function* notProvedSafe(context: Context): Changes {
  const systems = systemsIn(context);
  for (const made of context.related)
    for (const one of systems) for (const steps of proving(one)) yield* bring(context, steps, after(made));
  yield* allFirst(context, systems, proving);
  yield* earlier(context, systems, proving);
}

function* isolatedOutOfOrder(context: Context): Changes {
  const { subject, model } = context;
  if (!subject) return;
  const isolated = model.isolates[subject.thing.first]!.map((item) => model.thingOf[item]!);
  for (const thing of isolated)
    yield* first(context, { thing, typed: thing.name }, (one) => [[newStep('isolate', one)]]);
  yield* first(context, subject, (one) => [[newStep('switch off', one)], [newStep('open', one)]]);
}

function* restoredOutOfOrder(context: Context): Changes {
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

function* wrongVerb(context: Context): Changes {
  const { action, subject } = context;
  if (!subject) return;
  const verb = action?.verb === 'cap' ? 'disconnect' : 'unlock';
  yield* first(context, subject, (one) => [[newStep(verb, one)]]);
}

/** Back to its own place. */
function* swapped({ action, subject }: Context): Changes {
  const at = action?.tails.find((tail) => tail.tail === 'at');
  const own = subject?.typed.split(' ').slice(1).join(' ');
  const place = at?.tail === 'at' ? at.positions : [];
  if (own && place.length > 0)
    yield [{ start: place[0]!.start, end: place[place.length - 1]!.end, text: own }];
}

/** Used before it was disturbed, or measured again. */
function* staleMeasurement(context: Context): Changes {
  const { related, spot, text } = context;
  for (const other of related) yield* move(context, spot, before(other));
  for (const { statement } of related) {
    if (statement.kind !== 'action' || statement.verb !== 'measure') continue;
    yield [put(text, beforeNotices(spot), [text.slice(statement.start, statement.end)])];
  }
}

// ------------------------------------------------------------------------------- used once, lost, on trial

function* reused(context: Context): Changes {
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

function kept(text: string, action: Action, tail: { start: number; end: number }): Edit {
  let start = tail.start;
  while (start > action.start && /\s/.test(text[start - 1]!)) start--;
  return { start, end: tail.end, text: '' };
}

function* thrownAwayWith(context: Context): Changes {
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

function* trialNotUndone(context: Context): Changes {
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

// ------------------------------------------------------------------------------- done twice, never undone, stages

function* doneTwice(context: Context): Changes {
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

function* dropOne({ text, spot, action, subject }: Context): Changes {
  if (!action) return;
  if (subject) yield without(text, spot, action, subject.thing.name);
  yield [cut(text, spot)];
}

function* refittedBeforeRemoved(context: Context): Changes {
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

function* stageSkipped(context: Context): Changes {
  const { action, subject, spot } = context;
  const stage = Number(
    action?.tails.find(({ tail }) => tail === 'stage' || tail === 'pass') && stageOf(action),
  );
  if (!action || !subject || !Number.isInteger(stage) || stage < 2) return;
  const missing = (from: number) =>
    Array.from({ length: stage - from }, (_, index) =>
      newStep('tighten', subject, 'tighten', ` stage ${from + index}`),
    );
  for (let from = stage - 1; from >= 1; from--) yield* bring(context, missing(from), beforeNotices(spot));
}

function stageOf(action: Action): string | undefined {
  for (const tail of action.tails) if (tail.tail === 'stage') return tail.quantity?.amounts[0]?.number;
  return undefined;
}

function* retightened(context: Context): Changes {
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

function* reverseImpossible(context: Context): Changes {
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

// ------------------------------------------------------------------------------- notices and lists

/** The notice stands elsewhere. */
function* cautionMissing(context: Context): Changes {
  const { outline, spot, text } = context;
  const notices = outline.spots
    .filter(({ statement }) => statement.kind === 'notice')
    .sort((a, b) => Math.abs(a.order - spot.order) - Math.abs(b.order - spot.order))
    .slice(0, 4);
  for (const notice of notices) {
    yield* move(context, spot, after(notice));
    const edits = moved(text, notice, before(spot));
    if (edits) yield edits;
  }
}

function* cautionLate(context: Context): Changes {
  for (const other of context.related) {
    const edits = moved(context.text, context.spot, before(other));
    if (edits) yield edits;
    yield* move(context, other, after(context.spot));
  }
}

function* leadOutOfOrder(context: Context): Changes {
  const { others, model, outline, about } = context;
  yield* allFirst(context, others, (one) =>
    about.words?.flag === 'last on' ? puttingBack(one, model, outline) : takingAway(one, context),
  );
}

function* toolUnlisted({ subject, outline }: Context): Changes {
  for (const header of outline.procedure.headers) {
    const last = header.header === 'tools' ? header.refs[header.refs.length - 1] : undefined;
    if (subject && last) yield [{ start: last.end, end: last.end, text: `, ${subject.thing.name}` }];
  }
}

function* supplyShort({ subject, about, outline, text }: Context): Changes {
  const needed = Number(about.words?.needed);
  if (!subject || about.words?.amount || !Number.isInteger(needed)) return;
  const { name } = subject.thing;
  const entry = needed > 1 ? `${name} x${needed}` : name;
  for (const header of outline.procedure.headers) {
    if (header.header !== 'supplies') continue;
    const own = header.refs.find((ref) => ref.name.text === name);
    const last = header.refs[header.refs.length - 1];
    if (own) yield [{ start: own.start, end: own.end, text: entry }];
    else if (last) yield [{ start: last.end, end: last.end, text: `, ${entry}` }];
    else if (header.fluids.length > 0) {
      const start = header.fluids[0]!.quantity.start;
      yield [{ start, end: start, text: `${entry}, ` }];
    }
  }
  if (outline.procedure.headers.some(({ header }) => header === 'supplies')) return;
  const lastHeader = outline.procedure.headers.at(-1);
  if (lastHeader)
    yield [{ start: lastHeader.end, end: lastHeader.end, text: `${gap(text, lastHeader)}supplies ${entry}` }];
}

/** Headers stand on one line, or each on its own. */
function gap(text: string, header: { start: number }): string {
  const line = text.slice(text.lastIndexOf('\n', header.start) + 1, header.start);
  return line.trim() === '' ? `\n${line}` : '  ';
}

// ------------------------------------------------------------------------------- left at the end

function* left(context: Context): Changes {
  const { subject, action, outline, spot, text } = context;
  if (!subject) return;
  // Left out of a `reverse` by name.
  for (const { statement } of outline.spots) {
    if (statement.kind !== 'reverse') continue;
    const index = statement.except.findIndex((ref) => ref.name.text === subject.thing.name);
    if (index >= 0)
      yield [exceptionCut(text, statement.except, index, statement.task?.end ?? statement.start)];
  }
  const ways = ending(context, subject);
  if (action && subject.thing.type === 'fastener' && (action.verb === 'fit' || action.verb === 'tighten'))
    yield* insertAtAll(context, ways, [after(spot)]);
  yield* insertAtAll(context, ways, sitesToPutBack(outline, spot).slice(0, 16));
}

/** What the heading says of the end and no step makes so. */
function* contractBroken(context: Context): Changes {
  const { text, finding, subject, outline, spot, action } = context;
  if (!subject || action || spot.statement.start <= finding.start) return;
  const state = text.slice(finding.start, finding.end).split(/\s+/).at(-1) ?? '';
  const ways = (MAKING[state] ?? []).map((verb) => [newStep(verb, subject)]);
  yield* insertAtAll(context, ways, sitesToPutBack(outline, spot).slice(0, 12), false);
}

/** State words and the verbs that make things so. */
const MAKING: Readonly<Record<string, readonly string[]>> = {
  off: ['remove', 'unbolt', 'switch off'],
  out: ['remove'],
  loose: ['loosen'],
  aside: ['move aside'],
  disconnected: ['disconnect'],
  open: ['open'],
  closed: ['close'],
  on: ['switch on'],
  locked: ['lock out', 'lock'],
  isolated: ['isolate'],
  relieved: ['relieve'],
  cool: ['let cool'],
  drained: ['drain'],
  supported: ['support'],
  marked: ['mark'],
  clean: ['clean'],
};

/** The steps that end what the finding says is left. */
function ending({ about, action, model, outline }: Context, subject: Named): NewSteps[] {
  const one = (verb: string) => [newStep(verb, subject)];
  const undone = action ? undoing(action, subject, model, outline) : puttingBack(subject, model, outline);
  switch (about.check) {
    case 'left-drained':
      return [one('fill'), one('top up')];
    case 'left-isolated': {
      const isolator =
        action &&
        namedIn(
          model,
          action.objects.map((ref) => ref.name.text),
        )[0];
      const own =
        action && isolator && action.verb !== 'isolate' ? undoing(action, isolator, model, outline) : [];
      return [...own, one('restore')];
    }
    case 'left-locked':
      return [one('unlock')];
    case 'left-supported':
      return [one('lower')];
    case 'left-open':
      return action ? undone : [one('close'), one('open'), one('switch on')];
    case 'left-loose':
      return action ? undone : [one('tighten')];
    case 'left-aside':
      return [one('move back')];
    case 'fixture-left-on':
      return [one('remove')];
    default:
      return undone;
  }
}

function exceptionCut(
  text: string,
  except: readonly { start: number; end: number }[],
  index: number,
  behind: number,
): Edit {
  const own = except[index]!;
  const next = except[index + 1];
  const last = except[index - 1];
  if (next) return { start: own.start, end: next.start, text: '' };
  return { start: last?.end ?? behind, end: text.startsWith(',', own.end) ? own.end + 1 : own.end, text: '' };
}

function* openedFull(context: Context): Changes {
  const { subject, action } = context;
  if (!subject) return;
  if (action?.verb === 'evacuate') {
    yield* first(context, subject, (one) => [[newStep('recover', one)], [newStep('drain', one)]]);
    return;
  }
  yield* later(context, (one) => [[newStep('top up', one)]]);
  yield* first(context, subject, (one) => [[newStep('drain', one)]]);
}

/** After the step or, in the order of going back, later. */
function* later(context: Context, ways: (one: Named) => NewSteps[]): Changes {
  const { subject, outline, spot } = context;
  if (!subject) return;
  const back = backOf(outline, subject.thing.name, spot.order - 1);
  const sites = [...(back ? [after(back.last)] : []), ...sitesToPutBack(outline, spot), after(spot)];
  yield* insertAtAll(context, ways(subject), sites.slice(0, 20), true);
}

// ------------------------------------------------------------------------------- shared moves

/** Every way at every place, the first way first. */
function* insertAtAll(
  context: Context,
  ways: readonly NewSteps[],
  sites: readonly Site[],
  orMove = true,
): Changes {
  for (const [index, steps] of ways.entries()) {
    // The less usual ways only at the likeliest places.
    for (const site of index === 0 ? sites : sites.slice(0, 4))
      yield* orMove ? bring(context, steps, site) : insertAt(context, steps, site);
  }
}

/** The steps for all of these things before the present one, then those for each of them. */
function* allFirst(context: Context, all: readonly Named[], ways: (one: Named) => NewSteps[]): Changes {
  if (all.length > 1) {
    const steps = all.flatMap((one) => ways(one)[0] ?? []);
    yield* insertAt(context, steps, beforeNotices(context.spot));
  }
  for (const one of all) yield* first(context, one, ways);
}

/** The steps before the present one. */
function* first(context: Context, one: Named | undefined, ways: (one: Named) => NewSteps[]): Changes {
  if (!one) return;
  for (const steps of ways(one)) yield* bring(context, steps, beforeNotices(context.spot));
}

/** The steps at places further up. */
function* earlier(context: Context, all: readonly Named[], ways: (one: Named) => NewSteps[]): Changes {
  for (const site of earlierSites(context))
    for (const one of all) for (const steps of ways(one).slice(0, 2)) yield* insertAt(context, steps, site);
}

function earlierSites({ outline, spot }: Context): Site[] {
  return outline.spots
    .slice(0, spot.order)
    .filter(({ statement }) => statement.kind === 'action')
    .reverse()
    .slice(0, 10)
    .flatMap((one) => {
      const site = beforeNotices(one);
      // A notice may be about the step that is missing behind it.
      return site.index === one.index ? [site] : [before(one), site];
    });
}

/** Moves a step that does the same to here, or writes the steps here. */
function* bring(context: Context, steps: readonly NewStep[], site: Site): Changes {
  const only = steps[0];
  if (only && steps.length === 1)
    for (const spot of sameElsewhere(context, only)) yield* move(context, spot, site, only.name);
  yield* insertAt(context, steps, site);
}

/** Steps nearby that do the same to the same thing, nearest first. */
function sameElsewhere({ outline, spot }: Context, step: NewStep): Spot[] {
  const verbs = sameVerbs(step.verb);
  return outline.spots
    .filter(
      ({ statement }) =>
        statement.kind === 'action' &&
        statement !== spot.statement &&
        verbs.includes(statement.verb) &&
        statement.objects.some((ref) => ref.name.text === step.name),
    )
    .sort((a, b) => Math.abs(a.order - spot.order) - Math.abs(b.order - spot.order))
    .slice(0, 2);
}

/** New lines at a place; in the case that shows the finding, and only there. */
function* insertAt({ text, about }: Context, steps: readonly NewStep[], site: Site): Changes {
  if (steps.length === 0) return;
  const lines = steps.map(({ line }) => line);
  yield [put(text, site, lines)];
  if (about.when) yield [put(text, site, [`when ${about.when} {`, ...lines, '}'])];
}

/** A step moved; where it is about several things also for one of them alone. */
function* move({ text, about, finding, outline }: Context, spot: Spot, site: Site, name?: string): Changes {
  // Out of a branch or a loop only where that is what is wrong: elsewhere the author meant it to be there.
  const { conditional } = outline;
  const stays = conditional.get(spot.block) === conditional.get(site.block);
  if (!stays && about.check === finding.check) return;
  const edits = moved(text, spot, site);
  if (edits) yield edits;
  const guarded = moved(text, spot, site, true);
  if (guarded) yield guarded;
  const { statement } = spot;
  if (name === undefined || statement.kind !== 'action' || statement.objects.length < 2) return;
  yield* together(without(text, spot, statement, name), [put(text, site, [alone(text, statement, name)])]);
}

/** The present step behind the one that puts a thing back, where that comes later. */
function* afterBack(context: Context, name: string): Changes {
  const back = backOf(context.outline, name, context.spot.order);
  if (!back) return;
  yield* move(context, context.spot, after(back.first), context.subject?.thing.name);
  if (back.last !== back.first)
    yield* move(context, context.spot, after(back.last), context.subject?.thing.name);
  yield* move(context, back.first, beforeNotices(context.spot), name);
}

/** The present step before or after each step of its story, and the other way round. */
function* aroundStory(context: Context): Changes {
  const { spot, action } = context;
  if (!action) return;
  for (const other of [...context.related].reverse()) {
    yield* move(context, spot, before(other), context.subject?.thing.name);
    yield* move(context, spot, after(other), context.subject?.thing.name);
    yield* move(context, other, after(spot));
    yield* move(context, other, before(spot));
  }
}

/** How far a step is moved, in statements. */
const WINDOW = 12;

/** The nearest places up and down. */
function* nearby(context: Context, spot: Spot): Changes {
  if (spot.statement.kind !== 'action') return;
  const { spots } = context.outline;
  for (let distance = 1; distance <= WINDOW; distance++) {
    const up = spots[spot.order - distance];
    const down = spots[spot.order + distance];
    if (up) yield* move(context, spot, before(up));
    if (down) yield* move(context, spot, after(down));
  }
}

function systemsIn({ subject, others }: Context): Named[] {
  const systems = others.filter(({ thing }) => thing.type === 'system');
  if (systems.length > 0) return systems;
  return subject?.thing.type === 'system' ? [subject] : [];
}

function* together(a: readonly Edit[], b: readonly Edit[]): Changes {
  const edits = [...a, ...b];
  if (!overlap(edits)) yield edits;
}
