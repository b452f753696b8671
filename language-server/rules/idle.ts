/**
 * Sentences of rules that apply to none of the machines that were checked together. A rule in a shared file may well
 * not be about one machine and be about the next.
 */
import type { RuleBody } from '../../grammar/syntax/tree.ts';
import type { Fact } from '../model/facts.ts';
import type { Model } from '../model/model.ts';
import { compile, compiled } from './compile.ts';
import { ruleFaults } from './faults.ts';

/** How one sentence of a rule fares with one machine. Plain data: it is kept and handed on between runs. */
export interface RuleUse {
  file: string;
  start: number;
  end: number;
  rule: string;
  machine: string;
  applies: boolean;
}

/** How the sentences of rules fare with a machine: of all that it knows, or of a file's own (see own.ts). */
export function ruleUses(model: Model, own?: Model['rules']): RuleUse[] {
  const rules = own ?? model.rules;
  if (!model.machine || rules.length === 0) return [];
  const { machine } = model;
  const { idle } = own ? compile(model, own) : compiled(model);
  const faults = own ? [] : ruleFaults(model);
  return rules.flatMap(({ rule, file }) =>
    rule.bodies.map((body) => {
      const faulty = faults.some(
        ({ at }) => at.file === file && body.start <= at.start && at.end <= body.end,
      );
      const ownName = (own !== undefined || machine.items.includes(rule)) && namesOne(body);
      return {
        file,
        start: body.start,
        end: body.end,
        rule: rule.name?.text ?? '',
        machine: model.name,
        applies: !idle.has(body) || faulty || ownName,
      };
    }),
  );
}

/** Facts `rule-never-applies` in the checked files, from how all their machines fared. */
export function idleRules(uses: readonly RuleUse[], checked: ReadonlySet<string>): Fact[] {
  const seen = new Map<string, { use: RuleUse; machines: Set<string>; applies: boolean }>();
  for (const use of uses) {
    const key = `${use.file} ${use.start}`;
    const one = seen.get(key) ?? { use, machines: new Set(), applies: false };
    seen.set(key, one);
    one.machines.add(use.machine);
    if (use.applies) one.applies = true;
  }
  return [...seen.values()]
    .filter(({ use, applies }) => !applies && checked.has(use.file))
    .map(({ use: { file, start, end, rule }, machines }) => ({
      check: 'rule-never-applies',
      at: { file, start, end },
      words: {
        rule,
        machines:
          machines.size === 1
            ? `of \`${[...machines][0]}\``
            : `of the ${machines.size} machines that know it`,
      },
    }));
}

/** A machine's own rule that names a thing is about that thing: what is wrong with the name is a finding of its own. */
function namesOne(body: RuleBody): boolean {
  return [body.trigger, body.demanded].some((pattern) =>
    pattern?.selectors.some((selector) => {
      let inner = selector;
      while (inner.kind === 'any' && inner.of) inner = inner.of;
      return inner.kind === 'named';
    }),
  );
}
