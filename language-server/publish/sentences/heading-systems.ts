/** Isolating, proving and filling: what is done to systems. */
import { fillOf, fluidOf } from '../../lists/fluids.ts';
import { measureOf, measureTyped } from '../../lists/measures.ts';
import { clauseOf } from '../../model/fastening-declared.ts';
import type { Model, Thing } from '../../model/model.ts';
import { isMass } from '../../wording/nouns.ts';
import type { Rich } from '../document/types.ts';
import type { MessageKey } from '../words/words.ts';
import type { Act, ActContext } from './act.ts';
import { objectsOf, plain, WITHOUT_TOOLS } from './heading-plain.ts';
import { isAre, material, type Noun, phrase } from './noun.ts';
import { itemsNoun, nounOf } from './nouns-of.ts';
import { listed, patterned, spaced } from './rich.ts';
import { measured, tailsOf } from './tails.ts';

export function supply(context: ActContext, act: Act, what: 'isolate' | 'restore'): Rich {
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
export function fill(context: ActContext, act: Act): Rich {
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
export const CHARGE_OF = /^(?:the )?charge (?:of|in|on) (?:the )?/i;

export function uncharged(act: Act): Act {
  const objects = act.objects.map((one) => ({
    ...one,
    noun: { ...one.noun, title: one.noun.title.replace(CHARGE_OF, '') },
  }));
  return { ...act, objects };
}

/** With a pressure declared; stored energy that no gauge shows is another thing. */
export function underPressure({ thing }: Act['objects'][number]): boolean {
  return thing !== undefined && clauseOf(thing, 'pressure') !== undefined;
}

/** `Use the two-pole tester to prove that the mains supply is dead.` */
export function prove(context: ActContext, given: Act): Rich {
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
