/** What follows the objects of a step: with what, meanwhile what, how long, to what value, within what limits. */
import { printReader } from '../../../grammar/quantity/index.ts';
import type { Action, Ref, Tail } from '../../../grammar/syntax/tree.ts';
import { spoken } from '../../lists/combos.ts';
import { bothUnits, measureTyped } from '../../lists/measures.ts';
import { readTyped } from '../../model/fastening-amounts.ts';
import { headAndRest, numberWord, singular } from '../../wording/nouns.ts';
import type { Measure, Rich } from '../document/types.ts';
import { type Act, type ActContext, tailOf } from './act.ts';
import { isTurned, material, type Noun, phrase, them } from './noun.ts';
import { nounOf } from './nouns-of.ts';
import { listed, patterned, spaced, text } from './rich.ts';
import { said, valueNamed } from './texts.ts';

/** All tails that go on with the sentence, in the order in which English has them. */
export function tailsOf(context: ActContext, act: Act, skip: ReadonlySet<Tail['tail']> = new Set()): Rich {
  const { action } = act;
  const pieces: Rich[] = [];
  for (const name of ORDER) {
    if (skip.has(name)) continue;
    for (const tail of action.tails) if (tail.tail === name) pieces.push(tailRich(context, act, tail));
  }
  return spaced(...pieces);
}

const ORDER: readonly Tail['tail'][] = [
  'of',
  'except',
  'to',
  'at',
  'from',
  'by',
  'into',
  'stage',
  'pass',
  'times',
  'with',
  'by hand',
  'holding',
  'while',
  'until',
  'for',
];

function tailRich(context: ActContext, act: Act, tail: Tail): Rich {
  const { words, model } = context;
  const { action } = act;
  const put = (key: Parameters<typeof words.pattern>[0], what: Rich | string) =>
    patterned(words.pattern(key), { what });
  switch (tail.tail) {
    case 'with': {
      const nouns = tail.refs.map((ref) => nounOf(model, ref)).filter((noun) => !catches(action, noun));
      if (nouns.length === 0) return [];
      const measure = measureTyped(tail.quantity, model, context.measures);
      if (measure) {
        const amount = spaced(measured(measure), text('of'), ...nouns.map(material));
        return patterned(words.pattern('tail.with'), { tools: amount });
      }
      return patterned(words.pattern('tail.with'), { tools: listed(nouns.map(withNoun)) });
    }
    case 'by hand':
      if (turnedByHand(act))
        return text(words.say('tail.only by hand', { them: them(act.objects.map(({ noun }) => noun)) }));
      return text(words.say('tail.by hand'));
    case 'holding': {
      const objects = phrases(context, tail.refs);
      if (tail.with.length === 0) return patterned(words.pattern('tail.holding'), { objects });
      return patterned(words.pattern('tail.holding.with'), { objects, tools: phrases(context, tail.with) });
    }
    case 'while': {
      const doing = spoken(tail.doing?.text ?? '');
      if (tail.refs.length === 0) return text(words.say('tail.while.bare', { doing }));
      return patterned(words.pattern('tail.while'), { doing, objects: phrases(context, tail.refs) });
    }
    case 'until':
      return put('tail.until', inside(said(tail.text, model, context.measures, context.bound)));
    case 'for': {
      const measure = measureTyped(tail.quantity, model, context.measures);
      if (measure) return put(OVER.has(action.verb) ? 'tail.over' : 'tail.for', measured(measure));
      return put('tail.for', inside(said(tail.text, model, context.measures, context.bound)));
    }
    case 'to':
      return toRich(context, tail);
    case 'at':
      return atRich(context, act, tail);
    case 'from':
      return put('tail.from', tables(context, tail.refs));
    case 'by':
      return put('tail.by', valuesOf(context, tail.refs));
    case 'into':
      return put('tail.into', phrases(context, tail.refs));
    case 'except':
      return put('tail.except', phrases(context, tail.refs));
    case 'of':
      return tail.refs.length > 0 ? put('tail.of', phrases(context, tail.refs)) : [];
    case 'times':
      return text(timesText(context, tail.count));
    case 'stage':
      return stageText(context, act);
    case 'pass': {
      const percent = readTyped(tail.quantity, model.values);
      return percent ? text(words.say('tail.pass', { percent: printReader(percent) })) : [];
    }
    default:
      return [];
  }
}

/** Measured or watched over a time; other work goes on for a time. */
const OVER: ReadonlySet<string> = new Set(['measure', 'record', 'check']);

/** A tray, a pan: what runs out is caught in it, and nothing is undone with it. */
export function catches({ verb }: Action, noun: Noun): boolean {
  const { head } = headAndRest(singular(noun.title));
  return (
    noun.type === 'tool' &&
    RUNS_OUT.has(verb) &&
    /\b(?:tray|pan|bucket|basin|bowl|bottle|jug|container)$/i.test(head)
  );
}

const RUNS_OUT: ReadonlySet<string> = new Set([
  'remove',
  'unbolt',
  'disconnect',
  'loosen',
  'open',
  'bleed',
  'drain',
]);

/** Started by hand, not tightened. */
function turnedByHand({ action, objects }: Act): boolean {
  return (
    (action.verb === 'fit' || action.verb === 'refit') &&
    objects.length > 0 &&
    objects.every(({ thing, noun }) => thing?.type === 'fastener' && isTurned(noun))
  );
}

function withNoun(noun: Noun): Rich {
  return noun.type === 'fluid' || noun.type === 'consumable' ? material(noun) : phrase(noun);
}

function toRich(context: ActContext, tail: Tail & { tail: 'to' }): Rich {
  const { words, model, measures, bound } = context;
  const key = tail.below ? 'tail.to below' : 'tail.to';
  const measure = measureTyped(tail.quantity, model, measures);
  if (measure) return patterned(words.pattern(key), { what: measured(measure) });
  if (tail.text)
    return patterned(words.pattern(key), { what: inside(said(tail.text, model, measures, bound)) });
  const [ref] = tail.refs;
  const value = ref && valueNamed(ref.name.text, model, measures);
  if (value) return patterned(words.pattern(key), { what: measured(value) });
  const nouns = tail.refs.map((one) => nounOf(model, one));
  const what = tail.fresh
    ? listed(nouns.map((noun): Rich => [{ kind: 'thing', text: newDefinite(noun), id: noun.id }]))
    : listed(nouns.map((noun) => phrase(noun)));
  return what.length > 0 ? patterned(words.pattern(key), { what }) : [];
}

/** `the new motor`: the reader knows it is there. */
function newDefinite(noun: Noun): string {
  const plain = phrase(noun)
    .map((run) => run.text)
    .join('');
  return plain.startsWith('the ') ? `the new ${plain.slice(4)}` : `the new ${plain}`;
}

function atRich(context: ActContext, act: Act, tail: Tail & { tail: 'at' }): Rich {
  const { words, model, measures } = context;
  const measure = measureTyped(tail.quantity, model, measures);
  if (measure) return patterned(words.pattern('tail.at'), { what: measured(measure) });
  if (tail.refs.length > 0) {
    const [ref] = tail.refs;
    const value = ref && valueNamed(ref.name.text, model, measures);
    return patterned(words.pattern('tail.at'), {
      what: value ? measured(value) : phrases(context, tail.refs),
    });
  }
  const names = tail.positions.map(({ from, to }) => (to === undefined ? from : `${from} to ${to}`));
  const [object] = act.objects;
  const places = listed(names.map((name) => text(/^\d/.test(name) ? name : spoken(name))));
  return object && places.length > 0 ? patterned(words.pattern('tail.at'), { what: places }) : [];
}

function stageText(context: ActContext, act: Act): Rich {
  const { words } = context;
  const number = tailOf(act.action, 'stage')?.quantity?.amounts[0]?.number ?? '';
  const [one] = act.fastening;
  const stage = one?.stages[0];
  const thing = one && context.model.byName.get(one.id);
  if (!stage || !thing) return text(words.say('tail.stage only', { stage: number }));
  const what = stage.measure ? bothUnits(stage.measure) : stage.sentence.replace(/\.$/, '').toLowerCase();
  return text(words.say('tail.stage', { stage: number, stages: thing.stages.length, what }));
}

export function timesText({ words }: ActContext, count: number): string {
  if (count === 1) return words.say('tail.once');
  if (count === 2) return words.say('tail.twice');
  return words.say('tail.times', { number: numberWord(count) });
}

export function phrases(context: ActContext, refs: readonly Ref[]): Rich {
  return listed(refs.map((ref) => phrase(nounOf(context.model, ref))));
}

function tables(context: ActContext, refs: readonly Ref[]): Rich {
  return listed(
    refs.map((ref) => {
      const table = context.model.tables.get(ref.name.text);
      if (!table) return phrase(nounOf(context.model, ref));
      return text(`the table “${table.title?.value ?? spoken(ref.name.text)}”`);
    }),
  );
}

/** Values by name: `gap` is `the gap`. */
function valuesOf(context: ActContext, refs: readonly Ref[]): Rich {
  return listed(
    refs.map((ref) => {
      const value = context.model.values.get(ref.name.text);
      if (context.model.tables.has(ref.name.text)) return tables(context, [ref]);
      if (context.model.byName.has(ref.name.text)) return phrases(context, [ref]);
      return text(`the ${value?.title || spoken(ref.name.text)}`);
    }),
  );
}

export function measured(measure: Measure | undefined): Rich {
  return measure ? [{ kind: 'measure', text: bothUnits(measure), measure }] : [];
}

/** A text of the author's inside a sentence: no full stop, no capital but that of a name. */
export function inside(rich: Rich): Rich {
  return rich.map((run, index) => {
    let value = run.text;
    if (index === rich.length - 1) value = value.slice(0, endOf(value));
    if (index === 0 && /^[A-Z][a-z]+ [a-z]/.test(value) && COMMON.test(value))
      value = value.charAt(0).toLowerCase() + value.slice(1);
    return { ...run, text: value };
  });
}

/** Words that begin a sentence and are no names. */
const COMMON = /^(?:The|A|An|It|No|All|Each|There|When|Its|They)\b/;

/** Where a text ends without the full stops and blanks behind it. */
function endOf(text: string): number {
  let end = text.length;
  while (end > 0 && /[.\s]/.test(text[end - 1]!)) end--;
  return end;
}
