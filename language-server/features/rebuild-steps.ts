/** A step of a plan: as a line of the language, as the tree has it, and whether a rule speaks of it. */
import type { Action, Quantity, Ref, RulePattern } from '../../grammar/syntax/tree.ts';
import type { Model, Thing } from '../model/model.ts';

export interface Step {
  verb: string;
  thing: Thing;
  fresh?: boolean;
  discard?: boolean;
  tool?: string;
  /** `2 turns`, `30 min` */
  amount?: string;
}

export function lineOf({ verb, thing, fresh, discard, tool, amount }: Step): string {
  if (verb === 'wait') return `wait ${amount ?? ''}`;
  const closing = verb === 'prove' ? ' safe' : '';
  return `${verb}${fresh ? ' new' : ''} ${thing.name}${closing}${amount ? ` ${amount}` : ''}${tool ? ` with ${tool}` : ''}${discard ? ' and discard' : ''}`;
}

/** The action at a place that no text has, so that no attempt is taken for a repetition of another. */
export function actionOf(step: Step, start: number): Action {
  const at = { start, end: start };
  const ref = (name: string): Ref => ({ ...at, name: { ...at, text: name }, positions: [] });
  return {
    ...at,
    kind: 'action',
    verb: step.verb,
    word: { ...at, text: step.verb },
    ...(step.fresh ? { fresh: 'new' as const } : {}),
    objects: step.verb === 'wait' ? [] : [ref(step.thing.name)],
    ...(step.amount ? { quantity: quantityOf(step.amount, at) } : {}),
    together: false,
    tails: [
      ...(step.discard
        ? [{ ...at, tail: 'and discard' as const, word: { ...at, text: 'and discard' } }]
        : []),
      ...(step.tool
        ? [{ ...at, tail: 'with' as const, word: { ...at, text: 'with' }, refs: [ref(step.tool)] }]
        : []),
    ],
    outcomes: [],
  };
}

/** `1 h 30 min` as the tree has it. */
function quantityOf(text: string, at: { start: number; end: number }): Quantity {
  const amounts = [...text.matchAll(/(\S+) (\S+)/g)].map(([, number, unit]) => ({
    ...at,
    number: number!,
    unit: { ...at, text: unit! },
  }));
  return { ...at, form: amounts.length > 1 ? 'sum' : 'plain', amounts };
}

/** The step is one that the pattern of a rule means. */
export function meets(pattern: Extract<RulePattern, { kind: 'event' }>, step: Step, model: Model): boolean {
  const [selector] = pattern.selectors;
  if (selector?.kind !== 'named') return false;
  const verbs = SAME[pattern.verb.text] ?? [pattern.verb.text];
  if (!verbs.includes(step.verb)) return false;
  if (selector.ref.name.text === step.thing.name) return true;
  // `unbolt` and `bolt up` work on the fasteners as well.
  const bolts = model.heldBy[step.thing.first]!.map((item) => model.thingOf[item]!.name);
  return (step.verb === 'unbolt' || step.verb === 'bolt up') && bolts.includes(selector.ref.name.text);
}

/** What is loosened when it comes out, and fitted when it goes back. */
const SAME: Readonly<Record<string, readonly string[]>> = {
  loosen: ['loosen', 'remove', 'unbolt'],
  remove: ['remove', 'unbolt'],
  unbolt: ['unbolt', 'remove'],
  fit: ['fit', 'refit', 'bolt up'],
  refit: ['fit', 'refit', 'bolt up'],
  tighten: ['tighten', 'fit', 'refit', 'bolt up'],
};
