/** The imperative sentence of a step, verb by verb. Patterns are in the catalogue; here is what goes into them. */
import { measureTyped } from '../../lists/measures.ts';
import { clauseOf } from '../../model/fastening-declared.ts';
import type { Rich } from '../document/types.ts';
import type { MessageKey } from '../words/words.ts';
import { type Act, type ActContext, tailOf } from './act.ts';
import { findingOut } from './heading-finding.ts';
import { fitting, held, thenTighten, tighten } from './heading-fitting.ts';
import { objectsOf, plain } from './heading-plain.ts';
import { CHARGE_OF, fill, prove, supply, uncharged, underPressure } from './heading-systems.ts';
import { phrase, them } from './noun.ts';
import { nounOf } from './nouns-of.ts';
import { listed, patterned, sentence, spaced, text } from './rich.ts';
import { measured, tailsOf } from './tails.ts';

export function headingOf(context: ActContext, act: Act): Rich {
  const { verb } = act.action;
  const own = VERBS[verb] ?? plain;
  return sentence(own(context, act));
}

type Speaks = (context: ActContext, act: Act) => Rich;

const VERBS: Readonly<Record<string, Speaks>> = {
  unbolt: (context, act) => held(context, act, 'do.unbolt'),
  'bolt up': (context, act) => held(context, act, 'do.bolt up'),
  fit: (context, act) => fitting(context, act),
  refit: (context, act) => fitting(context, act),
  connect: (context, act) => {
    const then = thenTighten(context, act);
    // The wrench is for the tightening, so it is told behind it.
    const { tails } = act.action;
    if (then.length === 0 || !tails.every(({ tail }) => tail === 'with'))
      return spaced(plain(context, act), then);
    const bare = { ...act, action: { ...act.action, tails: [] } };
    return spaced(plain(context, bare), then, tailsOf(context, act));
  },
  tighten: (context, act) => tighten(context, act),
  'back off': (context, act) => amountBehind(context, act),
  turn: (context, act) => amountBehind(context, act),
  cap: (context, act) => {
    const nouns = act.objects.map(({ noun }) => noun);
    return plain(context, act, them(nouns) === 'them' ? 'do.cap.several' : 'do.cap');
  },
  unlock: (context, act) => {
    const lockable = act.objects.every(
      ({ thing }) => thing?.type === 'isolator' || thing?.type === 'control',
    );
    return plain(context, act, lockable ? 'do.unlock.isolator' : 'do.unlock');
  },
  relieve: (context, act) => {
    if (act.objects.every(({ noun }) => CHARGE_OF.test(noun.title)))
      return plain(context, uncharged(act), 'do.discharge');
    return plain(context, act, act.objects.every(underPressure) ? 'do.relieve.pressure' : 'do.relieve');
  },
  isolate: (context, act) => supply(context, act, 'isolate'),
  restore: (context, act) => supply(context, act, 'restore'),
  prove: (context, act) => prove(context, act),
  fill: (context, act) => fill(context, act),
  mark: (context, act) => {
    const nouns = act.objects.map(({ noun }) => noun);
    const matched = act.objects.some(({ thing }) => thing?.matched);
    const key = !matched ? 'do.mark' : them(nouns) === 'them' ? 'do.mark.matched' : 'do.mark.one';
    return plain(context, act, key);
  },
  secure: (context, act) => {
    const [first] = act.objects;
    const by = first?.thing && clauseOf(first.thing, 'secured by')?.refs;
    if (!by || tailOf(act.action, 'with')) return plain(context, act);
    const many = them(act.objects.map(({ noun }) => noun)) === 'them';
    const how = by.map((ref): Rich => {
      const key = `secure.${ref.name.text}`;
      if (context.words.has(key)) return text(context.words.say(key, { count: many ? 2 : 1 }));
      return spaced(text('with'), phrase(nounOf(context.model, ref)));
    });
    return spaced(plain(context, act), listed(how));
  },
  wait: (context, act) => {
    const measure = measureTyped(act.action.quantity, context.model, context.measures);
    const time = measure ? patterned(context.words.pattern('tail.for'), { what: measured(measure) }) : [];
    return spaced(text(context.words.say('do.wait')), time, tailsOf(context, act));
  },
  sign: (context) => text(context.words.say('do.sign')),
  run: (context, act) =>
    act.objects.length > 0
      ? plain(context, act)
      : spaced(text(context.words.say('do.run.bare')), tailsOf(context, act)),
  measure: findingOut,
  record: findingOut,
  choose: (context, act) => plain(context, act),
};

/** `Turn the flywheel 2 turns by hand`, `Turn the hub nut back 1/6 turn`. */
function amountBehind(context: ActContext, act: Act): Rich {
  const { words } = context;
  const { action } = act;
  const measure = measureTyped(action.quantity, context.model, { ...context.measures, secondUnits: false });
  const key = `do.${action.verb}` as MessageKey;
  return spaced(
    patterned(words.pattern(key), { objects: objectsOf(context, act) }),
    measure
      ? patterned(words.pattern(action.verb === 'turn' ? 'tail.turns' : 'tail.turned back'), {
          what: measured(measure),
        })
      : [],
    tailsOf(context, act),
  );
}
