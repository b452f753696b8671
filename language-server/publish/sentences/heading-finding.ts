/** `measure` and `record`: what is found out, of what, between what. */
import type { Expression } from '../../../grammar/syntax/tree.ts';
import { spoken } from '../../lists/combos.ts';
import { bothUnits, measureTyped } from '../../lists/measures.ts';
import { isMass, isPlural } from '../../wording/nouns.ts';
import type { Rich } from '../document/types.ts';
import { type Act, type ActContext, tailOf } from './act.ts';
import { phrase } from './noun.ts';
import { nounOf } from './nouns-of.ts';
import { listed, patterned, spaced, text } from './rich.ts';
import { tailsOf } from './tails.ts';

export function findingOut(context: ActContext, act: Act): Rich {
  const { words } = context;
  const { action } = act;
  const verb = action.verb === 'measure' ? 'measure' : 'record';
  const tails = tailsOf(context, act, new Set(['of', 'between']));
  if (!action.topic) {
    const objects = placeless(act);
    const pattern = words.pattern(verb === 'measure' ? 'do.measure.bare' : 'do.record');
    return spaced(patterned(pattern, { objects, topic: objects, place: [] }), tails);
  }
  const topic = `the ${spoken(action.topic.text)}`;
  if (verb === 'record' && action.expression) {
    const sum = expressionText(context, action.expression);
    return spaced(text(words.say('do.record.sum', { topic, sum })), tails);
  }
  if (act.objects.length === 0) {
    return spaced(
      text(words.say(verb === 'measure' ? 'do.measure.bare' : 'do.record.bare', { topic, objects: topic })),
      tails,
    );
  }
  const place = placeOf(context, act);
  return spaced(patterned(words.pattern(`do.${verb}`), { topic, place }), tails);
}

/** `the end float between the worm shaft and the gearbox`, without a verb: for tables and fields. */
export function whatIsFound(context: ActContext, act: Act): Rich {
  const { action } = act;
  if (!action.topic) return placeless(act);
  const topic = text(spoken(action.topic.text));
  return act.objects.length === 0 ? topic : spaced(topic, placeOf(context, act));
}

function placeOf({ words }: ActContext, act: Act): Rich {
  const between = tailOf(act.action, 'between') !== undefined && act.objects.length > 1;
  const what = placeless(act);
  return patterned(words.pattern(between ? 'tail.between' : 'tail.of'), { what });
}

function placeless(act: Act): Rich {
  return listed(act.objects.map(({ noun }) => phrase(noun)));
}

/** `gap + 0.2 mm`, `the average of first and second` */
function expressionText(context: ActContext, expression: Expression): string {
  switch (expression.kind) {
    case 'quantity': {
      const { named } = expression.quantity;
      if (named) return `the ${spoken(named.name.text)}`;
      const measure = measureTyped(expression.quantity, context.model, context.measures);
      return measure ? bothUnits(measure) : '';
    }
    case 'name': {
      const { text: name } = expression.ref.name;
      const title = context.model.values.get(name)?.title;
      const thing = context.model.byName.get(name);
      if (thing) return plainOf(phrase(nounOf(context.model, expression.ref)));
      const words = title && title !== name ? title : spoken(name);
      return isPlural(words) || isMass(words) ? words : `the ${words}`;
    }
    case 'binary': {
      const left = expressionText(context, expression.left);
      const right = expression.right ? expressionText(context, expression.right) : '';
      return `${left} ${SIGNS[expression.operator]} ${right}`;
    }
    case 'call': {
      const values = expression.arguments.map((one) => text(expressionText(context, one)));
      return `the ${expression.name.text} of ${plainOf(listed(values))}`;
    }
  }
}

const SIGNS = { '+': '+', '-': '−', '*': '×', '/': '÷' } as const;

function plainOf(rich: Rich): string {
  return rich.map((run) => run.text).join('');
}
