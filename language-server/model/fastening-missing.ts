/**
 * Steps that ask for a torque which nobody gives: fact `torque-missing`. Work by hand and by feel asks for none.
 */
import type { Action, Statement } from '../../grammar/syntax/tree.ts';
import { asksForTorque, isVaguelyTight, tellsWhere, torquesIn } from '../wording/torque-words.ts';
import type { Fact } from './facts.ts';
import { declared } from './fastening-declared.ts';
import type { Tightened } from './fastening-steps.ts';
import { isPreset, isTorqueTool } from './fastening-tools.ts';
import type { Model, Thing } from './model.ts';

/**
 * The step takes a torque wrench, or speaks of a torque, and neither it nor the machine file gives one or says where it
 * stands. A word such as "securely" asks for one only where thread and class are declared.
 */
export function asksInVain(model: Model, action: Action, own: readonly Thing[], one: Tightened): boolean {
  if (isKnown(action, one)) return false;
  const why = reason(model, action, own, one);
  if (why === undefined) return false;
  const tool = own.find((each) => isTorqueTool(model, each));
  const sentence = action.text?.value ?? '';
  return !(tool && isPreset(model, tool)) && (sentence === '' || !tellsWhere(sentence));
}

export function torqueMissing(model: Model, action: Action, own: readonly Thing[], one: Tightened): Fact {
  const tool = own.find((each) => isTorqueTool(model, each));
  return {
    check: 'torque-missing',
    at: one.at,
    subject: { thing: one.thing },
    ...(tool ? { others: [{ thing: tool }] } : {}),
    words: { why: reason(model, action, own, one) ?? '' },
  };
}

/** A note, a title or a sentence of the procedure gives a torque or says where it stands. */
export function givesTorque(statement: Statement): boolean {
  const text =
    statement.kind === 'action' || statement.kind === 'notice'
      ? statement.text
      : statement.kind === 'task' || statement.kind === 'step'
        ? statement.title
        : undefined;
  if (!text) return false;
  const { value } = text;
  return (asksForTorque(value) && tellsWhere(value)) || torquesIn(value).length > 0;
}

function reason(
  model: Model,
  action: Action,
  own: readonly Thing[],
  one: Tightened,
): 'tool' | 'sentence' | 'vague' | undefined {
  if (own.some((each) => isTorqueTool(model, each))) return 'tool';
  const sentence = action.text?.value ?? '';
  if (asksForTorque(sentence)) return 'sentence';
  return isVaguelyTight(sentence) && declared(model, one.thing).bolt ? 'vague' : undefined;
}

/** The machine file or a tail of the step says how tight. */
function isKnown(action: Action, { thing }: Tightened): boolean {
  if (thing.torque || thing.stages.length > 0 || action.quantity) return true;
  return action.tails.some((tail) => {
    switch (tail.tail) {
      case 'until':
      case 'by':
      case 'not over':
      case 'not under':
      case 'expect':
        return true;
      case 'to':
        return tail.quantity !== undefined || tail.refs.length > 0 || tail.text !== undefined;
      case 'at':
        return tail.quantity !== undefined || tail.refs.length > 0;
      default:
        return false;
    }
  });
}
