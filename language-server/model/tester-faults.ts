/**
 * Whether the tester that proves a supply dead is itself tried on a known live source before and after. Fact
 * `tester-not-proved`: where it is tried on one side only, and above 600 V where nobody tries it. Below that, a text that
 * says nothing of it is left alone: many leave it to the skill of the trade.
 */
import type { Action, Statement } from '../../grammar/syntax/tree.ts';
import type { Fact } from './facts.ts';
import { bandIn, readTyped } from './fastening-amounts.ts';
import { clauseOf } from './fastening-declared.ts';
import { headOf } from './flow-walk.ts';
import type { Model, Thing } from './model.ts';
import type { Survey } from './survey.ts';

/** V: above it the rule asks for the try before and after. */
const ASKED_ABOVE = 600;

export function testerFaults(model: Model, survey: Survey, file: { readonly path: string }): Fact[] {
  const actions = survey.each('testers', [], (one) =>
    one.kind === 'action' && ASKED.has(one.verb) ? [one] : [],
  );
  if (!actions.some(({ verb }) => verb === 'prove')) return [];
  const saysBoth = survey.each('testers before and after', [], (one) =>
    textsOf(one).filter((text) => BOTH.test(text) && TESTER.test(text)),
  );
  if (saysBoth.length > 0) return [];
  const told = new Set<Thing>();
  return actions.flatMap((action, index): Fact[] => {
    if (action.verb !== 'prove') return [];
    const systems = action.objects.flatMap(({ name }) => model.byName.get(name.text) ?? []);
    const live = systems.find((thing) => thing.type === 'system' && thing.hasLive);
    const tester = live && testerOf(model, action, live);
    if (!live || !tester || told.has(tester)) return [];
    const said = textsOf(action).join(' ');
    const tries = (among: readonly Action[]) => among.some((one) => isTry(one, tester));
    const before = tries(actions.slice(0, index)) || (SOURCE.test(said) && !/\bafter\b/i.test(said));
    const after = tries(actions.slice(index + 1)) || (SOURCE.test(said) && /\bafter\b/i.test(said));
    if (before && after) return [];
    if (!before && !after && !isAbove(model, live)) return [];
    told.add(tester);
    const { start, end } = headOf(action);
    return [
      {
        check: 'tester-not-proved',
        at: { file: file.path, start, end },
        subject: { thing: tester },
        others: [{ thing: live }],
        words: { missing: before ? 'after' : after ? 'before' : 'before and after' },
      },
    ];
  });
}

function testerOf(model: Model, action: Action, live: Thing): Thing | undefined {
  const named = action.tails.flatMap((tail) => (tail.tail === 'with' ? tail.refs : []));
  const refs = named.length > 0 ? named : (clauseOf(live, 'proved with')?.refs ?? []);
  return refs.map(({ name }) => model.byName.get(name.text)).find((thing) => thing?.type === 'tool');
}

/** `check tester "On a known live source."` */
function isTry(action: Action, tester: Thing): boolean {
  if (action.verb !== 'check' && action.verb !== 'measure') return false;
  if (!action.objects.some(({ name }) => name.text === tester.name)) return false;
  return !/calibrat|\bdate\b|batter|\bleads?\b|damage/i.test(textsOf(action).join(' '));
}

function isAbove(model: Model, live: Thing): boolean {
  const voltage = readTyped(clauseOf(live, 'live')?.quantity, model.values);
  return voltage?.unit.kind === 'voltage' && bandIn(voltage, 'V').high > ASKED_ABOVE;
}

function textsOf(statement: Statement): string[] {
  const texts = 'text' in statement && statement.text ? [statement.text.value] : [];
  if ('title' in statement && statement.title) texts.push(statement.title.value);
  if (statement.kind === 'action')
    for (const tail of statement.tails) if ('text' in tail && tail.text) texts.push(tail.text.value);
  return texts;
}

/** What proves, and what may try the tester. */
const ASKED: ReadonlySet<string> = new Set(['prove', 'check', 'measure']);

const SOURCE = /\bknown\b.{0,20}\b(source|supply|circuit|voltage)|\blive (source|circuit)|\bproving unit/i;
const BOTH = /\bbefore\b.{0,40}\bafter\b|\bagain\b.{0,20}\bafter\b/i;
const TESTER = /\b(tester|meter|detector|instrument|source|proving unit)\b/i;
