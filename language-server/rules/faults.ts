/** What is wrong with the sentences of the rules themselves: kinds, clauses and verbs that no thing here can mean. */
import type { Name, RuleBody, RulePattern, Selector } from '../../grammar/syntax/tree.ts';
import { CLAUSES_OF, DECLARATION_KINDS } from '../../grammar/tokens/clauses.ts';
import { verbNamed } from '../../grammar/tokens/verbs.ts';
import type { Fact } from '../model/facts.ts';
import { wrongKind } from '../model/kind-faults.ts';
import type { Model } from '../model/model.ts';
import { unknownName } from '../model/names.ts';

/** Facts `unknown-name`, `wrong-kind` and `syntax`. Names of things and states are looked up with the model. */
export function ruleFaults(model: Model): Fact[] {
  return model.rules.flatMap(({ rule, file }) => rule.bodies.flatMap((body) => faultsOf(model, body, file)));
}

function faultsOf(model: Model, body: RuleBody, file: string): Fact[] {
  const facts: Fact[] = [];
  const met = new Set<string>();
  for (const pattern of [body.trigger, body.demanded]) {
    if (!pattern) continue;
    for (const selector of pattern.selectors) facts.push(...selectorFaults(model, selector, met, file));
    facts.push(...verbFaults(model, pattern, file));
  }
  const { trigger } = body;
  if (body.scope === 'while' && trigger?.kind === 'event') {
    facts.push({
      check: 'syntax',
      at: { file, start: trigger.start, end: trigger.end },
      words: {
        message: 'After “while” stands a state, and this is a step.',
        example: 'while holding-strap fitted never turn flywheel',
      },
    });
  }
  return facts;
}

/** Notes in `met` the kinds that `that` can mean from here on. */
function selectorFaults(model: Model, selector: Selector, met: Set<string>, file: string): Fact[] {
  if (selector.kind === 'named') {
    const thing = model.byName.get(selector.ref.name.text);
    if (thing) met.add(thing.type);
    return [];
  }
  const { what } = selector;
  if (what.text === '') return [];
  if (!(DECLARATION_KINDS as readonly string[]).includes(what.text))
    return [unknownName(file, what, 'kind', DECLARATION_KINDS)];
  if (selector.kind === 'that') return met.has(what.text) ? [] : [notMet(file, what, selector, met)];
  const facts = selector.of ? selectorFaults(model, selector.of, met, file) : [];
  met.add(what.text);
  const clauses = CLAUSES_OF[what.text as keyof typeof CLAUSES_OF] as readonly string[];
  if (selector.with && selector.with.text !== '' && !clauses.includes(selector.with.text))
    facts.push(unknownName(file, selector.with, 'clause', clauses));
  return facts;
}

function notMet(file: string, { text }: Name, { start, end }: Selector, met: ReadonlySet<string>): Fact {
  const known = [...met].map((kind) => `“that ${kind}”`).join(' or ');
  return {
    check: 'syntax',
    at: { file, start, end },
    words: {
      message: `“that ${text}” means a ${text} named before in this sentence, and there is none.${known ? ` Here only ${known} can stand.` : ''}`,
      example: 'before open any connection of any system require that system proved safe',
    },
  };
}

function verbFaults(model: Model, pattern: RulePattern, file: string): Fact[] {
  const on = pattern.kind === 'event' ? verbNamed(pattern.verb.text)?.on : undefined;
  if (pattern.kind !== 'event' || !on) return [];
  const facts: Fact[] = [];
  for (const selector of pattern.selectors) {
    if (selector.kind !== 'named') continue;
    const thing = model.byName.get(selector.ref.name.text);
    if (thing && !(on as readonly string[]).includes(thing.type))
      facts.push(wrongKind(file, selector.ref, thing, on, `\`${pattern.verb.text}\``));
  }
  return facts;
}
