/** The imperative sentence of a step, verb by verb. Patterns are in the catalogue; here is what goes into them. */
import type { Tail } from '../../../grammar/syntax/tree.ts';
import { fillOf, fluidOf } from '../../lists/fluids.ts';
import { bothUnits, measureOf, measureTyped } from '../../lists/measures.ts';
import { clauseOf } from '../../model/fastening-declared.ts';
import type { Model, Thing } from '../../model/model.ts';
import { headAndRest, isMass, numberWord, singular } from '../../wording/nouns.ts';
import type { Fastening, Rich } from '../document/types.ts';
import type { MessageKey } from '../words/words.ts';
import { type Act, type ActContext, tailOf } from './act.ts';
import { findingOut } from './heading-finding.ts';
import { isAre, isTurned, material, type Noun, phrase, them } from './noun.ts';
import { itemsNoun, nounOf } from './nouns-of.ts';
import { listed, patterned, sentence, spaced, text } from './rich.ts';
import { measured, phrases, tailsOf } from './tails.ts';

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
  connect: (context, act) => spaced(plain(context, act), thenTighten(context, act)),
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

/** The catalogue's pattern for the verb, the objects, the tails. */
function plain(context: ActContext, act: Act, key?: MessageKey): Rich {
  const { words } = context;
  const { action } = act;
  const name = key ?? (`do.${action.verb}` as MessageKey);
  const pattern = words.has(name) ? words.pattern(name) : `${action.verb} {objects}`;
  const objects = objectsOf(context, act);
  const is = isAre(act.objects.map(({ noun }) => noun));
  return spaced(patterned(pattern, { objects, is }), tailsOf(context, act), thenDiscard(context, act));
}

function thenDiscard({ words }: ActContext, { action, objects }: Act): Rich {
  if (!tailOf(action, 'and discard')) return [];
  return text(words.say('then.discard', { them: them(objects.map(({ noun }) => noun)) }));
}

const IN_SEQUENCE: ReadonlySet<string> = new Set(
  [
    'remove',
    'unbolt',
    'refit',
    'fit',
    'trial fit',
    'bolt up',
    'disconnect',
    'connect',
    'move aside',
    'move back',
  ].concat(['open', 'close', 'switch on', 'switch off', 'tighten', 'loosen', 'lower', 'raise']),
);

function objectsOf(context: ActContext, act: Act): Rich {
  const introducing = INTRODUCING.has(act.action.verb);
  // `that hold the cover by hand` would be read wrongly: what is held is told only where nothing follows.
  const last = act.objects.length === 1 && act.action.tails.every(({ tail }) => SAID_APART.has(tail));
  const pieces = act.objects.map(({ noun }) => {
    const introduced = introducing && context.introduce(noun.id);
    const { holds: _, ...bare } = noun;
    return phrase(last && ENDS_WITH_OBJECTS.has(act.action.verb) ? noun : bare, { introduced });
  });
  return inOrder(context, act, pieces);
}

/** `a, b` one after the other; `a and b` together. */
function inOrder({ words }: ActContext, { action }: Act, pieces: readonly Rich[]): Rich {
  const sequence = pieces.length > 1 && !action.together && IN_SEQUENCE.has(action.verb);
  if (!sequence) return listed(pieces);
  if (pieces.length === 2)
    return patterned(words.pattern('in order.two'), { first: pieces[0]!, second: pieces[1]! });
  return patterned(words.pattern('in order'), { objects: listed(pieces) });
}

/** Verbs at which a fastener is told with its thread and what it holds. */
const INTRODUCING: ReadonlySet<string> = new Set(['remove', 'loosen', 'fit', 'refit', 'tighten']);

const ENDS_WITH_OBJECTS: ReadonlySet<string> = new Set(['remove', 'loosen']);

/** Tails that are sentences of their own. */
const SAID_APART: ReadonlySet<string> = new Set([
  'in order',
  'expect',
  'picture',
  'within',
  'not over',
  'not under',
  'as',
]);

// ------------------------------------------------------------ with what holds it

function held(context: ActContext, act: Act, key: 'do.unbolt' | 'do.bolt up'): Rich {
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

// ------------------------------------------------------------ fitting and tightening

function fitting(context: ActContext, act: Act): Rich {
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

const WITHOUT_TOOLS: ReadonlySet<Tail['tail']> = new Set(['with']);

function toolsBehind(context: ActContext, { action }: Act): Rich {
  const refs = action.tails.flatMap((tail) => (tail.tail === 'with' ? tail.refs : []));
  return refs.length === 0
    ? []
    : patterned(`, ${context.words.pattern('tail.with')}`, { tools: phrases(context, refs) });
}

function thenTighten(context: ActContext, act: Act): Rich {
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

function tighten(context: ActContext, act: Act): Rich {
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

// ------------------------------------------------------------ systems

function supply(context: ActContext, act: Act, what: 'isolate' | 'restore'): Rich {
  const { words, model } = context;
  const [object] = act.objects;
  const isolators = act.objects.flatMap(({ items }) => items.flatMap((item) => model.isolators[item] ?? []));
  if (!object || isolators.length === 0) return plain(context, act, `do.${what}`);
  const things = [...new Set(isolators.map((item) => model.thingOf[item]!))];
  const how = things.map((thing) =>
    patterned(words.pattern(switched(thing, what)), {
      what: phrase(
        itemsNoun(
          model,
          thing,
          isolators.filter((item) => model.thingOf[item] === thing),
        ),
      ),
    }),
  );
  return spaced(
    patterned(words.pattern(`do.${what}.at`), { objects: objectsOf(context, act), how: listed(how) }),
    tailsOf(context, act),
  );
}

function switched(thing: Thing, what: 'isolate' | 'restore'): MessageKey {
  const off = what === 'isolate';
  if (thing.type === 'connection') return off ? 'isolate.disconnect' : 'isolate.connect';
  if (thing.normally === 'open' || /valve|cock|tap/i.test(thing.title))
    return off ? 'isolate.close' : 'isolate.open';
  return off ? 'isolate.switch off' : 'isolate.switch on';
}

/** `Put in the crankcase oil: 1.2 L (1.27 US qt) of compressor oil.` `Fill the cooling circuit with 8 L of coolant.` */
function fill(context: ActContext, act: Act): Rich {
  const { words, model, measures } = context;
  const [object] = act.objects;
  const withTail = act.action.tails.find(
    (tail) => tail.tail === 'with' && (tail.quantity || tail.refs.length > 0),
  );
  const system = act.objects.length === 1 && object?.thing?.type === 'system' ? object.thing : undefined;
  if (!system || !object) return plain(context, act);
  const usual = fillOf(context, system);
  const typed = withTail?.tail === 'with' ? measureTyped(withTail.quantity, model, measures) : undefined;
  const own = measureTyped(act.action.quantity, model, measures);
  const amount = typed ?? own ?? (usual && measureOf(usual, measures));
  const [ref] = withTail?.tail === 'with' ? withTail.refs : [];
  const named = ref && model.byName.get(ref.name.text);
  const fluid = named?.type === 'fluid' ? nounOf(model, ref!) : fluidNoun(model, fluidOf(context, system));
  if (!amount || !fluid) return plain(context, act);
  const line = patterned(words.pattern(isMass(system.title) ? 'do.fill.in' : 'do.fill.with'), {
    amount: measured(amount),
    fluid: material(fluid),
    system: phrase(object.noun),
  });
  return spaced(line, tailsOf(context, act, named?.type === 'fluid' ? WITHOUT_TOOLS : undefined));
}

function fluidNoun(model: Model, thing: Thing | undefined): Noun | undefined {
  return thing && itemsNoun(model, thing, [thing.first]);
}

/** `charge of the run capacitor`: it is the capacitor that is discharged. */
const CHARGE_OF = /^(?:the )?charge (?:of|in|on) (?:the )?/i;

function uncharged(act: Act): Act {
  const objects = act.objects.map((one) => ({
    ...one,
    noun: { ...one.noun, title: one.noun.title.replace(CHARGE_OF, '') },
  }));
  return { ...act, objects };
}

/** With a pressure declared; stored energy that no gauge shows is another thing. */
function underPressure({ thing }: Act['objects'][number]): boolean {
  return thing !== undefined && clauseOf(thing, 'pressure') !== undefined;
}

/** `Use the two-pole tester to prove that the mains supply is dead.` */
function prove(context: ActContext, given: Act): Rich {
  const { words } = context;
  const charge = given.objects.every(({ noun }) => CHARGE_OF.test(noun.title));
  const act = charge ? uncharged(given) : given;
  const live = act.objects.every(({ thing }) => thing?.hasLive);
  const state = live ? 'live' : act.objects.every(underPressure) ? 'pressure' : charge ? 'charge' : 'safe';
  const slots = {
    objects: objectsOf(context, act),
    is: isAre(act.objects.map(({ noun }) => noun)),
    state: words.say(`prove.${state}`),
  };
  if (act.tools.length === 0)
    return spaced(patterned(words.pattern('do.prove'), slots), tailsOf(context, act));
  const tools = listed(act.tools.map((tool) => phrase(tool)));
  return spaced(
    patterned(words.pattern('do.prove.with'), { ...slots, tools }),
    tailsOf(context, act, WITHOUT_TOOLS),
  );
}
