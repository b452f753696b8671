/**
 * The rules of a machine as small watchers-to-be: for every sentence of a rule and everything that it is about on
 * this machine, what sets it off and what it asks. Names that mean nothing are faults of their own (./faults.ts).
 */
import type { Quantity } from '../../grammar/quantity/index.ts';
import type { Rule, RuleBody, RulePattern, Selector } from '../../grammar/syntax/tree.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import { readTyped } from '../model/fastening-amounts.ts';
import type { Model } from '../model/model.ts';
import { stateFaults } from '../model/state-words.ts';
import { targetOf } from './doings.ts';
import { type Chosen, chosen, type Met, ownOf } from './select.ts';

export interface EventDemand {
  readonly kind: 'event';
  readonly verb: string;
  /** One of these, or each of them; empty for a verb that is named without a thing. */
  readonly items: readonly number[];
  /** What counts: times, or an amount in the unit of this quantity. */
  readonly quantity: Quantity | undefined;
  readonly target: number;
}

export interface StateDemand {
  readonly kind: 'state';
  readonly state: string;
  readonly negated: boolean;
  readonly items: readonly number[];
}

export type Demand = EventDemand | StateDemand;

/** One sentence of a rule, about one thing where something sets it off. */
export interface Instance {
  readonly rule: Rule;
  readonly body: RuleBody;
  readonly file: string;
  readonly scope: RuleBody['scope'];
  readonly require: boolean;
  /** Absent for `always`; holds one item, or none for a verb without a thing. */
  readonly trigger: Demand | undefined;
  readonly demand: Demand;
}

export interface Compiled {
  readonly instances: readonly Instance[];
  /** Sentences that nothing on this machine can set off or break. */
  readonly idle: ReadonlySet<RuleBody>;
  /** Sentences about more things than can be watched one by one. */
  readonly crowded: ReadonlySet<RuleBody>;
}

/** Things of one sentence that are watched one by one. */
const MOST_INSTANCES = 4_000;

const known = new WeakMap<Model, Compiled>();

export function compiled(model: Model): Compiled {
  let result = known.get(model);
  if (!result) {
    result = compile(model, model.rules);
    known.set(model, result);
  }
  return result;
}

/** Other rules than those that the machine knows. */
export function compile(model: Model, rules: Model['rules']): Compiled {
  const instances: Instance[] = [];
  const idle = new Set<RuleBody>();
  const crowded = new Set<RuleBody>();
  for (const { rule, file } of rules) {
    for (const body of rule.bodies) {
      const { trigger, demanded } = body;
      // What is not whole is a fault of the text.
      if (!demanded || (body.scope !== 'always' && !trigger)) continue;
      if (body.scope === 'while' && trigger?.kind === 'event') continue;
      const before = instances.length;
      const require = body.demand === 'require';
      for (const set of trigger ? triggers(model, trigger) : [undefined]) {
        const demand = demandOf(model, demanded, set?.met ?? [], set?.demand.items[0]);
        if (!demand) continue;
        instances.push({ rule, body, file, scope: body.scope, require, trigger: set?.demand, demand });
        if (instances.length - before >= MOST_INSTANCES) {
          crowded.add(body);
          break;
        }
      }
      if (instances.length === before) idle.add(body);
    }
  }
  return { instances, idle, crowded };
}

/** What sets the sentence off, thing by thing. */
function triggers(model: Model, pattern: RulePattern): { demand: Demand; met: Met }[] {
  if (pattern.selectors.length === 0) {
    const demand = demandOf(model, pattern, [], undefined);
    return demand ? [{ demand, met: [] }] : [];
  }
  const about = allOf(model, pattern.selectors, []).filter(({ item }) => fits(model, pattern, item));
  return about.map(({ item, met }) => ({ demand: withItems(model, pattern, [item]), met }));
}

function demandOf(
  model: Model,
  pattern: RulePattern,
  met: Met,
  about: number | undefined,
): Demand | undefined {
  if (pattern.selectors.length === 0) {
    const able = pattern.kind === 'event' && verbNamed(pattern.verb.text)?.objectless;
    return able ? withItems(model, pattern, []) : undefined;
  }
  const items = new Set<number>();
  for (const selector of pattern.selectors) {
    const all = chosen(model, selector, met).map(({ item }) => item);
    const whole = selector.kind === 'named' && selector.ref.positions.length === 0;
    const own = whole ? ownOf(model, all, about) : all;
    const fitting = own.filter((item) => fits(model, pattern, item));
    // A thing that this machine does not have: what is asked cannot be judged.
    if (fitting.length === 0 && selector.kind !== 'any') return undefined;
    for (const item of fitting) items.add(item);
  }
  return items.size > 0 ? withItems(model, pattern, [...items]) : undefined;
}

function allOf(model: Model, selectors: readonly Selector[], met: Met): Chosen[] {
  const seen = new Set<string>();
  return selectors
    .flatMap((selector) => chosen(model, selector, met))
    .filter((one) => {
      const key = one.met.map(({ item }) => item).join();
      return !seen.has(key) && seen.add(key) !== undefined;
    });
}

/** Whether the verb can act on such a thing, or it can be in such a state. */
function fits(model: Model, pattern: RulePattern, item: number): boolean {
  const thing = model.thingOf[item]!;
  if (pattern.kind === 'state') return stateFaults('', pattern.state, [thing]).length === 0;
  return (verbNamed(pattern.verb.text)?.on as readonly string[] | undefined)?.includes(thing.type) ?? false;
}

function withItems(model: Model, pattern: RulePattern, items: readonly number[]): Demand {
  if (pattern.kind === 'state')
    return { kind: 'state', state: pattern.state.text, negated: pattern.negated, items };
  const quantity = readTyped(pattern.quantity, model.values);
  const target = quantity ? targetOf(quantity) : (pattern.times ?? 1);
  return { kind: 'event', verb: pattern.verb.text, items, quantity, target };
}
