/** Taking off and putting back with what holds it, fitting, tightening. */
import { bothUnits, measureTyped } from '../../lists/measures.ts';
import { headAndRest, numberWord, singular } from '../../wording/nouns.ts';
import type { Fastening, Rich } from '../document/types.ts';
import type { MessageKey } from '../words/words.ts';
import { type Act, type ActContext, tailOf } from './act.ts';
import { objectsOf, plain, thenDiscard, WITHOUT_TOOLS } from './heading-plain.ts';
import { isTurned, type Noun, phrase, them } from './noun.ts';
import { itemsNoun } from './nouns-of.ts';
import { listed, patterned, sentence, spaced, text } from './rich.ts';
import { measured, phrases, tailsOf } from './tails.ts';

export function held(context: ActContext, act: Act, key: 'do.unbolt' | 'do.bolt up'): Rich {
  const { words } = context;
  const parts = act.objects.map(({ noun }, index) => {
    const groups = act.held[index] ?? [];
    const objects = phrase(noun);
    if (groups.length === 0) return patterned(words.pattern(`${key}.bare`), { objects });
    const fasteners = listed(
      groups.map((group) => phrase(group.noun, { introduced: context.introduce(group.thing.name) })),
    );
    const turned = act.fastening.filter(({ id }) => groups.some((group) => group.thing.name === id));
    const then =
      key === 'do.bolt up'
        ? thenTightenOf(
            context,
            turned,
            groups.map((group) => group.noun),
          )
        : [];
    const discarding = tailOf(act.action, 'and discard') !== undefined && index === act.objects.length - 1;
    const pattern =
      then.length > 0 ? 'do.bolt up.then' : key === 'do.bolt up' ? key : unbolting(groups.length, discarding);
    return spaced(patterned(words.pattern(pattern), { objects, fasteners }), then);
  });
  const tails = spaced(tailsOf(context, act), thenDiscard(context, act));
  if (parts.length < 2) return spaced(...parts, tails);
  return spaced(
    ...parts.map((part, index) => sentence(index === parts.length - 1 ? spaced(part, tails) : part)),
  );
}

function unbolting(groups: number, discarding: boolean): MessageKey {
  if (discarding) return 'do.unbolt.then';
  return groups > 1 ? 'do.unbolt.several' : 'do.unbolt';
}

export function fitting(context: ActContext, act: Act): Rich {
  const { words, model } = context;
  const { action } = act;
  const byHand = tailOf(action, 'by hand') !== undefined;
  if (act.objects.some(({ thing }) => thing?.type === 'kit')) return kits(context, act);
  if (act.objects.length > 0 && act.objects.every(({ thing }) => thing?.type === 'tool')) {
    const locked = act.objects.flatMap(({ items }) => items.flatMap((item) => model.locks[item] ?? []));
    const objects = objectsOf(context, act);
    if (locked.length === 0)
      return spaced(patterned(words.pattern('do.fit.tool'), { objects }), tailsOf(context, act));
    const things = [...new Set(locked.map((item) => model.thingOf[item]!))];
    const names = listed(
      things.map((thing) =>
        phrase(
          itemsNoun(
            model,
            thing,
            locked.filter((item) => model.thingOf[item] === thing),
          ),
        ),
      ),
    );
    return spaced(patterned(words.pattern('do.fit.lock'), { objects, locked: names }), tailsOf(context, act));
  }
  const fasteners = act.objects.length > 0 && act.objects.every(({ thing }) => thing?.type === 'fastener');
  if (!fasteners) return plain(context, act);
  if (byHand) return plain(context, act, screwed(act, action.verb));
  return spaced(plain(context, act), thenTighten(context, act));
}

/** Nuts go on, bolts go in; pins and clips do neither. */
function screwed(act: Act, verb: string): MessageKey {
  const heads = act.objects.map(({ noun }) => headAndRest(singular(noun.title)).head.toLowerCase());
  if (heads.every((head) => /\bnut$/.test(head))) return 'do.fit.on';
  if (heads.every((head) => /(?:bolt|screw|stud|plug|breather|union)$/.test(head))) return 'do.fit.in';
  return `do.${verb}` as MessageKey;
}

function kits(context: ActContext, act: Act): Rich {
  const { words, model } = context;
  return spaced(
    ...act.objects.map(({ noun, items }) => {
      const objects = phrase(noun);
      const contained = [
        ...new Set(items.flatMap((item) => model.contains[item] ?? []).map((item) => model.thingOf[item]!)),
      ];
      if (contained.length === 0) return patterned(words.pattern('do.fit'), { objects });
      const contents = listed(
        contained.map((thing) =>
          phrase(
            itemsNoun(
              model,
              thing,
              thing.positions.map((_, index) => thing.first + index),
              true,
            ),
          ),
        ),
      );
      return spaced(
        patterned(words.pattern('do.fit.kit'), { objects, contents }),
        tailsOf(context, act, WITHOUT_TOOLS),
      );
    }),
    toolsBehind(context, act),
  );
}

function toolsBehind(context: ActContext, { action }: Act): Rich {
  const refs = action.tails.flatMap((tail) => (tail.tail === 'with' ? tail.refs : []));
  return refs.length === 0
    ? []
    : patterned(`, ${context.words.pattern('tail.with')}`, { tools: phrases(context, refs) });
}

export function thenTighten(context: ActContext, act: Act): Rich {
  const nouns = act.objects.filter(({ noun }) => act.fastening.some(({ id }) => id === noun.id));
  return thenTightenOf(
    context,
    act.fastening,
    nouns.map(({ noun }) => noun),
  );
}

/** `and tighten them to 9 N·m (80 lbf·in)`; nothing for pins and clips, which are not turned. */
function thenTightenOf({ words }: ActContext, turned: readonly Fastening[], nouns: readonly Noun[]): Rich {
  const real = turned.filter((one, index) => one.torque || one.stages.length > 0 || isTurned(nouns[index]));
  if (real.length === 0) return [];
  const which = them(nouns);
  const values = new Set(
    real.map((one) => (one.stages.length > 1 || !one.torque ? '' : bothUnits(one.torque))),
  );
  const [one] = real;
  if (values.size === 1 && one?.torque && one.stages.length < 2)
    return patterned(words.pattern('then.tighten.to'), { them: which, torque: measured(one.torque) });
  if (real.length === 1 && one && one.stages.length > 1)
    return text(words.say('then.tighten.stages', { them: which, stages: numberWord(one.stages.length) }));
  const nothing = real.every(({ torque, stages }) => !torque && stages.length === 0);
  return text(words.say(nothing ? 'then.tighten' : 'then.tighten.stage', { them: which }));
}

export function tighten(context: ActContext, act: Act): Rich {
  const { words } = context;
  const { action } = act;
  const typed =
    tailOf(action, 'to') ?? tailOf(action, 'stage') ?? tailOf(action, 'pass') ?? tailOf(action, 'until');
  const objects = patterned(words.pattern('do.tighten'), { objects: objectsOf(context, act) });
  const tails = tailsOf(context, act);
  const amount = measured(measureTyped(action.quantity, context.model, context.measures));
  if (typed) return spaced(objects, tails);
  if (amount.length > 0) return spaced(objects, patterned(words.pattern('tail.to'), { what: amount }), tails);
  const torques = new Set(act.fastening.map(({ torque }) => (torque ? bothUnits(torque) : '')));
  const single = act.fastening.every(({ stages }) => stages.length < 2);
  const [one] = act.fastening;
  if (one?.torque && single && torques.size === 1)
    return spaced(objects, patterned(words.pattern('tail.to'), { what: measured(one.torque) }), tails);
  const stages = new Set(act.fastening.map((each) => each.stages.length));
  const [count] = stages;
  if (stages.size === 1 && count !== undefined && count > 1)
    return spaced(objects, text(words.say('tail.stages', { stages: numberWord(count) })), tails);
  return spaced(objects, tails);
}
