/**
 * Sentences of rules that apply to none of the machines that were checked together. A rule in a shared file may well
 * not be about one machine and be about the next.
 */
import type { RuleBody } from '../../grammar/syntax/tree.ts';
import type { Fact } from '../model/facts.ts';
import type { Model } from '../model/model.ts';
import { compiled } from './compile.ts';
import { ruleFaults } from './faults.ts';

interface Seen {
  readonly file: string;
  readonly rule: string;
  readonly machines: string[];
  applies: boolean;
}

export class IdleRules {
  private readonly seen = new Map<RuleBody, Seen>();
  private readonly files = new Set<string>();

  /** Sentences of this file are told of. */
  checked(file: string): void {
    this.files.add(file);
  }

  add(model: Model): void {
    if (!model.machine || model.rules.length === 0) return;
    const { idle } = compiled(model);
    const faults = ruleFaults(model);
    for (const { rule, file } of model.rules) {
      for (const body of rule.bodies) {
        const seen = this.seen.get(body) ?? {
          file,
          rule: rule.name?.text ?? '',
          machines: [],
          applies: false,
        };
        this.seen.set(body, seen);
        seen.machines.push(model.name);
        const faulty = faults.some(
          ({ at }) => at.file === file && body.start <= at.start && at.end <= body.end,
        );
        const ownName = model.machine.items.includes(rule) && namesUnknown(model, body);
        if (!idle.has(body) || faulty || ownName) seen.applies = true;
      }
    }
  }

  /** Facts `rule-never-applies`. */
  facts(): Fact[] {
    return [...this.seen]
      .filter(([, { file, applies }]) => !applies && this.files.has(file))
      .map(([{ start, end }, { file, rule, machines }]) => ({
        check: 'rule-never-applies',
        at: { file, start, end },
        words: {
          rule,
          machines:
            machines.length === 1
              ? `of \`${machines[0]}\``
              : `of the ${machines.length} machines that know it`,
        },
      }));
  }
}

/** A name in a machine's own rule that nothing declares is a finding of its own. */
function namesUnknown(model: Model, body: RuleBody): boolean {
  return [body.trigger, body.demanded].some((pattern) =>
    pattern?.selectors.some((selector) => {
      let inner = selector;
      while (inner.kind === 'any' && inner.of) inner = inner.of;
      return inner.kind === 'named' && !model.byName.has(inner.ref.name.text);
    }),
  );
}
