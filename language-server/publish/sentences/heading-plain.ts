/** The usual sentence of a step: the verb's pattern, its objects, its tails. Other headings are built on it. */
import type { Tail } from '../../../grammar/syntax/tree.ts';
import type { Rich } from '../document/types.ts';
import type { MessageKey } from '../words/words.ts';
import { type Act, type ActContext, tailOf } from './act.ts';
import { isAre, phrase, them } from './noun.ts';
import { listed, patterned, spaced, text } from './rich.ts';
import { tailsOf } from './tails.ts';

/** The catalogue's pattern for the verb, the objects, the tails. */
export function plain(context: ActContext, act: Act, key?: MessageKey): Rich {
  const { words } = context;
  const { action } = act;
  const name = key ?? (`do.${action.verb}` as MessageKey);
  const pattern = words.has(name) ? words.pattern(name) : `${action.verb} {objects}`;
  const objects = objectsOf(context, act);
  const is = isAre(act.objects.map(({ noun }) => noun));
  return spaced(patterned(pattern, { objects, is }), tailsOf(context, act), thenDiscard(context, act));
}

export function thenDiscard({ words }: ActContext, { action, objects }: Act): Rich {
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

export function objectsOf(context: ActContext, act: Act): Rich {
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

export const WITHOUT_TOOLS: ReadonlySet<Tail['tail']> = new Set(['with']);
