/** The sentences behind the heading of a step: what the machine file adds, what the tails limit. */
import { bothUnits, measureTyped } from '../../lists/measures.ts';
import { clauseOf } from '../../model/fastening-declared.ts';
import { isMass, numberWord } from '../../wording/nouns.ts';
import { type Act, type ActContext, tailOf } from '../sentences/act.ts';
import { bracketed, phrase, them } from '../sentences/noun.ts';
import { listed, sentence, text } from '../sentences/rich.ts';
import { catches } from '../sentences/tails.ts';
import { type ActionDetail, plainText, type Rich } from './types.ts';

const GOES_BACK: ReadonlySet<string> = new Set([
  'refit',
  'fit',
  'trial fit',
  'bolt up',
  'move back',
  'connect',
]);

/** Not in it: stages, orders and wrench settings, which `detail.fastening` has with their own sentences. */
export function moreOf(context: ActContext, act: Act): Rich[] {
  const { words, model, measures } = context;
  const { action } = act;
  const lines: string[] = [];
  const nouns = act.objects.map(({ noun }) => noun);
  const which = them(nouns);
  if (action.verb === 'trial fit') lines.push(words.say('more.trial', { count: which === 'them' ? 2 : 1 }));
  if (GOES_BACK.has(action.verb)) {
    const ways = wayRoundOf(act);
    for (const way of ways) {
      const noun = nouns.find(({ id }) => id === way.id);
      lines.push(
        nouns.length > 1 && noun
          ? words.say('more.way.of', { name: noun.title, text: way.text })
          : words.say('more.way', { text: way.text }),
      );
    }
  }
  for (const one of act.fastening) {
    const turned = one.work === 'loosen' || one.work === 'tighten';
    if (one.leftHand && turned) {
      const own = nouns.find(({ id }) => id === one.id);
      lines.push(
        own
          ? words.say('more.left-hand', { count: which === 'them' ? 2 : 1 })
          : words.say('more.left-hand.of', { name: bracketed(one.name) }),
      );
    }
    if (one.pass)
      lines.push(
        act.fastening.length > 1
          ? words.say('more.pass.of', { name: bracketed(one.name), what: bothUnits(one.pass) })
          : words.say('more.pass', { what: bothUnits(one.pass) }),
      );
    if (one.toYield && one.work === 'tighten')
      lines.push(words.say('more.stretched', { them: them(nounsOf(act, one.id)) }));
  }
  const caught = act.tools.filter((tool) => catches(action, tool));
  if (caught.length > 0)
    lines.push(words.say('more.catch', { tools: plainText(listed(caught.map((tool) => phrase(tool)))) }));
  const soon = measureTyped(tailOf(action, 'within')?.quantity, model, measures);
  if (soon) lines.push(words.say('more.within', { what: bothUnits(soon) }));
  for (const tail of action.tails) {
    if (tail.tail !== 'not over' && tail.tail !== 'not under') continue;
    const measure = measureTyped(tail.quantity, model, measures);
    if (measure) lines.push(words.say(`more.${tail.tail}`, { what: bothUnits(measure) }));
  }
  if (action.verb === 'choose') {
    for (const tail of action.tails) {
      if (tail.tail !== 'by') continue;
      for (const { name } of tail.refs) {
        const table = model.tables.get(name.text);
        if (table) lines.push(words.say('more.table', { title: table.title?.value ?? name.text }));
      }
    }
  }
  if (act.people !== undefined && act.people > 1)
    lines.push(words.say('more.people', { count: act.people, number: numberWord(act.people) }));
  return lines.map((line) => sentence(text(line)));
}

function nounsOf(act: Act, id: string) {
  return [...act.objects, ...act.held.flat()].flatMap(({ noun }) => (noun.id === id ? [noun] : []));
}

/** Which way round the things go that go back here. */
export function wayRoundOf(act: Act): ActionDetail['wayRound'] {
  if (!GOES_BACK.has(act.action.verb)) return [];
  return act.objects.flatMap(({ thing }) => {
    const way = thing && clauseOf(thing, 'goes')?.text?.value;
    return thing && way ? [{ id: thing.name, text: way.replace(/\.$/, '') }] : [];
  });
}

/** The data of a step, beside its sentences. */
export function detailOf(context: ActContext, act: Act): ActionDetail {
  const { words, model, measures } = context;
  const { action } = act;
  const key = `do.${action.verb}`;
  const shown = words.has(key) ? words.pattern(key) : action.verb;
  const by = measureTyped(action.quantity, model, measures);
  const within = measureTyped(tailOf(action, 'within')?.quantity, model, measures);
  return {
    verb: action.verb,
    verbShown: shown.split(/ ?\{/)[0] ?? action.verb,
    ...(action.fresh ? { fresh: action.fresh } : {}),
    objects: act.objects.map(({ noun }) => ({
      id: noun.id,
      name: noun.title,
      ...(noun.count === undefined ? {} : { count: noun.positions.length || noun.count }),
      positions: [...noun.positions],
      fresh: noun.fresh,
    })),
    tools: act.tools
      .filter(({ type }) => type === 'tool' || !isMass(type))
      .filter(({ type }) => type !== 'fluid' && type !== 'consumable')
      .map(({ id, title }) => {
        const thing = model.byName.get(id);
        const range = thing && measureTyped(clauseOf(thing, 'range')?.quantity, model, measures);
        return { id, name: title, ...(range ? { range } : {}) };
      }),
    with: action.tails.flatMap((tail) => {
      if (tail.tail !== 'with') return [];
      const amount = measureTyped(tail.quantity, model, measures);
      return tail.refs.flatMap(({ name }) => {
        const thing = model.byName.get(name.text);
        if (thing?.type !== 'fluid' && thing?.type !== 'consumable') return [];
        return [{ id: thing.name, name: thing.title, ...(amount ? { amount } : {}) }];
      });
    }),
    fastening: act.fastening,
    wayRound: wayRoundOf(act),
    ...(by ? { by } : {}),
    ...(within ? { within } : {}),
    limits: action.tails.flatMap((tail) => {
      if (tail.tail !== 'not over' && tail.tail !== 'not under') return [];
      const measure = measureTyped(tail.quantity, model, measures);
      return measure ? [{ kind: tail.tail, measure }] : [];
    }),
    byHand: tailOf(action, 'by hand') !== undefined,
    discards: action.verb === 'discard' || tailOf(action, 'and discard') !== undefined,
  };
}
