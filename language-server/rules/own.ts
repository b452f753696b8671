/**
 * Rules that a machine does not know: those at the top of a procedure's own file, and of a file without machines that
 * it uses. They hold for the procedures of that file, as if they stood in their machines.
 */
import type { Rule, Selector } from '../../grammar/syntax/tree.ts';
import type { Fact } from '../model/facts.ts';
import type { Model, Thing } from '../model/model.ts';
import { type LoadedFile, unknownName } from '../model/names.ts';
import { stateFaults } from '../model/state-words.ts';

export type PlacedRule = Model['rules'][number];

/** `visible`: the file and all that it uses. */
export function ownRules(file: LoadedFile, visible: readonly LoadedFile[], model: Model): PlacedRule[] {
  const known = new Set(model.rules.map(({ rule }) => rule));
  return visible
    .filter((one) => one === file || one.machines.length === 0)
    .flatMap((one) => rulesOf(one).filter(({ rule }) => !known.has(rule)));
}

function rulesOf(file: LoadedFile): PlacedRule[] {
  return file.shared.flatMap((item) => (item.kind === 'rule' ? [{ rule: item, file: file.path }] : []));
}

/**
 * Names in the file's rules that none of the machines knows for which it has procedures: facts `unknown-name`, and
 * `wrong-kind` for a state that no such thing can be in. Where a machine knows the rule, they are told with that.
 */
export function ownNameFaults(file: LoadedFile, models: readonly Model[]): Fact[] {
  if (models.length === 0) return [];
  return rulesOf(file)
    .filter(({ rule }) => !models.some((model) => model.rules.some((known) => known.rule === rule)))
    .flatMap(({ rule }) => faultsOf(rule, file.path, models));
}

function faultsOf(rule: Rule, path: string, models: readonly Model[]): Fact[] {
  const facts: Fact[] = [];
  for (const pattern of rule.bodies.flatMap((body) => [body.trigger, body.demanded])) {
    if (!pattern) continue;
    const things: Thing[] = [];
    for (const selector of pattern.selectors) {
      const name = nameIn(selector);
      if (!name) continue;
      const found = models.flatMap((model) => model.byName.get(name.text) ?? []);
      if (found.length === 0) {
        const known = models.flatMap((model) => [...model.byName.keys()]);
        facts.push(unknownName(path, name, 'thing', known));
      } else if (selector.kind === 'named') things.push(found[0]!);
    }
    if (pattern.kind === 'state') facts.push(...stateFaults(path, pattern.state, things));
  }
  return facts;
}

/** The name of the thing that a selector names, also at the end of `any … of …`. */
function nameIn(selector: Selector): Extract<Selector, { kind: 'named' }>['ref']['name'] | undefined {
  if (selector.kind === 'named') return selector.ref.name;
  return selector.kind === 'any' && selector.of ? nameIn(selector.of) : undefined;
}
