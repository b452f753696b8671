/**
 * Which steps take a thing away, put it back or make it ready, in trade language. Each answer is a list of
 * ways, most natural first; a way is one step or several. What really fits is for the checker to say.
 */
import type { Action } from '../../grammar/syntax/tree.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import type { Model, Thing } from '../model/model.ts';
import type { Outline, Spot } from './mend-outline.ts';
import { backOf } from './mend-sites.ts';

export interface NewStep {
  verb: string;
  /** Name of the thing, without positions. */
  name: string;
  /** As it is written. */
  line: string;
}

export type NewSteps = NewStep[];

/** A thing as a finding names it. */
export interface Named {
  thing: Thing;
  /** As to be typed: `head-bolts #1, #3`. */
  typed: string;
}

export function namedIn(model: Model, typed: readonly string[]): Named[] {
  return typed.flatMap((text) => {
    const thing = model.byName.get(text.split(' ')[0]!);
    return thing ? [{ thing, typed: text }] : [];
  });
}

export function newStep(verb: string, { thing, typed }: Named, words = verb, tail = ''): NewStep {
  const closing = verbNamed(verb)?.closing;
  return { verb, name: thing.name, line: `${words} ${typed}${closing ? ` ${closing}` : ''}${tail}` };
}

/** Gets a thing out of the way. */
export function takingAway(named: Named, { model, outline, spot, action }: Around): NewSteps[] {
  const { thing } = named;
  const one = (verb: string, tail = '') => [newStep(verb, named, verb, tail)];
  // The step itself may be the one that throws it away.
  const renewed = action?.verb !== 'discard' && (thing.singleUse || renewedAfter(outline, thing, spot.order));
  const thrown = renewed ? ' and discard' : '';
  switch (thing.type) {
    case 'fastener':
      return thing.freesWhenLoose
        ? [one('loosen'), one('remove', thrown)]
        : [one('remove', thrown), one('loosen')];
    case 'connection':
      return [one('disconnect')];
    case 'part':
    case 'control':
    case 'isolator':
      return model.heldBy[thing.first]!.length > 0 && thing.type === 'part'
        ? [one('unbolt', thrown), one('remove', thrown), one('move aside')]
        : [one('remove', thrown), one('move aside')];
    default:
      return [one('remove', thrown)];
  }
}

/** Where in which procedure a step is looked for. */
export interface Around {
  model: Model;
  outline: Outline;
  spot: Spot;
  action?: Action | undefined;
}

/** Whether the next step that puts the thing back puts in a new one. */
function renewedAfter(outline: Outline, thing: Thing, from: number): boolean {
  const back = backOf(outline, thing.name, from - 1)?.first.statement;
  return back?.kind === 'action' && back.fresh !== undefined;
}

/** Puts a thing back that is off, out or apart. */
export function puttingBack(
  named: Named,
  model: Model,
  outline: Outline,
  how: { thrown?: boolean; unbolted?: boolean } = {},
): NewSteps[] {
  const { thing } = named;
  const one = (verb: string, words = verb) => [newStep(verb, named, words)];
  const renewed = how.thrown || thing.singleUse;
  switch (thing.type) {
    case 'fastener': {
      const fit = renewed ? 'fit new' : 'fit';
      const secured = thing.needsSecuring ? one('secure') : [];
      const byHand = [newStep('fit', named, fit, ' by hand'), ...one('tighten'), ...secured];
      const whole = [...(renewed ? one('fit', 'fit new') : one('refit')), ...secured];
      return startsByHand(outline) ? [byHand, whole] : [whole, byHand];
    }
    case 'connection':
      return renewed ? [one('fit', 'fit new'), one('connect')] : [one('connect'), one('fit', 'fit new')];
    case 'tool':
      return [one('fit')];
    case 'part':
    case 'seal':
    case 'control':
    case 'isolator': {
      const fresh = one('fit', 'fit new');
      const again = thing.added ? one('fit') : one('refit');
      const held = thing.type === 'part' && model.heldBy[thing.first]!.length > 0;
      const bolted = held ? [one('bolt up')] : [];
      const back = how.unbolted ? [...bolted, again] : [again, ...bolted];
      const kits = renewed ? kitsWith(thing, model) : [];
      return renewed
        ? [fresh, ...kits, ...(held ? [[...fresh, ...one('bolt up')]] : []), ...back]
        : [...back, fresh];
    }
    default:
      return [];
  }
}

/** A kit that holds the thing, fitted whole. */
function kitsWith(thing: Thing, model: Model): NewSteps[] {
  return model.things
    .filter(({ type, first }) => type === 'kit' && model.contains[first]!.includes(thing.first))
    .map((kit) => [newStep('fit', { thing: kit, typed: kit.name }, 'fit kit')]);
}

/** Undoes one step on a thing: what a step left undone at the end asks for. */
export function undoing(action: Action, named: Named, model: Model, outline: Outline): NewSteps[] {
  const { thing } = named;
  const one = (verb: string, words = verb) => [newStep(verb, named, words)];
  const thrown = action.tails.some(({ tail }) => tail === 'and discard') || action.verb === 'discard';
  switch (action.verb) {
    case 'remove':
    case 'unbolt':
    case 'discard':
    case 'disconnect':
    case 'cap':
      return puttingBack(named, model, outline, { thrown, unbolted: action.verb === 'unbolt' });
    case 'loosen':
    case 'back off':
    case 'tighten':
      return [one('tighten')];
    case 'fit':
    case 'refit':
    case 'bolt up':
      if (thing.type === 'fastener') return [one('tighten')];
      return [one('remove')];
    case 'lock':
    case 'bypass': {
      const tools = action.tails.flatMap((tail) => (tail.tail === 'with' ? tail.refs : []));
      const removals = tools.flatMap((ref) => {
        const tool = model.byName.get(ref.name.text);
        return tool ? [[newStep('remove', { thing: tool, typed: tool.name })]] : [];
      });
      return action.verb === 'lock' ? [...removals, one('unlock')] : removals;
    }
    case 'drain':
    case 'recover':
      return [one('fill'), one('top up')];
    case 'trial fit':
      return [one('remove')];
    default: {
      const back = verbNamed(action.verb)?.undone;
      return back ? [one(back)] : [];
    }
  }
}

/** Makes a system safe to open; `unsafe` names what it still is, where that is known. */
export function makingSafe(
  system: Named,
  model: Model,
  unsafe: Readonly<Record<string, string>> = {},
): NewSteps[] {
  const is = (state: string) => state in unsafe || !UNSAFE.some((other) => other in unsafe);
  const { thing } = system;
  const ways: NewSteps[] = [];
  const points = (lists: Model['isolators'], verb: (thing: Thing) => string) =>
    lists[thing.first]!.flatMap((item) => {
      const point = model.thingOf[item]!;
      return point.type === 'part' ? [] : [newStep(verb(point), { thing: point, typed: point.name })];
    });
  const opened = ({ type }: Thing) =>
    type === 'connection' ? 'disconnect' : type === 'fastener' ? 'remove' : 'open';
  if (thing.hasLive && is('live')) ways.push([newStep('isolate', system)]);
  if (thing.hasPressure && is('under pressure')) {
    const relief = points(model.reliefPoints, opened);
    for (const step of relief) ways.push([step]);
    ways.push([newStep('relieve', system)]);
  }
  if (thing.hasHeat && is('hot')) ways.push([newStep('let cool', system)]);
  return ways;
}

const UNSAFE = ['live', 'under pressure', 'hot'];

/** Proves a system dead or without pressure. */
export function proving(system: Named): NewSteps[] {
  const testers = system.thing.declaration.clauses.flatMap((clause) =>
    clause.clause === 'proved with' ? clause.refs.map((ref) => ref.name.text) : [],
  );
  const tail = testers.length > 0 ? ` with ${testers[0]}` : '';
  return [[newStep('prove', system, 'prove', tail)]];
}

/** Holds up a part. The tool is one that is used for it elsewhere, or that the procedure lists. */
export function supporting(part: Named, model: Model, outline: Outline): NewSteps[] {
  const tools = new Set<string>();
  for (const { statement } of outline.spots) {
    if (statement.kind !== 'action' || (statement.verb !== 'support' && statement.verb !== 'raise')) continue;
    for (const tail of statement.tails)
      if (tail.tail === 'with') for (const ref of tail.refs) tools.add(ref.name.text);
  }
  for (const header of outline.procedure.headers)
    if (header.header === 'tools')
      for (const ref of header.refs) if (HOLDS.test(ref.name.text)) tools.add(ref.name.text);
  const known = [...tools].filter((tool) => model.byName.get(tool)?.type === 'tool');
  return [...known.slice(0, 3).map((tool) => ` with ${tool}`), ''].map((tail) => [
    newStep('support', part, 'support', tail),
  ]);
}

const HOLDS = /hoist|jack|stand|prop|sling|support|crane|block|trestle/;

/** Whether the author starts fasteners by hand in a step of its own. */
function startsByHand(outline: Outline): boolean {
  return outline.spots.some(
    ({ statement }) =>
      statement.kind === 'action' &&
      statement.tails.some(({ tail }) => tail === 'by hand') &&
      statement.verb === 'fit',
  );
}

const SAME: readonly (readonly string[])[] = [
  ['remove', 'unbolt', 'disconnect', 'move aside', 'discard'],
  ['refit', 'fit', 'trial fit', 'bolt up', 'connect', 'move back'],
  ['open', 'switch on'],
  ['close', 'switch off'],
  ['drain', 'recover'],
  ['fill', 'top up'],
  ['support', 'raise'],
];

/** Verbs that do the same to a thing. */
export function sameVerbs(verb: string): readonly string[] {
  return SAME.find((group) => group.includes(verb)) ?? [verb];
}
